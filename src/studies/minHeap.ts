/** A binary heap of numbered items by key, least first. */
export interface MinHeap {
  readonly size: () => number;
  /** Key of the least item. @throws RangeError when empty. */
  readonly leastKey: () => number;
  readonly push: (key: number, item: number) => void;
  /** Takes the least item out. @throws RangeError when empty. */
  readonly pop: () => number;
}

export function minHeap(): MinHeap {
  const keys: number[] = [];
  const items: number[] = [];
  const place = (at: number, key: number, item: number) => {
    keys[at] = key;
    items[at] = item;
  };
  return {
    size: () => keys.length,
    leastKey() {
      if (keys.length === 0) throw new RangeError("minHeap: empty");
      return keys[0]!;
    },
    push(key, item) {
      let at = keys.length;
      keys.push(key);
      items.push(item);
      while (at > 0) {
        const parent = (at - 1) >> 1;
        if (keys[parent]! <= key) break;
        place(at, keys[parent]!, items[parent]!);
        at = parent;
      }
      place(at, key, item);
    },
    pop() {
      if (keys.length === 0) throw new RangeError("minHeap: empty");
      const least = items[0]!;
      const key = keys.pop()!;
      const item = items.pop()!;
      const n = keys.length;
      if (n === 0) return least;
      let at = 0;
      for (;;) {
        let child = 2 * at + 1;
        if (child >= n) break;
        if (child + 1 < n && keys[child + 1]! < keys[child]!) child++;
        if (keys[child]! >= key) break;
        place(at, keys[child]!, items[child]!);
        at = child;
      }
      place(at, key, item);
      return least;
    },
  };
}
