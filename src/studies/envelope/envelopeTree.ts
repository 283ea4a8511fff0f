import { requireFinite, requirePositive } from "../../geometry/requireFinite.ts";
import type { Budget } from "../numeric/budget.ts";
import { LATTICE_MOST, LatticeValues } from "./latticeValues.ts";
import type { SweptDistance } from "./sweptDistance.ts";
import { WHEEL_ROW } from "./wheelTable.ts";

/** How fine the tree is cut, mm. */
export interface TreeSizes {
  /** Side of the smallest and of the largest cube that may hold surface. */
  readonly least: number;
  readonly most: number;
  /** A cube is cut until the distance in it is this near to the one interpolated from its corners. */
  readonly bend: number;
  /** The surface stands at this distance from what the ring sweeps. */
  readonly offset: number;
}

/** Called now and then with the share done, 0 … 1. */
export type Progress = (share: number) => void;

/** Leaves between two calls of `progress`. */
const STRIDE = 512;

/** Microseconds, about, of a leaf with surface. */
const LEAF_WORK = 20;

/** Share of a cube's half diagonal more that the surface must be away for the cube to count as free of it. */
const CLEAR_SHARE = 1.02;

/**
 * A tree of cubes about the surface at `offset` from what the ring sweeps: large where that is flat, small
 * along creases. Each cube keeps the poses near it that may matter (the distance is 1-Lipschitz: a pose
 * farther than the nearest by more than the cube's diagonal cannot be nearest anywhere in it).
 */
export class EnvelopeTree {
  /** Number of a node's first of eight children (bit 0 x, bit 1 y, bit 2 z: the upper half), or −1. */
  first = new Int32Array(1024);
  /** Lower corner of each node on the lattice, and its side in lattice steps. */
  corner = new Int32Array(3 * 1024);
  size = new Int32Array(1024);
  /** Where each leaf's poses of the table begin and end in `poses`; none for a leaf free of surface. */
  poseFrom = new Int32Array(1024);
  poseTo = new Int32Array(1024);
  /** For a leaf free of surface, whether it lies inside. */
  inside = new Uint8Array(1024);
  count = 0;
  poses = new Int32Array(1 << 16);
  private poseCount = 0;
  readonly values = new LatticeValues();
  /** mm of one lattice step; place of the lattice's corner. */
  readonly step: number;
  readonly origin: readonly [number, number, number];
  private readonly leastSize: number;
  private readonly mostSize: number;
  /** Lists of poses of the cubes from the root down to the one looked at, one behind the other. */
  private lists = new Int32Array(1 << 16);
  private stopped = false;
  private done = 0;
  private leaves = 0;

  constructor(
    readonly swept: SweptDistance,
    reach: number,
    private readonly sizes: TreeSizes,
    private readonly progress: Progress,
    readonly budget: Budget,
  ) {
    const { table } = swept;
    const low = [0, 1, 2].map((axis) => extent(table.wheels, axis, Math.min, Number.POSITIVE_INFINITY));
    const high = [0, 1, 2].map((axis) => extent(table.wheels, axis, Math.max, Number.NEGATIVE_INFINITY));
    const room = reach + sizes.offset + 4 * sizes.least;
    const span = Math.max(...high.map((h, i) => h - low[i]! + 2 * room));
    requireFinite("EnvelopeTree", span, sizes.most);
    requirePositive("EnvelopeTree", sizes.least);
    // One lattice step is half the smallest cube, so that the middles of its edges have a place.
    let steps = 2;
    let step = 0.5 * sizes.least;
    while (steps * step < span) steps *= 2;
    if (steps > LATTICE_MOST) {
      steps = (LATTICE_MOST + 1) / 2;
      step = span / steps;
    }
    this.step = step;
    this.origin = [0, 1, 2].map((i) => 0.5 * (low[i]! + high[i]!) - 0.5 * steps * step) as unknown as [
      number,
      number,
      number,
    ];
    this.leastSize = 2;
    this.mostSize = 2;
    while (2 * this.mostSize * step <= sizes.most) this.mostSize *= 2;
    this.claim(1);
    this.size[0] = steps;
  }

