/** A binary heap of numbered items by key, least first. */
export class MinHeap {
  private keys = new Float64Array(1024);
  private items = new Int32Array(1024);
  size = 0;

  /** Key of the least item; +Infinity when empty. */
  leastKey(): number {
    return this.size > 0 ? this.keys[0]! : Number.POSITIVE_INFINITY;
  }

  push(key: number, item: number): void {
    if (this.size === this.keys.length) this.grow();
    const { keys, items } = this;
    let at = this.size++;
    while (at > 0) {
      const parent = (at - 1) >> 1;
      if (keys[parent]! <= key) break;
      keys[at] = keys[parent]!;
      items[at] = items[parent]!;
      at = parent;
    }
    keys[at] = key;
    items[at] = item;
  }

  /** Takes the least item out. @throws RangeError when empty. */
  pop(): number {
    if (this.size === 0) throw new RangeError("MinHeap: empty");
    const { keys, items } = this;
    const least = items[0]!;
    const n = --this.size;
    const key = keys[n]!;
    const item = items[n]!;
    let at = 0;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= n) break;
      if (child + 1 < n && keys[child + 1]! < keys[child]!) child++;
      if (keys[child]! >= key) break;
      keys[at] = keys[child]!;
      items[at] = items[child]!;
      at = child;
    }
    keys[at] = key;
    items[at] = item;
    return least;
  }

  private grow(): void {
    const keys = new Float64Array(2 * this.keys.length);
    const items = new Int32Array(2 * this.items.length);
    keys.set(this.keys);
    items.set(this.items);
    this.keys = keys;
    this.items = items;
  }
}
