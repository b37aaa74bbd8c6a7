/** The shapes by name, in the order they are offered. Apart from the shapes themselves, which load when one is drawn. */
export const POOL_SHAPES = [
  { id: "rectangle", label: "Rectangle" },
  { id: "rectangle-corners", label: "Rectangle, corners apart" },
  { id: "roman-end", label: "Roman end" },
  { id: "double-roman-end", label: "Double Roman end" },
  { id: "grecian", label: "Grecian" },
  { id: "oval", label: "Oval" },
  { id: "round", label: "Round" },
  { id: "kidney", label: "Kidney" },
  { id: "lazy-l", label: "Lazy L" },
  { id: "true-l", label: "True L" },
  { id: "figure-8", label: "Figure 8" },
] as const;

export type PoolShapeId = (typeof POOL_SHAPES)[number]["id"];

export function shapeLabel(id: PoolShapeId): string {
  return POOL_SHAPES.find((shape) => shape.id === id)?.label ?? id;
}