  /** Cuts the tree. @returns false when stopped. */
  build(): boolean {
    const { rows, columns } = this.swept.table;
    this.lists = new Int32Array(Math.max(4 * rows * columns, 1 << 16));
    for (let i = 0; i < rows * columns; i++) this.lists[i] = i;
    this.cut(0, 0, rows * columns);
    return !this.stopped;
  }

  /** Cuts leaves that turned out too coarse, down to half the least size. @returns how many were cut. */
  refine(leaves: Iterable<number>): number {
    let cut = 0;
    for (const leaf of leaves) {
      if (this.stopped) break;
      const from = this.poseFrom[leaf]!;
      const count = this.poseTo[leaf]! - from;
      if (count === 0 || this.size[leaf] === 1 || this.first[leaf]! >= 0) continue;
      for (let i = 0; i < count; i++) this.lists[i] = this.poses[from + i]!;
      const first = this.split(leaf);
      for (let child = 0; child < 8; child++) this.cut(first + child, 0, count);
      cut++;
    }
    return cut;
  }

  /** Whether a place lies in the ball about a leaf that keeps poses: those are all that may be nearest there. */
  isInBall(leaf: number, x: number, y: number, z: number): boolean {
    if (this.poseTo[leaf]! === this.poseFrom[leaf]!) return false;
    const half = 0.5 * this.size[leaf]!;
    const dx = x - this.placeOf(leaf, 0, half);
    const dy = y - this.placeOf(leaf, 1, half);
    const dz = z - this.placeOf(leaf, 2, half);
    return dx * dx + dy * dy + dz * dz <= 3 * (half * this.step) ** 2;
  }

  private claim(nodes: number): number {
    const at = this.count;
    this.count += nodes;
    if (this.count > this.first.length) {
      const room = 2 * this.first.length;
      this.first = larger(this.first, new Int32Array(room));
      this.corner = larger(this.corner, new Int32Array(3 * room));
      this.size = larger(this.size, new Int32Array(room));
      this.poseFrom = larger(this.poseFrom, new Int32Array(room));
      this.poseTo = larger(this.poseTo, new Int32Array(room));
      this.inside = larger(this.inside, new Uint8Array(room));
    }
    this.first.fill(-1, at, this.count);
    return at;
  }

  private split(node: number): number {
    const first = this.claim(8);
    const half = this.size[node]! / 2;
    this.first[node] = first;
    for (let child = 0; child < 8; child++) {
      this.size[first + child] = half;
      for (let axis = 0; axis < 3; axis++) {
        this.corner[3 * (first + child) + axis] =
          this.corner[3 * node + axis]! + ((child >> axis) & 1) * half;
      }
    }
    return first;
  }

  /** A cube and the poses that may matter in it: a leaf when the distance in it is nearly linear. */
  private cut(node: number, from: number, to: number): void {
    const size = this.size[node]!;
    const reach = 0.5 * Math.sqrt(3) * size * this.step;
    if (2 * to > this.lists.length) this.lists = larger(this.lists, new Int32Array(2 * this.lists.length));
    const x = this.placeOf(node, 0, 0.5 * size);
    const y = this.placeOf(node, 1, 0.5 * size);
    const z = this.placeOf(node, 2, 0.5 * size);
    const end = this.swept.pick(x, y, z, reach, this.lists, from, to);
    const off = this.swept.found[0]! - this.sizes.offset;
    if (off - this.swept.found[1]! > CLEAR_SHARE * reach || -off > CLEAR_SHARE * reach) {
      this.inside[node] = off > 0 ? 0 : 1;
      this.poseFrom[node] = this.poseCount;
      this.poseTo[node] = this.poseCount;
      this.finish(size);
      return;
    }
    if (size > this.mostSize || (size > this.leastSize && this.bends(node, to, end))) {
      const first = this.split(node);
      for (let child = 0; child < 8 && !this.stopped; child++) this.cut(first + child, to, end);
    } else {
      this.cornersTo(node, to, end);
      this.keepPoses(node, to, end);
      this.finish(size);
    }
  }

