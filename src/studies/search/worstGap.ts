import { mayHoldCircle } from "../../gaps/boxAboutRing.ts";
import { CELL_ROW, CellKind } from "../../gaps/cells/cells.ts";
import type { PartShape } from "../../gaps/partShape.ts";
import type { RingShape } from "../../gaps/ring/ringShape.ts";
import { requireFinite, requirePositive } from "../../geometry/requireFinite.ts";
import type { Vec3 } from "../../geometry/vec.ts";
import { POSE } from "../../suspension/poseRow.ts";
import { Budget } from "../numeric/budget.ts";
import { PartAtPose } from "./partAtPose.ts";
import { PartSearch } from "./partSearch.ts";
import { PoseCells, type PoseRange, type WheelToMove } from "./poseCells.ts";
import type { Tolerances } from "./search.ts";
import { type PoseToStart, TriedPose } from "./triedPose.ts";

/** @throws RangeError for a range that is not finite, or a tolerance that is not finite and more than 0 */
export function requireSearchable(
  where: string,
  { armLow, armHigh, steerLow, steerHigh }: PoseRange,
  { asked, finer, border }: Tolerances,
): void {
  requireFinite(where, armLow, armHigh, steerLow, steerHigh);
  for (const tolerance of [asked, finer, border]) requirePositive(where, tolerance);
}

/** The worst gap of one pair over a range of poses. Left-hand frame of the side, mm. */
export interface WorstGap {
  /** The gap at the pose found; where none below `Tolerances.below` was, that, and the rest says nothing. */
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

/** Microseconds, about, of a gap at one pose: a solid pressed deep makes it long. */
const POSE_WORK = 250;

/**
 * Worst gap between one ring and one part over a continuous range of travel and steer, by best-first branch and
 * bound over poses and the part together (`partSearch.ts`).
 * @param start a pose of the range that keeps all limits.
 * @param budget once it is spent the search ends with what it has reached.
 * @returns null when no pose of the range is in reach, or none was found before the budget was spent.
 * @throws RangeError as `requireSearchable`
 */
export function worstGap(
  pair: PairToSearch,
  range: PoseRange,
  tolerances: Tolerances,
  start: PoseToStart | null = null,
  budget: Budget = Budget.endless(),
): WorstGap | null {
  requireSearchable("worstGap", range, tolerances);
  const { part, ring } = pair;
  const subject = new PartAtPose(ring, part);
  const search = new PartSearch(PoseCells.over(pair, range), subject, tolerances);
  const tried = new TriedPose(pair, range);
  const take = (arm: number, steer: number, coarse: number): void => {
    const gap = subject.gap(tried.row, POSE.wheelCenter, search.best, coarse);
    if (gap < search.best && tried.keeps(arm, steer)) search.offer(subject.row, arm, steer);
  };
  if (start !== null) tried.look(take, start.arm, start.steer);
  // Who asks for what is below some gap has looked over it.
  if (tolerances.below === undefined) tried.lookOver(search, take, budget, POSE_WORK);
  const done = search.run(piecesOf(part, false), budget);
  // The inside of a box tells more only where its faces are hit, or where it holds the whole ring.
  const solids = piecesOf(part, true).filter((cell) => mayHoldCircle(part.cells, cell * CELL_ROW, ring));
  // Where no pose was found, there is no point of the ring to tell by.
  const isInside = () => search.best < 0 || !search.hasFound || ringInside(part, solids, search.bestPoint);
  if (done && solids.length > 0 && isInside()) search.run(solids, budget);
  if (search.gaveUp) tried.lookAtEnds(take, budget, POSE_WORK);
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
