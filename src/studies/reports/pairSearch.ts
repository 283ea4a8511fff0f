import { gapSlack } from "../../gaps/cells/tolerances.ts";
import { GAP, GAP_ROW } from "../../gaps/partGap.ts";
import type { Vec3 } from "../../geometry/vec.ts";
import { armAngleFor } from "../../suspension/armAngle.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { POSE, POSE_ROW, poseRowTo } from "../../suspension/poseRow.ts";
import { PoseStatus } from "../../suspension/poseStatus.ts";
import { INNER_ENDS_ROW } from "../../suspension/steering.ts";
import type { Model } from "../model/model.ts";
import { type Pair, pairGapTo, type TogetherPair } from "../model/pairs.ts";
import type { Budget } from "../numeric/budget.ts";
import { toleranceAt } from "../search/deepTolerance.ts";
import type { Tolerances } from "../search/search.ts";
import type { SideRange } from "../search/sideRange.ts";
import { type PoseToStart, TriedPose } from "../search/triedPose.ts";
import { floorOf, type MovingPair, worstGap } from "../search/worstGap.ts";
import { onTruck } from "./gapsAt.ts";

export type Verdict = "clear" | "close" | "rubs";

/** The worst gap of one pair on one side over all travel and both locks; mm, vehicle axes. */
export interface CheckEntry {
  /** The pair's name: the body part's, or of what moves. */
  readonly part: string;
  readonly side: Side;
  /** The gap at the pose found. */
  readonly gap: number;
  /** Proven: no pose in range is worse; gap − bound ≤ tolerance. */
  readonly bound: number;
  /** What is reached: the tolerance asked for, or more when the search was cut short. */
  readonly tolerance: number;
  readonly travel: number;
  readonly steer: number;
  /** On the part. */
  readonly point: Vec3;
  readonly verdict: Verdict;
  /** Both ride on the knuckle: the gap is the same at every pose, `travel` and `steer` say nothing. */
  readonly together?: true;
}

/** mm. A tenth of a millimeter is half of the finest sixty-fourth: nobody measures a fender closer. */
export const DEFAULT_TOLERANCE = 0.1;

/** mm. Searched finer than asked where that costs little, and to settle verdicts near the allowance. */
const SEARCH_TOLERANCE = 0.01;

/** Rubs: interference. Close: less than the allowance, or not proven to keep it to the search's tolerance. */
export function verdictOf(gap: number, bound: number, allowance: number): Verdict {
  if (gap < 0) return "rubs";
  return gap >= allowance && bound >= allowance - SEARCH_TOLERANCE ? "clear" : "close";
}

/** Of two answers about one pair the worse pose and the closer bound: both hold. */
export function better(a: CheckEntry | null, b: CheckEntry | null, allowance: number): CheckEntry | null {
  if (a === null || b === null) return a ?? b;
  const worse = b.gap <= a.gap ? b : a;
  const bound = Math.min(worse.gap, Math.max(a.bound, b.bound));
  const asked = Math.min(a.tolerance, b.tolerance);
  const verdict = verdictOf(worse.gap, bound, allowance);
  return { ...worse, bound, tolerance: Math.max(asked, worse.gap - bound), verdict };
}

/** The entry of a mirrored truck's right side. */
export function mirrorEntry(left: CheckEntry): CheckEntry {
  const [x, y, z] = left.point;
  return { ...left, side: "right", steer: left.steer === 0 ? 0 : -left.steer, point: [x, -y, z] };
}

/**
 * The worst gap of one pair over the poses of a range; null where it has none. Once the budget is spent it is what was
 * reached.
 */
export function searchPair(
  model: Model,
  pair: Pair,
  range: SideRange,
  tolerance: number,
  budget: Budget,
): CheckEntry | null {
  if (pair.kind === "together") return togetherEntry(model, pair, range, tolerance);
  const { allowance } = model.setup;
  const finer = Math.min(tolerance, SEARCH_TOLERANCE);
  const found = worstOf(pair, range, { asked: tolerance, finer, border: tolerance, allowance }, budget);
  if (found !== null) return entryOf(model, pair, range, found, tolerance);
  return budget.cut ? entryOf(model, pair, range, unsearched(pair, range.start), tolerance) : null;
}

/**
 * The same, but only gaps below some value are looked for: where another pair comes as near, that is all there is to know.
 * @returns a pose with such a gap, null = none was found; and what no gap of the pair is below, mm
 */
