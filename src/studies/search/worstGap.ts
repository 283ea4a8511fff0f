import { CELL_ROW, CellKind } from "../../gaps/cells/cells.ts";
import type { PartShape } from "../../gaps/partShape.ts";
import type { RingShape } from "../../gaps/ring/ringShape.ts";
import { requireFinite, requirePositive } from "../../geometry/requireFinite.ts";
import type { Vec3 } from "../../geometry/vec.ts";
import type { SideModel } from "../../suspension/frontEnd.ts";
import { POSE, POSE_ROW, poseRowTo } from "../../suspension/poseRow.ts";
import { PoseStatus } from "../../suspension/poseStatus.ts";
import { INNER_ENDS_ROW } from "../../suspension/steering.ts";
import { Budget } from "../numeric/budget.ts";
import { OFFER_COARSE } from "./deepTolerance.ts";
import { PartAtPose } from "./partAtPose.ts";
import { PoseCells, type WheelToMove } from "./poseCells.ts";
import { Search } from "./search.ts";

/** The range of poses searched: lower arm angle, rad, and steer. */
export interface PoseRange {
  readonly armLow: number;
  readonly armHigh: number;
  readonly steerLow: number;
  readonly steerHigh: number;
}

/** @throws RangeError for a range that is not finite, or a tolerance that is not finite and more than 0 */
export function requireSearchable(
  where: string,
  { armLow, armHigh, steerLow, steerHigh }: PoseRange,
  ...tolerances: readonly number[]
): void {
  requireFinite(where, armLow, armHigh, steerLow, steerHigh);
  for (const tolerance of tolerances) requirePositive(where, tolerance);
}

