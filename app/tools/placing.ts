/** Where a pointed place is meant to be: snapped to what is near, unless snapping is off or held off. */

import { boundsDistance } from "../../geometry/points.ts";
import type { Point } from "../../geometry/types.ts";
import { isKnown } from "../../rules/measures/yard.ts";
import { elementName } from "../../rules/words/element-names.ts";
import { pathOf, pathRefs } from "../edits/path-ref.ts";
import { keptShape } from "../hit-test/hit-test.ts";
import { gridFor, type Snapped, type SnapTarget, snap } from "../snapping/snap.ts";
import type { Sample, ToolPorts } from "./tool.ts";

export function placed(ports: ToolPorts, sample: Sample, before?: Point, without: readonly string[] = []): Snapped {
  if (sample.alt || !ports.view.getState().snapping) return { point: sample.at, reason: "", guide: null };
  return snap({
    at: sample.at,
    slack: sample.slack,
    targets: targetsNear(ports, sample, without),
    grid: gridFor(sample.slack),
    ...(before ? { before } : {}),
  });
}

function targetsNear(ports: ToolPorts, { at, slack }: Sample, without: readonly string[]): SnapTarget[] {
  const here = { minX: at[0], minY: at[1], maxX: at[0], maxY: at[1] };
  return ports.document.getState().shown.elements.flatMap((element) => {
    if (!isKnown(element) || without.includes(element.id)) return [];
    const shape = keptShape(element);
    const name = elementName(element);
    if (shape.kind === "point")
      return [{ name, path: { vertices: [shape.at, [shape.at[0] + 1e-6, shape.at[1]]], closed: false } }];
    const { bounds } = shape.kind === "path" ? shape.path : shape.area.outer;
    if (boundsDistance(bounds, here) > slack) return [];
    return pathRefs(element).flatMap((ref) => {
      const path = pathOf(element, ref);
      return path ? [{ name, path }] : [];
    });
  });
}