  /** Counts a leaf by its volume, and tells now and then how much of the whole is done. */
  private finish(size: number): void {
    this.done += (size / this.size[0]!) ** 3;
    this.leaves++;
    if (this.leaves % STRIDE === 0) this.progress(Math.min(1, this.done));
    if (this.budget.isSpent(LEAF_WORK)) this.stopped = true;
  }

  private readonly at8 = new Float64Array(8);

  private cornersTo(node: number, from: number, to: number): void {
    const size = this.size[node]!;
    for (let k = 0; k < 8; k++) {
      this.at8[k] = this.valueAt(node, (k & 1) * size, ((k >> 1) & 1) * size, (k >> 2) * size, from, to);
    }
  }

  /** Whether somewhere on the 3 × 3 × 3 places of the cube the distance is off the corners' interpolation. */
  private bends(node: number, from: number, to: number): boolean {
    this.cornersTo(node, from, to);
    const half = this.size[node]! / 2;
    const v = this.at8;
    const { offset, bend } = this.sizes;
    // A place whose distance is farther from the surface's than this has no surface about it.
    const near = 1.1 * half * this.step * Math.sqrt(3);
    for (let i = 0; i < 3; i++) {
      for (let j = 0; j < 3; j++) {
        for (let k = 0; k < 3; k++) {
          if (i !== 1 && j !== 1 && k !== 1) continue;
          const f = this.valueAt(node, i * half, j * half, k * half, from, to);
          if (Math.abs(f - offset) > near) continue;
          const a = i / 2;
          const b = j / 2;
          const c = k / 2;
          const low = (1 - b) * ((1 - a) * v[0]! + a * v[1]!) + b * ((1 - a) * v[2]! + a * v[3]!);
          const high = (1 - b) * ((1 - a) * v[4]! + a * v[5]!) + b * ((1 - a) * v[6]! + a * v[7]!);
          if (Math.abs((1 - c) * low + c * high - f) > bend) return true;
        }
      }
    }
    return false;
  }

  /** The distance at a lattice place of the cube, found once. */
  private valueAt(node: number, i: number, j: number, k: number, from: number, to: number): number {
    const at = 3 * node;
    const li = this.corner[at]! + i;
    const lj = this.corner[at + 1]! + j;
    const lk = this.corner[at + 2]! + k;
    const known = this.values.get(li, lj, lk);
    if (!Number.isNaN(known)) return known;
    const [x0, y0, z0] = this.origin;
    this.swept.look(x0 + li * this.step, y0 + lj * this.step, z0 + lk * this.step, this.lists, from, to);
    this.values.set(li, lj, lk, this.swept.found[0]!);
    return this.swept.found[0]!;
  }

  private keepPoses(node: number, from: number, to: number): void {
    this.poseFrom[node] = this.poseCount;
    if (this.poseCount + to - from > this.poses.length) {
      this.poses = larger(this.poses, new Int32Array(2 * this.poses.length + to - from));
    }
    for (let i = from; i < to; i++) this.poses[this.poseCount++] = this.lists[i]!;
    this.poseTo[node] = this.poseCount;
  }

  private placeOf(node: number, axis: number, steps: number): number {
    return this.origin[axis]! + (this.corner[3 * node + axis]! + steps) * this.step;
  }
}

function larger<T extends Int32Array | Uint8Array | Float64Array>(from: T, to: T): T {
  to.set(from);
  return to;
}

function extent(
  wheels: Float64Array,
  axis: number,
  pick: (a: number, b: number) => number,
  start: number,
): number {
  let found = start;
  for (let i = axis; i < wheels.length; i += WHEEL_ROW) found = pick(found, wheels[i]!);
  return found;
}
