/** The levels that an element gives: one number, or two, whichever of them is named first. */
export function lowestOf(z: number | readonly [number, number] | undefined): number | undefined {
  return z === undefined || typeof z === "number" ? z : Math.min(...z);
}

export function highestOf(z: number | readonly [number, number] | undefined): number | undefined {
  return z === undefined || typeof z === "number" ? z : Math.max(...z);
}
