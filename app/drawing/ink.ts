/** Lines of the plan as ink that type is better not set over. */
import type { Point } from "../../geometry/types.ts";
import type { Placer } from "./placement.ts";
import type { ShapeItem } from "./scene.ts";

/** Tells the placer of a shape's lines; `toPaper` goes from site inches to the points of paper that it works in. */
export function inkShape(item: ShapeItem, placer: Pick<Placer, "addInk">, toPaper: (p: Point) => Point): void {
  let line: Point[] = [];
  let start: Point | null = null;
  for (const step of item.steps) {
    if (step.step === "move") {
      placer.addInk(line);
      line = [toPaper(step.to)];
      start = step.to;
    } else if (step.step === "line") line.push(toPaper(step.to));
    else if (step.step === "close") {
      if (start) line.push(toPaper(start));
    } else {
      const chords = Math.max(2, Math.ceil(Math.abs(step.sweep) / 0.2));
      for (let i = 1; i <= chords; i++) {
        const angle = step.startAngle + (step.sweep * i) / chords;
        line.push(
          toPaper([step.center[0] + step.radius * Math.cos(angle), step.center[1] + step.radius * Math.sin(angle)]),
        );
      }
    }
  }
  placer.addInk(line);
}
