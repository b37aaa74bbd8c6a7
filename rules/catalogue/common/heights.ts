/** The levels that a device or a piece of equipment gives: one number, or its bottom and top. */
export function lowestOf(z: number | readonly [number, number] | undefined): number | undefined {
  return z === undefined || typeof z === "number" ? z : z[0];
}

export function highestOf(z: number | readonly [number, number] | undefined): number | undefined {
  return z === undefined || typeof z === "number" ? z : z[1];
}
