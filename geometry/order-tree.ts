/**
 * Boxes of things that follow each other along a line, so that neighbors in number are neighbors in place: a plain binary
 * heap over their order, quicker to build than a tree that has to sort them.
 *
 * Terms. Node i holds the box around its children 2i + 1 and 2i + 2; leaves are runs of LEAF boxes. Boxes stand in flat
 * arrays of minX, minY, maxX, maxY.
 */

const LEAF = 4;

export class OrderTree {
  readonly #boxes: Float64Array;
  readonly #nodes: Float64Array;
  readonly #firstLeaf: number;
  readonly #count: number;

  /** `boxes`: four numbers each. The array is kept, not copied. */
  constructor(boxes: Float64Array) {
    this.#boxes = boxes;
    this.#count = boxes.length / 4;
    let leaves = 1;
    while (leaves * LEAF < this.#count) leaves *= 2;
    this.#firstLeaf = leaves - 1;
    this.#nodes = new Float64Array((this.#firstLeaf + leaves) * 4);
    for (let node = this.#firstLeaf + leaves - 1; node >= 0; node--) {
      if (node < this.#firstLeaf) around(this.#nodes, 2 * node + 1, 2 * node + 3, this.#nodes, node);
      else {
        const start = (node - this.#firstLeaf) * LEAF;
        around(boxes, start, Math.min(start + LEAF, this.#count), this.#nodes, node);
      }
    }
  }

  /** Calls `visit` with the numbers above `i` whose boxes touch box number `i`, ascending. */
  visitAfter(i: number, visit: (j: number) => void): void {
    this.#visit(0, this.#firstLeaf + 1, 0, i, visit);
  }

  /** `span`: how many leaves lie under the node; `leaf`: the first of them. */
  #visit(node: number, span: number, leaf: number, i: number, visit: (j: number) => void): void {
    if ((leaf + span) * LEAF <= i + 1 || !touch(this.#nodes, node, this.#boxes, i)) return;
    if (node < this.#firstLeaf) {
      this.#visit(2 * node + 1, span / 2, leaf, i, visit);
      this.#visit(2 * node + 2, span / 2, leaf + span / 2, i, visit);
      return;
    }
    const end = Math.min((leaf + 1) * LEAF, this.#count);
    for (let j = Math.max(leaf * LEAF, i + 1); j < end; j++) if (touch(this.#boxes, j, this.#boxes, i)) visit(j);
  }
}

/** Writes the box around boxes start..end-1 of `from` into place `at` of `into`; around none, an inside-out box. */
function around(from: Float64Array, start: number, end: number, into: Float64Array, at: number): void {
  let minX = Number.POSITIVE_INFINITY;
  let minY = Number.POSITIVE_INFINITY;
  let maxX = Number.NEGATIVE_INFINITY;
  let maxY = Number.NEGATIVE_INFINITY;
  for (let i = start * 4; i < end * 4; i += 4) {
    if ((from[i] as number) < minX) minX = from[i] as number;
    if ((from[i + 1] as number) < minY) minY = from[i + 1] as number;
    if ((from[i + 2] as number) > maxX) maxX = from[i + 2] as number;
    if ((from[i + 3] as number) > maxY) maxY = from[i + 3] as number;
  }
  into[at * 4] = minX;
  into[at * 4 + 1] = minY;
  into[at * 4 + 2] = maxX;
  into[at * 4 + 3] = maxY;
}

function touch(a: Float64Array, i: number, b: Float64Array, j: number): boolean {
  const p = i * 4;
  const q = j * 4;
  return (
    (a[p] as number) <= (b[q + 2] as number) &&
    (b[q] as number) <= (a[p + 2] as number) &&
    (a[p + 1] as number) <= (b[q + 3] as number) &&
    (b[q + 1] as number) <= (a[p + 3] as number)
  );
}