export function searchPairBelow(
  model: Model,
  pair: Exclude<Pair, TogetherPair>,
  range: SideRange,
  below: number,
  tolerance: number,
  budget: Budget,
): { readonly entry: CheckEntry | null; readonly bound: number } {
  const limit = below === Number.POSITIVE_INFINITY ? {} : { below };
  const found = worstOf(
    pair,
    range,
    { asked: tolerance, finer: tolerance, border: tolerance, ...limit },
    budget,
  );
  if (found === null) return { entry: null, bound: below };
  if (!(found.gap < below)) return { entry: null, bound: found.bound };
  const entry = entryOf(model, pair, range, found, tolerance);
  return { entry, bound: entry.bound };
}

function worstOf(
  pair: Exclude<Pair, TogetherPair>,
  range: SideRange,
  tolerances: Tolerances,
  budget: Budget,
): (Found & { readonly gap: number }) | null {
  const { wheel, start } = range;
  // Each look at a spring or shock is dear.
  const finer = pair.kind === "springOrShock" ? tolerances.asked : tolerances.finer;
  return worstGap({ ...wheel, pair }, range, { ...tolerances, finer }, start, budget);
}

/** A pose to be looked at; travel in mm, steer −1 … +1. */
export interface KnownPose {
  readonly travel: number;
  readonly steer: number;
}

/** What was reached of a pair whose search was ended first, or the worse of it at one of some poses that count. */
export function withKnown(
  model: Model,
  pair: Pair,
  range: SideRange,
  entry: CheckEntry,
  poses: readonly KnownPose[],
  tolerance: number,
): CheckEntry {
  if (pair.kind === "together") return entry;
  const tried = new TriedPose(range.wheel, range);
  const row = new Float64Array(GAP_ROW);
  let worst = entry;
  for (const { travel, steer } of poses) {
    if (travel < range.low || travel > range.high || steer < range.steerLow || steer > range.steerHigh)
      continue;
    const arm = armAngleFor(range.wheel.side, travel);
    if (!tried.stands(arm, steer) || !tried.keeps(arm, steer)) continue;
    if (pairGapTo(row, 0, pair, tried.row, 0) >= worst.gap) continue;
    worst = entryOf(model, pair, range, { bound: entry.bound, armAngle: arm, steer }, tolerance);
  }
  return worst;
}

/** Of a pair whose turn did not come: the pose it would have begun with, and the depth that no gap can pass. */
function unsearched(pair: MovingPair, start: PoseToStart | null): Found {
  return { bound: floorOf(pair), armAngle: start?.arm ?? 0, steer: start?.steer ?? 0 };
}

/** What a search found: the pose, and the bound over all of them. */
interface Found {
  readonly bound: number;
  readonly armAngle: number;
  readonly steer: number;
}

/** Reads the found pose again: its travel, and the exact gap there (the search saw one point of the part). */
export function entryOf(
  model: Model,
  pair: Pair,
  { low, high }: SideRange,
  found: Found,
  tolerance: number,
): CheckEntry {
  const { name, side } = pair;
  const sideModel = model.frontEnd[side];
  const innerAt = side === "left" ? 0 : 3;
  const ends = new Float64Array(INNER_ENDS_ROW);
  const pose = new Float64Array(POSE_ROW);
  const row = new Float64Array(GAP_ROW);
  const cos = Math.cos(found.armAngle);
  const sin = Math.sin(found.armAngle);
  const place = (steer: number) =>
    model.frontEnd.steering.innerEndsTo(ends, steer) === PoseStatus.Ok &&
    poseRowTo(pose, 0, sideModel.row, cos, sin, ends[innerAt]!, ends[innerAt + 1]!, ends[innerAt + 2]!);
  place(0);
  // Rounding must not put the pose past an end of travel that the linkage cannot pass.
  const travel = Math.min(Math.max(pose[POSE.wheelCenter + 2]! - sideModel.centerHeightAtRest, low), high);
  place(found.steer);
  const gap = pairGapTo(row, 0, pair, pose, 0);
  const bound = Math.min(found.bound, gap);
  return {
    part: name,
    side,
    gap,
    bound,
    tolerance: Math.max(toleranceAt(gap, tolerance), gap - bound),
    travel,
    steer: found.steer,
    point: onTruck(row, GAP.point, side),
    verdict: verdictOf(gap, bound, model.setup.allowance),
  };
}

/** A gap no pose changes: proven to what one pose's gap is searched to. Told at rest, which always exists. */
function togetherEntry(model: Model, pair: TogetherPair, range: SideRange, tolerance: number): CheckEntry {
  const gap = pair.row[GAP.gap]!;
  const atRest = entryOf(
    model,
    pair,
    range,
    { bound: gap - gapSlack(gap), armAngle: 0, steer: 0 },
    tolerance,
  );
  // Nothing is searched: a deep one is known as well as any.
  const reached = Math.max(tolerance, atRest.gap - atRest.bound);
  return { ...atRest, tolerance: reached, travel: 0, steer: 0, together: true };
}