/** A pose to begin with: lower arm angle, rad, and steer. */
export interface PoseToStart {
  readonly arm: number;
  readonly steer: number;
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

export interface PairToSearch extends WheelToMove {
  readonly ring: RingShape;
  readonly part: PartShape;
}

/** Steers looked at at each end of the arm's reach. */
const END_SAMPLES = 33;

/** Poses looked at before the search, along arm and steer, and rounds of looking closer. */
const FIRST_ARMS = 9;
const FIRST_STEERS = 13;
const FIRST_ROUNDS = 24;

/** mm. How much too large a gap looked at there may be told at first; it falls as the poses close in. */
const FIRST_COARSE = 1;

/** Microseconds, about, of one of these: a solid pressed deep makes it long. */
const POSE_WORK = 250;

// Scratch: `worstGap` is not reentrant.
const pose = new Float64Array(POSE_ROW);
const ends = new Float64Array(INNER_ENDS_ROW);

/**
 * Worst gap between one ring and one part over a continuous range of travel and steer, by best-first branch and
 * bound over poses and the part together (`worst/search.ts`). Ends when gap − bound ≤ `tolerance` (mm), or
 * `borderTolerance` where the border of reach decides: motion there grows like a square root.
 * @param start a pose of the range that keeps all limits.
 * @param budget once it is spent the search ends with what it has reached.
 * @returns null when no pose of the range is in reach, or none was found before the budget was spent.
 * @throws RangeError as `requireSearchable`
 */
export function worstGap(
  pair: PairToSearch,
  range: PoseRange,
  tolerance: number,
  borderTolerance = tolerance,
  start: PoseToStart | null = null,
  budget: Budget = Budget.endless(),
): WorstGap | null {
  const { part, ring } = pair;
  const poses = new PoseCells(pair);
  requireSearchable("worstGap", range, tolerance, borderTolerance);
  const { armLow, armHigh, steerLow, steerHigh } = range;
  const armHalf = 0.5 * (armHigh - armLow);
  const steerHalf = 0.5 * (steerHigh - steerLow);
  poses.add(armLow + armHalf, armHalf, steerLow + steerHalf, steerHalf);
  const subject = new PartAtPose(ring, part);
  const search = new Search(poses, subject, borderTolerance);
  if (start !== null) lookAt(search, pair, subject, start.arm, start.steer);
  lookOver(search, pair, range, subject, budget);
  const done = search.run(piecesOf(part, false), tolerance, budget);
  // The inside of a box tells more only where its faces are hit, or where it holds the whole ring.
  const solids = piecesOf(part, true);
  if (done && solids.length > 0 && (search.best < 0 || ringInside(part, solids, search.bestPoint)))
    search.run(solids, tolerance, budget);
  if (search.gaveUp) sampleEnds(search, pair, range, subject, budget);
  if (search.best === Number.POSITIVE_INFINITY) return null;
  const [px, py, pz, rx, ry, rz] = search.bestPoint as unknown as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  return {
    gap: search.best,
    bound: search.bound(),
    armAngle: search.bestArm,
    steer: search.bestSteer,
    point: [px, py, pz],
    onRing: [rx, ry, rz],
    cells: search.cells,
  };
}

/** Numbers of the part's cells that are, or are not, solids; none of a part with a tree. */
function piecesOf({ cells, count, tree }: PartShape, solid: boolean): Int32Array {
  const pieces: number[] = [];
  for (let i = 0; i < count && tree === undefined; i++)
    if ((cells[i * CELL_ROW] === CellKind.Solid) === solid) pieces.push(i);
  return Int32Array.from(pieces);
}

/** Whether a solid of the part holds the ring point found: with clear faces, it then holds the whole ring. */
function ringInside({ cells }: PartShape, solids: Int32Array, bestPoint: Float64Array): boolean {
  return solids.some((solid) => {
    const at = solid * CELL_ROW;
    return [0, 1, 2].every((i) => Math.abs(bestPoint[3 + i]! - cells[at + 1 + i]!) < cells[at + 4 + i]!);
  });
}

/** Looks at a grid of poses, then ever closer about the worst of them: a good gap early keeps the search small. */
function lookOver(
  search: Search,
  pair: WheelToMove,
  range: PoseRange,
  subject: PartAtPose,
  budget: Budget,
): void {
  const { armLow, armHigh, steerLow, steerHigh } = range;
  let arm = (armHigh - armLow) / (FIRST_ARMS - 1);
  let steer = (steerHigh - steerLow) / (FIRST_STEERS - 1);
  for (let i = 0; i < FIRST_ARMS; i++) {
    for (let j = 0; j < FIRST_STEERS; j++) {
      // Back and forth, so that one pose is near the last.
      const along = i % 2 === 0 ? j : FIRST_STEERS - 1 - j;
      if (budget.isSpent(POSE_WORK)) return;
      lookAt(search, pair, subject, armLow + i * arm, steerLow + along * steer, FIRST_COARSE);
    }
  }
  let coarse = FIRST_COARSE;
  for (let round = 0; round < FIRST_ROUNDS; round++) {
    const before = search.best;
    const { bestArm, bestSteer } = search;
    if (budget.isSpent(2 * POSE_WORK)) return;
    for (let way = -1; way <= 1; way += 2) {
      lookAt(search, pair, subject, clamped(bestArm + way * arm, armLow, armHigh), bestSteer, coarse);
      lookAt(search, pair, subject, bestArm, clamped(bestSteer + way * steer, steerLow, steerHigh), coarse);
    }
    if (search.best < before) continue;
    arm *= 0.5;
    steer *= 0.5;
    coarse = Math.max(0.5 * coarse, OFFER_COARSE);
  }
}

function clamped(value: number, low: number, high: number): number {
  return value < low ? low : value > high ? high : value;
}

/** Where nothing could be proven at an end of the arm's reach, at least looks at that end itself. */
function sampleEnds(
  search: Search,
  pair: WheelToMove,
  range: PoseRange,
  subject: PartAtPose,
  budget: Budget,
): void {
  const { armLow, armHigh, steerLow, steerHigh } = range;
  for (const arm of [armLow, armHigh]) {
    for (let i = 0; i < END_SAMPLES && !budget.isSpent(POSE_WORK); i++)
      lookAt(search, pair, subject, arm, steerLow + ((steerHigh - steerLow) * i) / (END_SAMPLES - 1));
  }
}

/** Offers the search the gap at one pose, if both wheels can take it. */
function lookAt(
  search: Search,
  { side, other, steering, innerAt, limits }: WheelToMove,
  subject: PartAtPose,
  arm: number,
  steer: number,
  coarse = OFFER_COARSE,
): void {
  if (steering.innerEndsTo(ends, steer) !== PoseStatus.Ok) return;
  const cos = Math.cos(arm);
  const sin = Math.sin(arm);
  if (other !== null && !other.stands(arm, ends)) return;
  if (!stands(side, cos, sin, innerAt)) return;
  if (!(subject.gap(pose, POSE.wheelCenter, search.best, coarse) < search.best)) return;
  if (limits === undefined || limits.keepsAt(arm, steer)) search.offer(subject.row, arm, steer);
}

function stands({ row }: SideModel, cos: number, sin: number, at: number): boolean {
  return poseRowTo(pose, 0, row, cos, sin, ends[at]!, ends[at + 1]!, ends[at + 2]!) === PoseStatus.Ok;
}
