import { boundCell, cellBound } from "../gaps/cellBound.ts";
import { CELL, CELL_ROW, CellKind, splitCell } from "../gaps/cells.ts";
import type { PartShape } from "../gaps/partShape.ts";
import type { RingShape } from "../gaps/ring/ringShape.ts";
import { MOTION_ROW } from "../geometry/motionRow.ts";
import type { Vec3 } from "../geometry/vec.ts";
import type { SideModel } from "../suspension/frontEnd.ts";
import { type InnerEndSpread, motionBoundTo } from "../suspension/motionBound.ts";
import { provenOutOfReach } from "../suspension/outOfReach.ts";
import { POSE, POSE_ROW, poseRowTo } from "../suspension/poseRow.ts";
import { PoseStatus } from "../suspension/poseStatus.ts";
import { INNER_ENDS_ROW, type Steering } from "../suspension/steering.ts";
import { RATE_ROW, wheelRatesTo } from "../suspension/wheelRates.ts";
import { minHeap } from "./minHeap.ts";

/** The range of poses searched: lower arm angle, rad, and steer. */
export interface PoseRange {
  readonly armLow: number;
  readonly armHigh: number;
  readonly steerLow: number;
  readonly steerHigh: number;
}

/** The worst gap of one pair over a range of poses. Left-hand frame of the side, mm. */
export interface WorstGap {
  /** The gap at the pose found. */
  readonly gap: number;
  /** Proven: no pose in the range is worse than this, but for poses at the border of reach (`proven`). */
  readonly bound: number;
  /** False when the range runs out of reach: a sliver along that border, 1/4096 of the range wide, is not bounded. */
  readonly proven: boolean;
  readonly armAngle: number;
  readonly steer: number;
  /** On the part. */
  readonly point: Vec3;
  readonly onRing: Vec3;
  /** How many cells were looked at: what it cost. */
  readonly cells: number;
}

export interface PairToSearch {
  readonly side: SideModel;
  /** The other side: a steer it cannot follow is no pose of the truck. */
  readonly other: SideModel;
  /** 0 for the left side, 3 for the right: where that side's inner end stands in an inner-ends row. */
  readonly innerAt: 0 | 3;
  readonly steering: Steering;
  readonly ring: RingShape;
  readonly part: PartShape;
}

/** A node of the search: half ranges and middles of arm angle and steer, then a cell of the part. */
const NODE = { arm: 0, armHalf: 1, steer: 2, steerHalf: 3, cell: 4 } as const;
const NODE_ROW = 4 + CELL_ROW;

/** Share of the range below which a cell of poses at the border of reach is not split further. */
const BORDER_SHARE = 1 / 4096;

/** Nodes after which the search stops and reports the bound it has reached. */
const MOST_NODES = 400_000;

// Scratch: `worstGap` is not reentrant and calls back nobody.
const pose = new Float64Array(POSE_ROW);
const rates = new Float64Array(RATE_ROW);
const motion = new Float64Array(MOTION_ROW);
const ends = new Float64Array(INNER_ENDS_ROW);
const spread: InnerEndSpread = { speedMost: 0, velocityOff: 0 };
const found = cellBound();

/**
 * Worst gap between one ring and one part over a continuous range of travel and steer, by best-first
 * branch and bound over poses and the part together: each node is a cell of poses × a cell of the part,
 * bounded by `boundCell` with motion proven by `motionBoundTo`; the share of the bound's looseness that
 * is largest is halved. Ends when gap − bound ≤ `tolerance` (mm).
 * @returns null when no pose of the range is in reach.
 */
export function worstGap(pair: PairToSearch, range: PoseRange, tolerance: number): WorstGap | null {
  const search = new Search(pair, range);
  const { cells, count } = pair.part;
  for (let i = 0; i < count; i++) if (cells[i * CELL_ROW] !== CellKind.Solid) search.start(i, range);
  const faces = search.run(tolerance);
  // The inside of a box tells more only where its faces are hit, or where it holds the whole ring.
  if (faces === null || (faces.gap >= 0 && !search.ringInside())) return faces;
  let solids = 0;
  for (let i = 0; i < count; i++) {
    if (cells[i * CELL_ROW] !== CellKind.Solid) continue;
    search.start(i, range);
    solids++;
  }
  return solids > 0 ? search.run(tolerance) : faces;
}

