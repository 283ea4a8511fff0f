/** A node of the search: middles and half ranges of arm angle and steer, a leg, and a piece of it; what to halve next; 1 = every pose keeps all limits. */
export const NODE = {
  arm: 0,
  armHalf: 1,
  steer: 2,
  steerHalf: 3,
  leg: 4,
  near: 5,
  far: 6,
  cut: 7,
  kept: 8,
} as const;
export const NODE_ROW = 9;

/** What a node is halved along. */
export const Cut = { Leg: 0, Arm: 1, Steer: 2 } as const;

/** The nodes of a search in one growing row; places of dropped ones are used again. */
export class LegNodes {
  rows = new Float64Array(256 * NODE_ROW);
  private count = 0;
  private readonly free: number[] = [];

  claim(): number {
    const reused = this.free.pop();
    if (reused !== undefined) return reused;
    if ((this.count + 1) * NODE_ROW > this.rows.length) {
      const larger = new Float64Array(this.rows.length * 2);
      larger.set(this.rows);
      this.rows = larger;
    }
    return this.count++;
  }

  drop(node: number): void {
    this.free.push(node);
  }

  /** Halves a node along its `cut`; it keeps one half. @returns the node with the other. */
  halve(node: number): number {
    const twin = this.claim();
    const a = node * NODE_ROW;
    const b = twin * NODE_ROW;
    const { rows } = this;
    rows.copyWithin(b, a, a + NODE_ROW);
    const cut = rows[a + NODE.cut];
    if (cut === Cut.Leg) {
      const middle = 0.5 * (rows[a + NODE.near]! + rows[a + NODE.far]!);
      rows[a + NODE.far] = middle;
      rows[b + NODE.near] = middle;
      return twin;
    }
    const middle = cut === Cut.Arm ? NODE.arm : NODE.steer;
    const half = 0.5 * rows[a + middle + 1]!;
    rows[a + middle]! -= half;
    rows[b + middle]! += half;
    rows[a + middle + 1] = half;
    rows[b + middle + 1] = half;
    return twin;
  }
}
