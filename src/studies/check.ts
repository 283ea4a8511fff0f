import { GAP, GAP_ROW, partGapTo } from "../gaps/partGap.ts";
import type { Vec3 } from "../geometry/vec.ts";
import { armAngleFor } from "../suspension/armAngle.ts";
import type { Side, SideModel } from "../suspension/frontEnd.ts";
import { POSE, POSE_ROW, poseRowTo } from "../suspension/poseRow.ts";
import { PoseStatus } from "../suspension/poseStatus.ts";
import { INNER_ENDS_ROW } from "../suspension/steering.ts";
import { onTruck } from "./gapsAt.ts";
import type { Model, SidedPart } from "./model.ts";
import { type ReachLimit, reachLimits } from "./reachLimits.ts";
import { type PoseRange, type WorstGap, worstGap } from "./worstGap.ts";

export type Verdict = "clear" | "close" | "rubs";

/** The worst gap of one part to one side's wheel over all travel and both locks; mm, vehicle axes. */
export interface CheckEntry {
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
}

export interface CheckReport {
  readonly verdict: Verdict;
  /** null when the setup has no body parts. */
  readonly worst: CheckEntry | null;
  /** Worst of each part on each side, left side first, in the setup's order. */
  readonly parts: readonly CheckEntry[];
  /** Where the linkage runs out of reach within the travel and steer asked for. */
  readonly limits: readonly ReachLimit[];
}

export interface CheckOptions {
  /** mm; how far `bound` may stay below `gap`. */
  readonly tolerance?: number;
  /** Called after each part; return true to stop (the answer is then null). */
  readonly onPart?: (done: number, of: number) => boolean;
}

/** mm. A tenth of a millimeter is half of the finest sixty-fourth: nobody measures a fender closer. */
export const DEFAULT_TOLERANCE = 0.1;

/** mm. Searched finer than asked, since it costs little and settles verdicts near the allowance. */
const SEARCH_TOLERANCE = 0.01;

/** Rubs: interference. Close: less than the allowance, or not proven to keep it to the search's tolerance. */
export function verdictOf(gap: number, bound: number, allowance: number): Verdict {
  if (gap < 0) return "rubs";
  return gap >= allowance && bound >= allowance - SEARCH_TOLERANCE ? "clear" : "close";
}

/**
 * The worst gap of every part over the setup's travel range and both locks, each with a proven bound.
 * Vehicle axes, mm. @returns null when `onPart` stopped it.
 */
export function checkClearance(model: Model, options: CheckOptions = {}): CheckReport | null {
  const tolerance = options.tolerance ?? DEFAULT_TOLERANCE;
  const limits = reachLimits(model);
  const entries: CheckEntry[] = [];
  const total = model.parts.length;
  const lefts = new Map<string, CheckEntry>();
  for (const part of model.parts) {
    if (options.onPart?.(entries.length, total)) return null;
    const twin = part.side === "right" && model.mirrored ? lefts.get(part.shape.name) : undefined;
    const entry =
      twin !== undefined && isMirrorImage(model, part)
        ? mirrorEntry(twin)
        : searchPart(model, part, tolerance);
    if (entry === null) continue;
    if (part.side === "left") lefts.set(part.shape.name, entry);
    entries.push(entry);
  }
  let worst: CheckEntry | null = null;
  for (const entry of entries) if (worst === null || entry.gap < worst.gap) worst = entry;
  const verdict = entries.some((e) => e.verdict === "rubs")
    ? "rubs"
    : entries.some((e) => e.verdict === "close")
      ? "close"
      : "clear";
  return { verdict, worst, parts: entries, limits };
}

/** The part of the right side is the mirror image of the left one of that name. */
function isMirrorImage(model: Model, part: SidedPart): boolean {
  return model.setup.truck.body.some((b) => b.name === part.shape.name && b.side === "both");
}

function mirrorEntry(left: CheckEntry): CheckEntry {
  const [x, y, z] = left.point;
  return { ...left, side: "right", steer: left.steer === 0 ? 0 : -left.steer, point: [x, -y, z] };
}

/** The travel that the setup asks for, as far as both wheels can follow it with the steering straight ahead. */
function travelRangeOf({ setup, frontEnd: { left, right } }: Model): { low: number; high: number } {
  return {
    low: Math.max(setup.travel.droop, left.reach.droop.travel, right.reach.droop.travel),
    high: Math.min(setup.travel.bump, left.reach.bump.travel, right.reach.bump.travel),
  };
}

/** The range of poses of one side within that travel. */
function poseRangeOf(model: Model, side: SideModel): PoseRange {
  const { low, high } = travelRangeOf(model);
  return { armLow: armAngleFor(side, low), armHigh: armAngleFor(side, high), steerLow: -1, steerHigh: 1 };
}

function searchPart(model: Model, { side, shape }: SidedPart, tolerance: number): CheckEntry | null {
  const sideModel = model.frontEnd[side];
  const innerAt = side === "left" ? 0 : 3;
  const found = worstGap(
    {
      side: sideModel,
      other: model.frontEnd[side === "left" ? "right" : "left"],
      innerAt,
      steering: model.frontEnd.steering,
      ring: model.ring,
      part: shape,
    },
    poseRangeOf(model, sideModel),
    Math.min(tolerance, SEARCH_TOLERANCE),
    tolerance,
  );
  return found === null ? null : entryOf(model, side, shape.name, found, tolerance);
}

/** Reads the found pose again: its travel, and the exact gap there (the search saw one point of the part). */
function entryOf(model: Model, side: Side, part: string, found: WorstGap, tolerance: number): CheckEntry {
  const sideModel = model.frontEnd[side];
  const innerAt = side === "left" ? 0 : 3;
  const shape = model.parts.find((p) => p.side === side && p.shape.name === part)!.shape;
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
  const { low, high } = travelRangeOf(model);
  const travel = Math.min(Math.max(pose[POSE.wheelCenter + 2]! - sideModel.centerHeightAtRest, low), high);
  place(found.steer);
  const gap = partGapTo(row, 0, model.ring, pose, POSE.wheelCenter, shape);
  const bound = Math.min(found.bound, gap);
  return {
    part,
    side,
    gap,
    bound,
    tolerance: Math.max(tolerance, gap - bound),
    travel,
    steer: found.steer,
    point: onTruck(row, GAP.point, side),
    verdict: verdictOf(gap, bound, model.setup.allowance),
  };
}