class Search {
  private rows = new Float64Array(1024 * NODE_ROW);
  private count = 0;
  private readonly free: number[] = [];
  private readonly heap = minHeap();
  private best = Number.POSITIVE_INFINITY;
  private bestArm = 0;
  private bestSteer = 0;
  private readonly bestPoint = new Float64Array(6);
  /** Whether cells were given up at the border of reach. */
  private atBorder = false;
  private looked = 0;
  /** No gap is below this: the deepest place of the section, less the part's own radius. */
  private readonly floor: number;
  private readonly leastArm: number;
  private readonly leastSteer: number;

  constructor(
    private readonly pair: PairToSearch,
    range: PoseRange,
  ) {
    let radius = 0;
    const { cells, count } = pair.part;
    for (let i = 0; i < count; i++) radius = Math.max(radius, cells[i * CELL_ROW + CELL.radius]!);
    this.floor = -pair.ring.deepest - radius;
    this.leastArm = BORDER_SHARE * (range.armHigh - range.armLow);
    this.leastSteer = BORDER_SHARE * (range.steerHigh - range.steerLow);
  }

  start(cell: number, range: PoseRange): void {
    const node = this.claim();
    const at = node * NODE_ROW;
    this.rows[at + NODE.arm] = 0.5 * (range.armLow + range.armHigh);
    this.rows[at + NODE.armHalf] = 0.5 * (range.armHigh - range.armLow);
    this.rows[at + NODE.steer] = 0.5 * (range.steerLow + range.steerHigh);
    this.rows[at + NODE.steerHalf] = 0.5 * (range.steerHigh - range.steerLow);
    for (let i = 0; i < CELL_ROW; i++)
      this.rows[at + NODE.cell + i] = this.pair.part.cells[cell * CELL_ROW + i]!;
    this.look(node);
  }

