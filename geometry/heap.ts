/** A queue that gives back its least item first. Of equal ones, the one put in first. */
export class Heap<T> {
  private readonly items: { key: number; order: number; item: T }[] = [];
  private count = 0;

  get size(): number {
    return this.items.length;
  }

  push(key: number, item: T): void {
    const entry = { key, order: this.count++, item };
    let i = this.items.push(entry) - 1;
    while (i > 0) {
      const parent = (i - 1) >> 1;
      if (!this.before(i, parent)) break;
      this.swap(i, parent);
      i = parent;
    }
  }

  /** The least item and its key, taken out; undefined when empty. */
  pop(): { key: number; item: T } | undefined {
    const least = this.items[0];
    const last = this.items.pop();
    if (!least || !last || this.items.length === 0) return least;
    this.items[0] = last;
    for (let i = 0; ; ) {
      let next = i;
      for (const child of [2 * i + 1, 2 * i + 2])
        if (child < this.items.length && this.before(child, next)) next = child;
      if (next === i) return least;
      this.swap(i, next);
      i = next;
    }
  }

  private before(i: number, j: number): boolean {
    const [a, b] = [this.items[i], this.items[j]];
    if (!a || !b) return false;
    return a.key < b.key || (a.key === b.key && a.order < b.order);
  }

  private swap(i: number, j: number): void {
    const [a, b] = [this.items[i], this.items[j]];
    if (!a || !b) return;
    this.items[i] = b;
    this.items[j] = a;
  }
}
