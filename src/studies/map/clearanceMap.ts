import { GAP, GAP_ROW } from "../../gaps/partGap.ts";
import { armAngleFor, travelStatus } from "../../suspension/armAngle.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { POSE_ROW, poseRowTo } from "../../suspension/poseRow.ts";
import { PoseStatus } from "../../suspension/poseStatus.ts";
import { solvePose } from "../../suspension/solvePose.ts";
import { INNER_ENDS_ROW } from "../../suspension/steering.ts";
import { limitsOn } from "../limits/limitsOn.ts";
import type { Model } from "../model/model.ts";
import { pairGapTo } from "../model/pairs.ts";
import { Budget } from "../numeric/budget.ts";
import { coarseFirst, evenly } from "../numeric/evenly.ts";
import { LimitCells, type MapPastLimit } from "./limitCells.ts";
import { leastTogether, PairTrack } from "./pairTrack.ts";

/** One side of a map: flat arrays, cell (row, col) at row × cols + col. mm. */
export interface MapSide {
  /** Worst gap over all pairs of the side; NaN where out of reach or not looked at, +Infinity where nothing is measured. */
  readonly gap: Float64Array;
  /** The same over the pairs whose gap changes with the pose: what `contoursOf` follows. */
  readonly moving: Float64Array;
  /** Least gap of what rides together, the same in every cell; +Infinity where nothing does. */
  readonly together: number;
  /** Which pair has `gap`: its place in `model.pairs`; −1 where there is none. */
  readonly pair: Int16Array;
  /** The point on the part, vehicle axes (right side y < 0), three numbers a cell; NaN where there is none. */
  readonly point: Float64Array;
}

/** Where the linkage cannot go: of each cell why, as `solvePose` says it. Both wheels share it. */
export interface MapReach {
  /** A `PoseStatus`: `Ok`, or what stops the pose. */
  readonly status: Uint8Array;
  /** Which side's joint: 0 left, 1 right. */
  readonly side: Uint8Array;
  /** What ran out: 0 travel, 1 steer. */
  readonly along: Uint8Array;
  /** The last travel (mm) or steer that closes; NaN where the pose is in reach. */
  readonly startsAt: Float64Array;
}

/** Worst gaps over travel × steer. Plain data and typed arrays, so that a worker can hand it over. */
export interface ClearanceMap {
  /** Travel of each row, mm, droop to bump. */
  readonly travels: Float64Array;
  /** Steer of each column, −1 … +1. */
  readonly steers: Float64Array;
  readonly left: MapSide;
  readonly right: MapSide;
  readonly reach: MapReach;
  /** Null where the setup gives no limits. */
  readonly pastLimit: MapPastLimit | null;
  /** The budget was spent first: cells in reach without a gap were not looked at. */
  readonly cutShort?: true;
}

export interface MapOptions {
  /** Heights and steers looked at, ends included; whole, at least 2. Default `MAP_CELLS` each. */
  readonly rows?: number;
  readonly cols?: number;
  /** Once it is spent, cells left are not looked at; rows are looked at from coarse to fine. */
  readonly budget?: Budget;
}

/** Microseconds, about, of a cell that is not near the one before: a solid pressed deep makes it longer. */
const CELL_WORK = 20;

/** Fine enough to see: an eighth of an inch a row on a usual truck. */
export const MAP_CELLS = 61;

/**
 * The worst gap of each side over an even grid of the setup's travel (rows) × both locks (columns). Exact at each
 * cell, as a gap at one pose; between cells nothing is claimed (`checkClearance`, `steerLimits`, `lowestTravels` do).
 * A mirrored truck is worked out on the left alone.
 * @throws RangeError for rows or cols that are no grid.
 */