  run(tolerance: number): WorstGap | null {
    while (this.heap.size() > 0 && this.looked < MOST_NODES) {
      if (Math.max(this.heap.leastKey(), this.floor) >= this.best - tolerance) break;
      const node = this.heap.pop();
      this.split(node);
    }
    if (this.best === Number.POSITIVE_INFINITY) return null;
    const open = this.heap.size() > 0 ? this.heap.leastKey() : Number.POSITIVE_INFINITY;
    const [px, py, pz, rx, ry, rz] = this.bestPoint as unknown as [
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    return {
      gap: this.best,
      bound: Math.max(Math.min(this.best, open), this.floor),
      proven: !this.atBorder,
      armAngle: this.bestArm,
      steer: this.bestSteer,
      point: [px, py, pz],
      onRing: [rx, ry, rz],
      cells: this.looked,
    };
  }

  /** Whether a solid of the part holds the ring point found: with clear faces, it then holds the whole ring. */
  ringInside(): boolean {
    const { cells, count } = this.pair.part;
    for (let c = 0; c < count; c++) {
      const at = c * CELL_ROW;
      if (cells[at] !== CellKind.Solid) continue;
      const off = (i: number) => Math.abs(this.bestPoint[3 + i]! - cells[at + 1 + i]!) - cells[at + 4 + i]!;
      if (off(0) < 0 && off(1) < 0 && off(2) < 0) return true;
    }
    return false;
  }

  private claim(): number {
    const reused = this.free.pop();
    if (reused !== undefined) return reused;
    if ((this.count + 1) * NODE_ROW > this.rows.length) {
      const larger = new Float64Array(this.rows.length * 2);
      larger.set(this.rows);
      this.rows = larger;
    }
    return this.count++;
  }

  /** Which half to cut next: 0 the part, 1 the arm, 2 the steering. Kept with the node as its kind's fraction. */
  private readonly cut = new Map<number, 0 | 1 | 2>();

  /** Bounds a node and keeps it in the heap unless it is ruled out. */
  private look(node: number): void {
    this.looked++;
    const at = node * NODE_ROW;
    const rows = this.rows;
    const arm = rows[at]!;
    const armHalf = rows[at + NODE.armHalf]!;
    const steer = rows[at + NODE.steer]!;
    const steerHalf = rows[at + NODE.steerHalf]!;
    const { side, other, steering, innerAt, ring } = this.pair;
    const cos = Math.cos(arm);
    const sin = Math.sin(arm);
    const steers = steering.innerEndsTo(ends, steer) === PoseStatus.Ok;
    const at2 = 3 - innerAt;
    const inReach =
      steers &&
      poseRowTo(pose, 0, other.row, cos, sin, ends[at2]!, ends[at2 + 1]!, ends[at2 + 2]!) === PoseStatus.Ok &&
      poseRowTo(pose, 0, side.row, cos, sin, ends[innerAt]!, ends[innerAt + 1]!, ends[innerAt + 2]!) ===
        PoseStatus.Ok;
    let proven = false;
    if (inReach) {
      const vx = ends[innerAt + 6]!;
      const vy = ends[innerAt + 7]!;
      const vz = ends[innerAt + 8]!;
      wheelRatesTo(rates, 0, side.row, pose, 0, cos, sin, vx, vy, vz);
      proven =
        steering.innerEndSpreadTo(spread, steer, steerHalf) &&
        motionBoundTo(motion, side.row, pose, rates, cos, sin, armHalf, steerHalf, spread, [vx, vy, vz]);
      boundCell(found, ring, pose, POSE.wheelCenter, rows, at + NODE.cell, proven ? motion : null);
      if (found.value < this.best) this.keep(arm, steer, rows[at + NODE.cell + CELL.radius]!);
    }
    if (proven && inReach) {
      if (Math.max(found.bound, this.floor) >= this.best) this.drop(node);
      else {
        const part = found.partShare;
        const widest =
          part >= found.armShare && part >= found.steerShare ? 0 : found.armShare >= found.steerShare ? 1 : 2;
        this.cut.set(node, widest);
        this.heap.push(found.bound, node);
      }
      return;
    }
    if (!inReach && steers && this.outOfReach(arm, armHalf, steer, steerHalf)) {
      this.drop(node);
      return;
    }
    if (armHalf <= this.leastArm && steerHalf <= this.leastSteer) {
      this.atBorder = true;
      this.drop(node);
      return;
    }
    this.cut.set(node, armHalf * this.leastSteer > steerHalf * this.leastArm ? 1 : 2);
    this.heap.push(Number.NEGATIVE_INFINITY, node);
  }

  /** Whether one of the two sides is proven unable to take any pose of the cell. */
  private outOfReach(arm: number, armHalf: number, steer: number, steerHalf: number): boolean {
    const { side, other, steering, innerAt } = this.pair;
    if (!steering.innerEndSpreadTo(spread, steer, steerHalf)) return false;
    const off = spread.speedMost * steerHalf;
    const at2 = 3 - innerAt;
    return (
      provenOutOfReach(side, arm, armHalf, [ends[innerAt]!, ends[innerAt + 1]!, ends[innerAt + 2]!], off) ||
      provenOutOfReach(other, arm, armHalf, [ends[at2]!, ends[at2 + 1]!, ends[at2 + 2]!], off)
    );
  }

  private keep(arm: number, steer: number, radius: number): void {
    this.best = found.value;
    this.bestArm = arm;
    this.bestSteer = steer;
    for (let i = 0; i < 3; i++) {
      this.bestPoint[i] = found.center[i]! - radius * found.away[i]!;
      this.bestPoint[3 + i] = found.center[i]! - found.distance * found.away[i]!;
    }
  }

  private split(node: number): void {
    const cut = this.cut.get(node)!;
    const twin = this.claim();
    const a = node * NODE_ROW;
    const b = twin * NODE_ROW;
    this.rows.copyWithin(b, a, a + NODE_ROW);
    if (cut === 0) splitCell(this.rows, a + NODE.cell, this.rows, a + NODE.cell, b + NODE.cell);
    else {
      const middle = cut === 1 ? NODE.arm : NODE.steer;
      const half = 0.5 * this.rows[a + middle + 1]!;
      this.rows[a + middle]! -= half;
      this.rows[b + middle]! += half;
      this.rows[a + middle + 1] = half;
      this.rows[b + middle + 1] = half;
    }
    this.look(node);
    this.look(twin);
  }

  private drop(node: number): void {
    this.cut.delete(node);
    this.free.push(node);
  }
}
