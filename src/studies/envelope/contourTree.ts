import type { EnvelopeTree } from "./envelopeTree.ts";

/** Polygons of the dual surface as leaves of the tree, four a row; a triangle has its last leaf twice. */
export interface DualQuads {
  readonly quads: Int32Array;
  readonly count: number;
  /** Sum and number of the places found on cube edges, by node: x, y, z, count. */
  readonly crossings: Float64Array;
}

/**
 * Walks the tree and gives one polygon for every smallest cube edge that goes from inside to outside, its
 * corners the three or four leaves around that edge, counterclockwise seen from outside. The surface is
 * closed whatever the sizes of the leaves: around each smallest face the number of crossings is even.
 * The recursion over cubes, faces and edges is Ju, Losasso, Schaefer and Warren's ("Dual contouring of
 * Hermite data", 2002, from memory).
 */
export class TreeContour implements DualQuads {
  quads = new Int32Array(4 * 1024);
  count = 0;
  readonly crossings: Float64Array;

  constructor(
    private readonly tree: EnvelopeTree,
    private readonly offset: number,
  ) {
    this.crossings = new Float64Array(4 * tree.count);
    this.cube(0);
  }

  private child(node: number, which: number): number {
    const first = this.tree.first[node]!;
    return first < 0 ? node : first + which;
  }

  private cube(node: number): void {
    const first = this.tree.first[node]!;
    if (first < 0) return;
    for (let i = 0; i < 8; i++) this.cube(first + i);
    for (let axis = 0; axis < 3; axis++) {
      const bit = 1 << axis;
      const u = 1 << ((axis + 1) % 3);
      const v = 1 << ((axis + 2) % 3);
      for (let k = 0; k < 4; k++) {
        const at = (k & 1 ? u : 0) | (k & 2 ? v : 0);
        this.face(first + at, first + (at | bit), axis);
      }
      for (let s = 0; s < 2; s++) {
        const at = first + (s === 1 ? bit : 0);
        this.edge(at, at + u, at + v, at + u + v, axis);
      }
    }
  }

  /** Two cubes that share a face across `axis`, the lower one first. */
  private face(low: number, high: number, axis: number): void {
    if (this.tree.first[low]! < 0 && this.tree.first[high]! < 0) return;
    const bit = 1 << axis;
    const u = (axis + 1) % 3;
    const v = (axis + 2) % 3;
    const ub = 1 << u;
    const vb = 1 << v;
    for (let k = 0; k < 4; k++) {
      const at = (k & 1 ? ub : 0) | (k & 2 ? vb : 0);
      this.face(this.child(low, at | bit), this.child(high, at), axis);
    }
    for (let s = 0; s < 2; s++) {
      // Along u: around it go v, then `axis`. Along v: `axis`, then u.
      const su = s === 1 ? ub : 0;
      this.edge(
        this.child(low, bit | su),
        this.child(low, bit | su | vb),
        this.child(high, su),
        this.child(high, su | vb),
        u,
      );
      const sv = s === 1 ? vb : 0;
      this.edge(
        this.child(low, bit | sv),
        this.child(high, sv),
        this.child(low, bit | sv | ub),
        this.child(high, sv | ub),
        v,
      );
    }
  }

  /** Four cubes around an edge along `axis`: lower and upper in the next axis, then both in the one after. */
  private edge(q00: number, q10: number, q01: number, q11: number, axis: number): void {
    const { first } = this.tree;
    if (first[q00]! < 0 && first[q10]! < 0 && first[q01]! < 0 && first[q11]! < 0) {
      this.crossing(q00, q10, q01, q11, axis);
      return;
    }
    const bit = 1 << axis;
    const u = 1 << ((axis + 1) % 3);
    const v = 1 << ((axis + 2) % 3);
    for (let s = 0; s < 2; s++) {
      const at = s === 1 ? bit : 0;
      this.edge(
        this.child(q00, at | u | v),
        this.child(q10, at | v),
        this.child(q01, at | u),
        this.child(q11, at),
        axis,
      );
    }
  }

  private crossing(q00: number, q10: number, q01: number, q11: number, axis: number): void {
    const { size, corner, step, origin } = this.tree;
    let least = q00;
    let which = 0;
    if (size[q10]! < size[least]!) {
      least = q10;
      which = 1;
    }
    if (size[q01]! < size[least]!) {
      least = q01;
      which = 2;
    }
    if (size[q11]! < size[least]!) {
      least = q11;
      which = 3;
    }
    const u = (axis + 1) % 3;
    const v = (axis + 2) % 3;
    const length = size[least]!;
    // The edge lies on the far side of a lower cube.
    const place = this.place;
    place[axis] = corner[3 * least + axis]!;
    place[u] = corner[3 * least + u]! + (which & 1 ? 0 : length);
    place[v] = corner[3 * least + v]! + (which & 2 ? 0 : length);
    const a = this.valueAt(least);
    place[axis]! += length;
    const b = this.valueAt(least);
    if (a < 0 === b < 0) return;
    const share = a / (a - b);
    place[axis]! -= length * (1 - share);
    for (let k = 0; k < 4; k++) {
      const node = k === 0 ? q00 : k === 1 ? q10 : k === 2 ? q01 : q11;
      for (let i = 0; i < 3; i++) this.crossings[4 * node + i]! += origin[i]! + place[i]! * step;
      this.crossings[4 * node + 3]! += 1;
    }
    if (a < 0) this.keep(q00, q10, q11, q01);
    else this.keep(q00, q01, q11, q10);
  }

  /**
   * The tree's value at `place`, less the offset. A place never looked at lies among leaves that are free of
   * surface; what the first of them says is kept, so that every edge there is told the same.
   */
  private valueAt(leaf: number): number {
    const { values, inside } = this.tree;
    const [i, j, k] = [this.place[0]!, this.place[1]!, this.place[2]!];
    const known = values.get(i, j, k);
    if (!Number.isNaN(known)) return known - this.offset;
    const free = inside[leaf] === 1 ? -1 : 1;
    values.set(i, j, k, free + this.offset);
    return free;
  }

  private readonly place = new Float64Array(3);

  private keep(a: number, b: number, c: number, d: number): void {
    if (4 * (this.count + 1) > this.quads.length) {
      const room = new Int32Array(2 * this.quads.length);
      room.set(this.quads);
      this.quads = room;
    }
    const at = 4 * this.count;
    // Of a triangle the leaf that stands twice comes last.
    const twice = a === b ? 0 : b === c ? 1 : c === d ? 2 : d === a ? 3 : 2;
    for (let i = 0; i < 4; i++) {
      const k = (twice + 2 + i) % 4;
      this.quads[at + i] = k === 0 ? a : k === 1 ? b : k === 2 ? c : d;
    }
    this.count++;
  }
}
