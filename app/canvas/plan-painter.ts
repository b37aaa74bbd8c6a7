/**
 * Paints what the sheet shows onto its two layers. The ground holds only surfaces and buildings: their hatches are what
 * takes longest to paint, and they seldom change while something is dragged.
 */
import type { Site } from "../../rules/site/site.ts";
import type { LineStyle, Palette } from "../drawing/palette.ts";
import type { Item, LayerName } from "../drawing/scene.ts";
import { type Paint, paintItems } from "./painter.ts";
import type { Shown } from "./scene-keeper.ts";

const GROUND: ReadonlySet<LayerName> = new Set<LayerName>(["surfaces", "buildings"]);

/** How strongly branches show that are still on their way. */
const OLD_BRANCHES = 0.35;

/** What the ground shows, to tell whether it has to be painted again: the elements on it, and how each is drawn. */
export function groundKey({ scene }: Shown, site: Site): readonly unknown[] {
  const drawn = new Map<string, unknown>(site.elements.map((element) => [element.id, element]));
  return scene.layers.flatMap(({ name, items }) =>
    GROUND.has(name)
      ? items.flatMap((item) => [drawn.get(item.element ?? ""), item.kind === "shape" && item.role])
      : [],
  );
}

export function paintGround(paint: Paint, { scene }: Shown): void {
  for (const { name, items } of scene.layers) if (GROUND.has(name)) paintItems(paint, items);
}

export function paintDrawing(paint: Paint, { scene, strong, areBranchesOld }: Shown): void {
  const faint: Paint = { ...paint, palette: withFaintBranches(paint.palette) };
  for (const { name, items } of scene.layers) {
    if (name === "focus" || GROUND.has(name)) continue;
    paintItems(name === "branches" && areBranchesOld ? faint : paint, items);
  }
  if (strong === null) return;
  paintVeil(paint);
  paintItems(areBranchesOld ? faint : paint, strong as readonly Item[]);
}

/** Pushes all that lies below back. */
function paintVeil({ context, palette, view, pixelRatio }: Paint): void {
  const { fill, opacity } = palette.roles.veil;
  context.setTransform(pixelRatio, 0, 0, pixelRatio, 0, 0);
  context.globalAlpha = opacity ?? 1;
  context.fillStyle = fill ?? palette.paper;
  context.fillRect(0, 0, view.width, view.height);
  context.globalAlpha = 1;
}

const faintPalettes = new WeakMap<Palette, Palette>();

function withFaintBranches(palette: Palette): Palette {
  const known = faintPalettes.get(palette);
  if (known) return known;
  const style: LineStyle = { ...palette.roles["branch-proposed"], opacity: OLD_BRANCHES };
  const faint = { ...palette, roles: { ...palette.roles, "branch-proposed": style } };
  faintPalettes.set(palette, faint);
  return faint;
}