export function mapOf(model: Model, options: MapOptions = {}): ClearanceMap {
  const budget = options.budget ?? Budget.endless();
  const rows = sizeOf("rows", options.rows);
  const cols = sizeOf("cols", options.cols);
  const { droop, bump } = model.setup.travel;
  const limits = limitsOn(model, "left").length > 0 ? new LimitCells(model, rows, cols) : null;
  const map: ClearanceMap = {
    travels: evenly(droop, bump, rows),
    steers: evenly(-1, 1, cols),
    left: emptySide(model, "left", rows * cols),
    right: emptySide(model, "right", rows * cols),
    reach: {
      status: new Uint8Array(rows * cols),
      side: new Uint8Array(rows * cols),
      along: new Uint8Array(rows * cols),
      startsAt: new Float64Array(rows * cols).fill(Number.NaN),
    },
    pastLimit: limits,
  };
  const twins = mirrorTwins(model);
  const steering = steeringRows(model, map.steers);
  const left = new SideSweep(model, "left", map, steering);
  const right = new SideSweep(model, "right", map, steering);
  for (const row of coarseFirst(rows)) {
    const canLeft = left.place(row);
    // Of mirrored sides the right wheel does at −steer what the left one does.
    const canRight = twins === null ? right.place(row) : canLeft.slice().reverse();
    for (let col = 0; col < cols; col++) {
      if (canLeft[col] === 1 && canRight[col] === 1) continue;
      canLeft[col] = 0;
      keepReach(map, model, row, col);
    }
    if (limits !== null)
      limits.sweep(map, row, canLeft, steering.ends, left.poses, twins === null ? right.poses : null);
    left.sweep(row, canLeft, budget);
    if (twins === null) right.sweep(row, canLeft, budget);
    else mirrorRow(map, row, twins);
  }
  const told = limits === null ? map : { ...map, pastLimit: limits.told() };
  return budget.cut ? { ...told, cutShort: true } : told;
}

function sizeOf(name: string, asked: number | undefined): number {
  const size = asked ?? MAP_CELLS;
  if (Number.isInteger(size) && size >= 2) return size;
  throw new RangeError(`mapOf: ${name} must be a whole number of at least 2, got ${size}`);
}

function emptySide(model: Model, side: Side, cells: number): MapSide {
  return {
    together: leastTogether(model, side).gap,
    gap: new Float64Array(cells).fill(Number.NaN),
    moving: new Float64Array(cells).fill(Number.NaN),
    pair: new Int16Array(cells).fill(-1),
    point: new Float64Array(3 * cells).fill(Number.NaN),
  };
}

/** Inner ends at each column, in rows of `INNER_ENDS_ROW`; `can` 0 where the steering itself cannot go. */
interface SteeringRows {
  readonly ends: Float64Array;
  readonly can: Uint8Array;
}

function steeringRows(model: Model, steers: Float64Array): SteeringRows {
  const ends = new Float64Array(steers.length * INNER_ENDS_ROW);
  const can = new Uint8Array(steers.length);
  const row = new Float64Array(INNER_ENDS_ROW);
  steers.forEach((steer, col) => {
    can[col] = model.frontEnd.steering.innerEndsTo(row, steer) === PoseStatus.Ok ? 1 : 0;
    ends.set(row, col * INNER_ENDS_ROW);
  });
  return { ends, can };
}

/** Fills one side of a map row by row. */
class SideSweep {
  /** Of the row placed last. */
  readonly poses: Float64Array;
  private readonly can: Uint8Array;
  private readonly track: PairTrack;
  private readonly out: MapSide;
  /** The worst of what rides together: its place in `model.pairs`. */
  private readonly together: number;
  private readonly row = new Float64Array(GAP_ROW);

  constructor(
    private readonly model: Model,
    private readonly side: Side,
    private readonly map: ClearanceMap,
    private readonly steering: SteeringRows,
  ) {
    const cols = map.steers.length;
    this.poses = new Float64Array(cols * POSE_ROW);
    this.can = new Uint8Array(cols);
    this.track = new PairTrack(model, side);
    this.out = map[side];
    this.together = leastTogether(model, side).pair;
  }

