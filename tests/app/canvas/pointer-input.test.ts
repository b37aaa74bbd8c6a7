// @vitest-environment happy-dom
import { beforeEach, describe, expect, it } from "vitest";
import { PointerInput } from "../../../app/canvas/pointer-input.ts";
import type { Pointer } from "../../../app/tools/tool.ts";
import type { ToolHost } from "../../../app/tools/tool-host.ts";

/** A sheet of 800 x 600 pixels at 2 pixels to the inch, with its middle at the origin; it writes down what it was asked. */
function bench(tool = "select") {
  const asked: string[] = [];
  const pointers: Pointer[] = [];
  const box = document.createElement("div");
  box.setPointerCapture = () => {};
  box.getBoundingClientRect = () => new DOMRect(100, 50, 800, 600);
  const took = (name: string) => (pointer: Pointer) => {
    asked.push(`${name} ${pointer.at.join(",")}`);
    pointers.push(pointer);
  };
  const host = {
    tool: { id: tool },
    pointerDown: took("down"),
    pointerMove: took("move"),
    pointerUp: took("up"),
    pointerLeave: () => asked.push("leave"),
    abandonPress: () => asked.push("abandon"),
  };
  const round = (value: number) => Math.round(value * 1000) / 1000;
  const input = new PointerInput(
    box,
    {
      view: { camera: { x: 0, y: 0, scale: 2 }, width: 800, height: 600 },
      panBy: (dx, dy) => asked.push(`pan ${dx} ${dy}`),
      zoomAt: (factor, at) => asked.push(`zoom ${round(factor)} at ${at.join(",")}`),
      changed() {},
    },
    host as unknown as ToolHost,
  );
  input.listen();
  const fire = (type: string, x: number, y: number, more: object = {}, time = 0) => {
    const place = { clientX: x + 100, clientY: y + 50, cancelable: true, bubbles: true };
    const event = type === "wheel" ? new MouseEvent(type, place) : new PointerEvent(type, { ...place, ...more });
    // This document's wheel events have no place: a mouse event with a wheel's fields has both.
    if (type === "wheel") {
      for (const [name, value] of Object.entries({ deltaX: 0, deltaY: 0, deltaMode: 0, ...more })) {
        Object.defineProperty(event, name, { value });
      }
    }
    Object.defineProperty(event, "timeStamp", { value: time });
    box.dispatchEvent(event);
    return event;
  };
  return { asked, pointers, box, input, fire };
}

let now: ReturnType<typeof bench>;
beforeEach(() => {
  now = bench();
});

describe("one pointer", () => {
  it("gives the tool places in site inches, moves once a frame and the newest of them", () => {
    now.fire("pointerdown", 400, 300, { button: 0, pointerId: 1 });
    now.fire("pointermove", 410, 300, { pointerId: 1 });
    now.fire("pointermove", 420, 280, { pointerId: 1 });
    expect(now.asked).toEqual(["down 0,0"]);
    now.input.flush();
    now.input.flush();
    now.fire("pointerup", 420, 280, { button: 0, pointerId: 1 });
    expect(now.asked).toEqual(["down 0,0", "move 10,10", "up 10,10"]);
  });

  it("hands the last move on before the press ends", () => {
    now.fire("pointerdown", 400, 300, { button: 0, pointerId: 1 });
    now.fire("pointermove", 420, 280, { pointerId: 1 });
    now.fire("pointerup", 420, 280, { button: 0, pointerId: 1 });
    expect(now.asked).toEqual(["down 0,0", "move 10,10", "up 10,10"]);
  });

  it("tells a double press by time and place", () => {
    const press = (x: number, time: number) => {
      now.fire("pointerdown", x, 300, { button: 0, pointerId: 1 }, time);
      now.fire("pointerup", x, 300, { button: 0, pointerId: 1 }, time + 50);
      return now.pointers.filter((_, i) => now.asked[i]?.startsWith("down")).at(-1)?.isDouble;
    };
    expect([press(400, 1000), press(403, 1200), press(403, 1400)]).toEqual([false, true, false]);
    expect([press(400, 5000), press(440, 5100)]).toEqual([false, false]);
    expect([press(400, 9000), press(400, 9600)]).toEqual([false, false]);
  });

  it("leaves the right button and buttons that lie on the sheet alone", () => {
    now.fire("pointerdown", 400, 300, { button: 2, pointerId: 1 });
    const button = document.createElement("button");
    now.box.append(button);
    button.dispatchEvent(new PointerEvent("pointerdown", { button: 0, pointerId: 1, bubbles: true }));
    expect(now.asked).toEqual([]);
  });

  it("gives up the press when the browser takes the pointer away", () => {
    now.fire("pointerdown", 400, 300, { button: 0, pointerId: 1 });
    now.fire("pointercancel", 400, 300, { pointerId: 1 });
    now.fire("pointerup", 400, 300, { button: 0, pointerId: 1 });
    expect(now.asked).toEqual(["down 0,0", "abandon"]);
  });
});

