import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { createStore } from "zustand/vanilla";
import { SLOW_PACE, slowStore } from "../../../app/live/slow-store.ts";

beforeEach(() => {
  vi.useFakeTimers();
});

afterEach(() => {
  vi.useRealTimers();
});

/** A store of a number; changes while `isDragging` can wait. */
function setUp() {
  const source = createStore(() => ({ value: 0, isDragging: false }));
  let hurry = () => {};
  const slow = slowStore(
    source,
    (state, before) => state.isDragging && before.isDragging,
    (now) => {
      hurry = now;
    },
  );
  const seen: number[] = [];
  slow.subscribe(({ value }) => seen.push(value));
  return { source, slow, seen, hurry: () => hurry() };
}

describe("what follows at an easy pace", () => {
  it("follows at once while nothing is dragged", () => {
    const { source, slow, seen } = setUp();
    source.setState({ value: 1 });
    source.setState({ value: 2 });
    expect(seen).toEqual([1, 2]);
    expect(slow.getState()).toBe(source.getState());
  });

  it("takes in a drag's beginning at once, then only the newest of each pause", () => {
    const { source, slow, seen } = setUp();
    source.setState({ isDragging: true });
    expect(seen).toEqual([0]);
    for (let value = 1; value <= 20; value++) source.setState({ value });
    expect(seen).toEqual([0]);
    expect(slow.getState().value).toBe(0);
    vi.advanceTimersByTime(SLOW_PACE);
    expect(seen).toEqual([0, 20]);
    vi.advanceTimersByTime(10 * SLOW_PACE);
    expect(seen).toEqual([0, 20]);
  });

  it("shows the end at once, and nothing of what waited after it", () => {
    const { source, slow, seen } = setUp();
    source.setState({ isDragging: true });
    source.setState({ value: 7 });
    source.setState({ value: 8, isDragging: false });
    expect(seen).toEqual([0, 8]);
    vi.advanceTimersByTime(10 * SLOW_PACE);
    expect(seen).toEqual([0, 8]);
    expect(slow.getState()).toBe(source.getState());
  });

  it("lets what waits come when it is hurried", () => {
    const { source, seen, hurry } = setUp();
    source.setState({ isDragging: true });
    source.setState({ value: 3 });
    hurry();
    expect(seen).toEqual([0, 3]);
  });

  it("no longer calls who has left", () => {
    const { source, slow } = setUp();
    const heard = vi.fn();
    slow.subscribe(heard)();
    source.setState({ value: 1 });
    expect(heard).not.toHaveBeenCalled();
  });
});
