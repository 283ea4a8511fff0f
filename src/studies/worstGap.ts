import { boundCell, cellBound } from "../gaps/cellBound.ts";
import { CELL, CELL_ROW, CellKind, cellReach, splitCell } from "../gaps/cells.ts";
import { GAP, GAP_ROW, partGapTo } from "../gaps/partGap.ts";
import type { PartShape } from "../gaps/partShape.ts";
import type { RingShape } from "../gaps/ring/ringShape.ts";
import { MOTION_ROW } from "../geometry/motionRow.ts";
import type { Vec3 } from "../geometry/vec.ts";
import type { SideModel } from "../suspension/frontEnd.ts";
import { type InnerEndSpread, motionBoundTo } from "../suspension/motionBound.ts";
import { Border, borderCell, borderCellTo } from "../suspension/outOfReach.ts";
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
  /** Proven: no pose in the range is worse than this. */
  readonly bound: number;
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

/** …and where the border's own pose bounds the cell, the share of that at which rounding would take over. */
const FINEST_SHARE = 1e-8;

/** Steers looked at at each end of the arm's reach. */
const END_SAMPLES = 33;

/** Nodes after which the search stops and reports the bound it has reached. */
const MOST_NODES = 400_000;

// Scratch: `worstGap` is not reentrant and calls back nobody.
const pose = new Float64Array(POSE_ROW);
const rates = new Float64Array(RATE_ROW);
const motion = new Float64Array(MOTION_ROW);
const ends = new Float64Array(INNER_ENDS_ROW);
const spread: InnerEndSpread = { speedMost: 0, velocityOff: 0 };
const found = cellBound();
const gapRow = new Float64Array(GAP_ROW);
const border = borderCell();
const spare = borderCell();

/**
 * Worst gap between one ring and one part over a continuous range of travel and steer, by best-first
 * branch and bound over poses and the part together: each node is a cell of poses × a cell of the part,
 * bounded by `boundCell` with motion proven by `motionBoundTo`; the share of the bound's looseness that
 * is largest is halved. Ends when gap − bound ≤ `tolerance` (mm),
 * or `borderTolerance` where the border of reach decides: motion there grows like a square root.
 * @returns null when no pose of the range is in reach.
 */