describe("moving the sheet", () => {
  it("by the middle button, by Space and by its own tool", () => {
    for (const way of ["middle", "space", "tool"] as const) {
      now = bench(way === "tool" ? "pan" : "select");
      now.input.isSpaceDown = way === "space";
      now.fire("pointerdown", 400, 300, { button: way === "middle" ? 1 : 0, pointerId: 1 });
      now.fire("pointermove", 390, 320, { pointerId: 1 });
      now.fire("pointerup", 390, 320, { button: way === "middle" ? 1 : 0, pointerId: 1 });
      expect(now.asked, way).toEqual(["pan 10 -20"]);
      expect(now.input.isPanning).toBe(false);
    }
  });

  it("by two fingers, which part to enlarge it about the place between them; what the first began is given up", () => {
    const touch = (type: string, id: number, x: number, y = 300) =>
      now.fire(type, x, y, { pointerType: "touch", pointerId: id, button: type === "pointermove" ? -1 : 0 });
    touch("pointerdown", 1, 300);
    touch("pointerdown", 2, 500);
    touch("pointermove", 2, 700);
    touch("pointerup", 2, 700);
    touch("pointermove", 1, 310);
    touch("pointerup", 1, 310);
    now.input.flush();
    expect(now.asked).toEqual(["down -50,0", "abandon", "pan -100 0", "zoom 2 at 500,300"]);
    touch("pointerdown", 1, 300);
    expect(now.asked.at(-1)).toBe("down -50,0");
  });
});

describe("the wheel", () => {
  it("zooms about the pointer, and keeps the page from scrolling", () => {
    const event = now.fire("wheel", 200, 100, { deltaY: -100 }, 1000);
    expect(now.asked).toEqual(["zoom 1.162 at 200,100"]);
    expect(event.defaultPrevented).toBe(true);
  });

  it("pans by trackpad, also where one swipe goes faster than it began", () => {
    now.fire("wheel", 200, 100, { deltaX: 3, deltaY: 8 }, 1000);
    now.fire("wheel", 200, 100, { deltaX: 0, deltaY: 90 }, 1050);
    expect(now.asked).toEqual(["pan 3 8", "pan 0 90"]);
  });

  it("zooms by a pinch of the trackpad, which browsers give as Ctrl and wheel", () => {
    now.fire("wheel", 200, 100, { deltaY: -10, ctrlKey: true }, 1000);
    expect(now.asked).toEqual(["zoom 1.105 at 200,100"]);
  });

  it("moves sideways with Shift", () => {
    now.fire("wheel", 200, 100, { deltaY: 100, shiftKey: true }, 1000);
    expect(now.asked).toEqual(["pan 100 0"]);
  });
});

describe("a stylus", () => {
  const pen = { pointerType: "pen", button: 0, pointerId: 7 };
  const finger = (pointerId: number) => ({ pointerType: "touch", button: 0, pointerId });

  it("draws on while the hand rests on the sheet", () => {
    now.fire("pointerdown", 400, 300, pen);
    now.fire("pointerdown", 500, 500, finger(1));
    now.fire("pointerdown", 560, 520, finger(2));
    now.fire("pointermove", 600, 540, finger(2));
    now.fire("pointermove", 420, 280, pen);
    now.fire("pointerup", 500, 500, finger(1));
    now.fire("pointerup", 600, 540, finger(2));
    now.fire("pointerup", 420, 280, pen);
    expect(now.asked).toEqual(["down 0,0", "move 10,10", "up 10,10"]);
  });

  it("takes over from a hand that came down first, and leaves the fingers free once it is lifted", () => {
    now.fire("pointerdown", 500, 500, finger(1));
    now.fire("pointerdown", 400, 300, pen);
    now.fire("pointerup", 400, 300, pen);
    expect(now.asked).toEqual(["down 50,-100", "abandon", "down 0,0", "up 0,0"]);
    now.fire("pointerup", 500, 500, finger(1));
    now.fire("pointerdown", 400, 300, finger(3));
    expect(now.asked.at(-1)).toBe("down 0,0");
  });
});