  /** Poses of a whole row. @returns which columns this side can take: 1, else 0. */
  place(row: number): Uint8Array {
    const { can, poses, steering } = this;
    const side = this.model.frontEnd[this.side];
    const travel = this.map.travels[row]!;
    can.fill(0);
    if (travelStatus(side, travel) !== PoseStatus.Ok) return can;
    const arm = armAngleFor(side, travel);
    const cos = Math.cos(arm);
    const sin = Math.sin(arm);
    const end = this.side === "left" ? 0 : 3;
    const { ends } = steering;
    for (let col = 0; col < can.length; col++) {
      if (steering.can[col] === 0) continue;
      const at = col * INNER_ENDS_ROW + end;
      const status = poseRowTo(
        poses,
        col * POSE_ROW,
        side.row,
        cos,
        sin,
        ends[at]!,
        ends[at + 1]!,
        ends[at + 2]!,
      );
      if (status === PoseStatus.Ok) can[col] = 1;
    }
    return can;
  }

  /** Gaps of a row at the columns both sides can take: there and back, so that each pose is near the one before. */
  sweep(row: number, can: Uint8Array, budget: Budget): void {
    const cols = can.length;
    const back = row % 2 === 1;
    for (let step = 0; step < cols; step++) {
      const col = back ? cols - 1 - step : step;
      if (budget.isSpent(CELL_WORK)) return;
      if (can[col] === 1) this.fill(row * cols + col, col * POSE_ROW);
    }
  }

  private fill(cell: number, poseAt: number): void {
    const { out, track, poses } = this;
    let pair = track.worst(poses, poseAt);
    let found = track.row;
    const moving = found[GAP.gap]!;
    out.moving[cell] = moving;
    if (out.together < moving) {
      pair = this.together;
      found = this.row;
      pairGapTo(found, 0, this.model.pairs[pair]!, poses, poseAt);
    }
    out.gap[cell] = pair < 0 ? Number.POSITIVE_INFINITY : found[GAP.gap]!;
    out.pair[cell] = pair;
    if (pair < 0) return;
    const { point } = out;
    point[3 * cell] = found[GAP.point]!;
    point[3 * cell + 1] = this.side === "right" ? -found[GAP.point + 1]! : found[GAP.point + 1]!;
    point[3 * cell + 2] = found[GAP.point + 2]!;
  }
}

/** Asks `solvePose` why a cell is out of reach. @throws TypeError when it is not: the two must agree to the bit. */
function keepReach({ travels, steers, reach }: ClearanceMap, model: Model, row: number, col: number): void {
  const cell = row * steers.length + col;
  const pose = solvePose(model.frontEnd, travels[row]!, steers[col]!);
  if (pose.ok) throw new TypeError(`mapOf: ${travels[row]} mm, steer ${steers[col]} is in reach after all`);
  reach.status[cell] = pose.status;
  reach.side[cell] = pose.side === "left" ? 0 : 1;
  reach.along[cell] = pose.along === "travel" ? 0 : 1;
  reach.startsAt[cell] = pose.startsAt;
}

/** Each left pair's twin on the right (places in `model.pairs`), or null when the sides are no mirror images. */
function mirrorTwins(model: Model): Int16Array | null {
  if (!model.mirrored || model.setup.truck.body.some((part) => part.side !== "both")) return null;
  const twins = new Int16Array(model.pairs.length).fill(-1);
  for (const [i, left] of model.pairs.entries()) {
    if (left.side !== "left") continue;
    twins[i] = model.pairs.findIndex((right) => right.side === "right" && right.name === left.name);
    if (twins[i] === -1) return null;
  }
  return twins;
}

function mirrorRow({ left, right, steers }: ClearanceMap, row: number, twins: Int16Array): void {
  const cols = steers.length;
  for (let col = 0; col < cols; col++) {
    const to = row * cols + col;
    const from = row * cols + cols - 1 - col;
    right.gap[to] = left.gap[from]!;
    right.moving[to] = left.moving[from]!;
    right.pair[to] = left.pair[from]! < 0 ? -1 : twins[left.pair[from]!]!;
    right.point[3 * to] = left.point[3 * from]!;
    right.point[3 * to + 1] = -left.point[3 * from + 1]!;
    right.point[3 * to + 2] = left.point[3 * from + 2]!;
  }
}
