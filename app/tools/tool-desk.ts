/** What tools work with, made of the host's stores and of what the host knows of pointer and typing. */
import type { StoreApi } from "zustand/vanilla";
import type { Point } from "../../geometry/types.ts";
import type { Units } from "../../rules/words/lengths.ts";
import { gridStep, toStep } from "../snapping/grid.ts";
import type { HostPorts, HostSheet, HostState } from "./host-ports.ts";
import { snapOn } from "./snap-on.ts";
import type { Desk, TypedValues } from "./tool.ts";

/** Screen pixels that count as on something: by mouse or pen, by finger. */
export const SLACK_PIXELS = 8;
export const TOUCH_SLACK_PIXELS = 22;

/** What only the host knows. */
export interface DeskHost {
  readonly state: StoreApi<HostState>;
  sheet(): HostSheet;
  units(): Units;
  typed(): TypedValues;
  crosshairTo(at: Point): void;
  renew(): void;
}

export function deskOf({ document, view, live }: HostPorts, host: DeskHost): Desk {
  const { state, units } = host;
  const pixel = () => 1 / view.getState().camera.scale;
  return {
    document,
    view,
    report: () => live.getState().report,
    pixel,
    slack: (pointer) => (pointer.isTouch ? TOUCH_SLACK_PIXELS : SLACK_PIXELS) * pixel(),
    units,
    snap: (pointer, options) => snapOn({ document, view }, pointer, options),
    typed: host.typed,
    clearTyped: () => state.setState({ texts: {}, problems: {}, refusal: null }),
    middle: () => {
      const { x, y, scale } = view.getState().camera;
      const middle = host.sheet().middle?.() ?? [x, y];
      const step = gridStep(scale, units());
      return [toStep(middle[0], step), toStep(middle[1], step)];
    },
    crosshairTo: host.crosshairTo,
    findingAt: (at, slack) => host.sheet().findingAt(at, slack),
    offerTie: (offeredTie) => {
      if (state.getState().offeredTie !== offeredTie) state.setState({ offeredTie });
    },
    finish: (id) => {
      view.getState().select([id]);
      view.getState().setTool("select");
      view.getState().setPanel("element");
    },
    renew: host.renew,
    reveal: (at) => host.sheet().reveal(at),
    complain: (reason) => view.getState().say(reason, "problem"),
    announce: (announcement) => state.setState({ announcement }),
  };
}