export function worstGap(
  pair: PairToSearch,
  range: PoseRange,
  tolerance: number,
  borderTolerance = tolerance,
): WorstGap | null {
  const search = new Search(pair, range, borderTolerance);
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
  /** Least bound of cells settled at the border of reach, within the tolerance asked for. */
  private settled = Number.POSITIVE_INFINITY;
  /** Whether cells were given up there. */
  private atBorder = false;
  private looked = 0;
  /** No gap is below this: the deepest place of the section, less the part's own radius. */
  private readonly floor: number;
  private readonly leastArm: number;
  private readonly leastSteer: number;
  private readonly finestArm: number;
  private readonly finestSteer: number;

  constructor(
    private readonly pair: PairToSearch,
    private readonly range: PoseRange,
    private readonly borderTolerance: number,
  ) {
    let radius = 0;
    const { cells, count } = pair.part;
    for (let i = 0; i < count; i++) radius = Math.max(radius, cells[i * CELL_ROW + CELL.radius]!);
    this.floor = -pair.ring.deepest - radius;
    this.leastArm = BORDER_SHARE * (range.armHigh - range.armLow);
    this.leastSteer = BORDER_SHARE * (range.steerHigh - range.steerLow);
    this.finestArm = this.leastArm * FINEST_SHARE;
    this.finestSteer = this.leastSteer * FINEST_SHARE;
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
    if (this.atBorder) this.sampleEnds();
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
      // Cells of which nothing is known leave only the depth that no gap can pass.
      bound: this.atBorder
        ? Math.min(this.best, this.floor)
        : Math.max(Math.min(this.best, open, this.settled), this.floor),
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
    const otherCan =
      steers &&
      poseRowTo(pose, 0, other.row, cos, sin, ends[at2]!, ends[at2 + 1]!, ends[at2 + 2]!) === PoseStatus.Ok;
    const sideCan =
      steers &&
      poseRowTo(pose, 0, side.row, cos, sin, ends[innerAt]!, ends[innerAt + 1]!, ends[innerAt + 2]!) ===
        PoseStatus.Ok;
    let proven = false;
    if (sideCan) {
      const vx = ends[innerAt + 6]!;
      const vy = ends[innerAt + 7]!;
      const vz = ends[innerAt + 8]!;
      wheelRatesTo(rates, 0, side.row, pose, 0, cos, sin, vx, vy, vz);
      proven =
        steering.innerEndSpreadTo(spread, steer, steerHalf) &&
        motionBoundTo(motion, side.row, pose, rates, cos, sin, armHalf, steerHalf, spread, [vx, vy, vz]);
      boundCell(found, ring, pose, POSE.wheelCenter, rows, at + NODE.cell, proven ? motion : null);
      // Only a pose that both wheels can take counts as found; a bound over more poses than that still holds.
      if (otherCan && found.value < this.best) this.keep(arm, steer, rows[at + NODE.cell + CELL.radius]!);
    }
    if (proven) {
      const bound = Math.max(found.bound, this.floor);
      const { partShare: part, armShare, steerShare } = found;
      const fine = armHalf < this.finestArm && steerHalf < this.finestSteer;
      if (bound >= this.best) this.drop(node);
      else if (!otherCan && (fine || bound >= this.best - this.borderTolerance)) {
        if (!this.isEmpty(arm, armHalf, steer, steerHalf)) this.settled = Math.min(this.settled, bound);
        this.drop(node);
      } else if (!otherCan && this.isEmpty(arm, armHalf, steer, steerHalf)) this.drop(node);
      else {
        this.cut.set(node, part >= armShare && part >= steerShare ? 0 : armShare >= steerShare ? 1 : 2);
        this.heap.push(bound, node);
      }
      return;
    }
    if (steers && this.lookAtBorder(node, arm, armHalf, steer, steerHalf)) return;
    if (armHalf <= this.leastArm && steerHalf <= this.leastSteer) {
      this.atBorder = true;
      this.drop(node);
      return;
    }
    this.cut.set(node, armHalf * this.leastSteer > steerHalf * this.leastArm ? 1 : 2);
    this.heap.push(Number.NEGATIVE_INFINITY, node);
  }

  /** Whether the other side is proven unable to take any pose of the cell. Reads `ends` and `spread`. */
  private isEmpty(arm: number, armHalf: number, steer: number, steerHalf: number): boolean {
    const { other, steering, innerAt } = this.pair;
    if (!steering.innerEndSpreadTo(spread, steer, steerHalf)) return false;
    const at = 3 - innerAt;
    const inner = [ends[at]!, ends[at + 1]!, ends[at + 2]!] as const;
    return borderCellTo(spare, other, arm, armHalf, inner, spread.speedMost * steerHalf) === Border.Empty;
  }

  /**
   * Deals with a cell that may hold the border of reach: dropped when proven empty, else bounded by how far
   * the wheel can be from the border's own pose. @returns false when nothing could be said of it.
   */
  private lookAtBorder(
    node: number,
    arm: number,
    armHalf: number,
    steer: number,
    steerHalf: number,
  ): boolean {
    const { side, steering, innerAt, ring } = this.pair;
    if (!steering.innerEndSpreadTo(spread, steer, steerHalf)) return false;
    const off = spread.speedMost * steerHalf;
    const inner = (at: number) => [ends[at]!, ends[at + 1]!, ends[at + 2]!] as const;
    const state = borderCellTo(border, side, arm, armHalf, inner(innerAt), off);
    if (state === Border.Empty || this.isEmpty(arm, armHalf, steer, steerHalf)) {
      this.drop(node);
      return true;
    }
    if (state !== Border.Bounded) return false;
    const at = node * NODE_ROW + NODE.cell;
    boundCell(found, ring, border.wheel, 0, this.rows, at, null);
    const [x, y, z] = found.center as unknown as [number, number, number];
    const [lx, ly, lz] = border.lowerBallJoint as unknown as [number, number, number];
    const lever = Math.sqrt((x - lx) ** 2 + (y - ly) ** 2 + (z - lz) ** 2);
    const reach = cellReach(this.rows, at, x, y, z);
    const bound = found.value - reach - border.slide - border.turn * (lever + reach);
    if (Math.max(bound, this.floor) >= this.best - this.borderTolerance) {
      if (bound < this.best) this.settled = Math.min(this.settled, bound);
      this.drop(node);
      return true;
    }
    if (armHalf < this.finestArm && steerHalf < this.finestSteer) return false;
    const wider = armHalf * this.leastSteer > steerHalf * this.leastArm ? 1 : 2;
    this.cut.set(node, reach > border.slide + border.turn * lever ? 0 : wider);
    this.heap.push(bound, node);
    return true;
  }

  /** Where nothing could be proven at an end of the arm's reach, at least looks at that end itself. */
  private sampleEnds(): void {
    const { side, other, steering, innerAt, ring, part } = this.pair;
    const { armLow, armHigh, steerLow, steerHigh } = this.range;
    for (const arm of [armLow, armHigh]) {
      const cos = Math.cos(arm);
      const sin = Math.sin(arm);
      for (let i = 0; i < END_SAMPLES; i++) {
        const steer = steerLow + ((steerHigh - steerLow) * i) / (END_SAMPLES - 1);
        if (steering.innerEndsTo(ends, steer) !== PoseStatus.Ok) continue;
        const stands = (row: Float64Array, at: number) =>
          poseRowTo(pose, 0, row, cos, sin, ends[at]!, ends[at + 1]!, ends[at + 2]!) === PoseStatus.Ok;
        if (!stands(other.row, 3 - innerAt) || !stands(side.row, innerAt)) continue;
        if (!(partGapTo(gapRow, 0, ring, pose, POSE.wheelCenter, part, this.best) < this.best)) continue;
        this.best = gapRow[GAP.gap]!;
        this.bestArm = arm;
        this.bestSteer = steer;
        this.bestPoint.set(gapRow.subarray(GAP.point, GAP_ROW));
      }
    }
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
