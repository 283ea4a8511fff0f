import type { Vec3 } from "../../geometry/vec.ts";
import type { Alignment } from "../../suspension/alignment.ts";
import { jointOf } from "../../suspension/poseStatus.ts";
import { type OutOfReach, type SidePose, solvePose } from "../../suspension/solvePose.ts";
import { type LimitMargin, limitReader } from "../limits/limitsOf.ts";
import { limitsPastAt } from "../limits/limitsPastAt.ts";
import type { Model } from "../model/model.ts";
import { Budget } from "../numeric/budget.ts";
import { coarseFirst } from "../numeric/evenly.ts";
import { type GapEntry, gapsAt } from "./gapsAt.ts";

/** One side of a row; mm, radians, vehicle axes, signs as in `Alignment`. */
export interface SweepSide extends Alignment {
  /** Center plane to contact patch, mm, + outboard on both sides. */
  readonly halfTrack: number;
  readonly wheelCenter: Vec3;
}

/** A pose of a sweep that can be reached. */
export interface ReachedRow {
  readonly ok: true;
  readonly travel: number;
  readonly steer: number;
  readonly left: SweepSide;
  readonly right: SweepSide;
  /** Every part on each side, left side first. */
  readonly gaps: readonly GapEntry[];
  /** The limits that the pose passes; empty where all are kept, or none is given. */
  readonly past: readonly LimitMargin[];
}

/** A pose of a sweep that cannot be reached: the joint, and where along travel (mm) or steer it ran out. */
export interface UnreachedRow {
  readonly ok: false;
  readonly travel: number;
  readonly steer: number;
  readonly side: OutOfReach["side"];
  readonly joint: string;
  readonly along: OutOfReach["along"];
  readonly startsAt: number;
}

export type SweepRow = ReachedRow | UnreachedRow;

/** The tables behind the plots. */
export interface Sweep {
  /** From full droop to full bump, steering straight ahead. */
  readonly byTravel: readonly SweepRow[];
  /** From full right to full left lock, at travel 0. */
  readonly bySteer: readonly SweepRow[];
  /** The budget was spent first: rows it did not come to are left out, as evenly as may be. */
  readonly cutShort?: true;
}

/** Rows a sweep has when nobody says: every quarter or third of an inch on a usual truck. */
export const DEFAULT_SWEEP_ROWS = 25;

/** Microseconds, about, of all gaps at a pose: a solid pressed deep makes them longer. */
const ROW_WORK = 250;

/**
 * Tables of alignment and gaps over the setup's travel and over both locks, evenly spaced, ends included.
 * @param rows of each table, whole, at least 2. @throws RangeError for other numbers.
 */
export function sweepOf(
  model: Model,
  rows: number = DEFAULT_SWEEP_ROWS,
  budget: Budget = Budget.endless(),
): Sweep {
  if (!(Number.isInteger(rows) && rows >= 2)) {
    throw new RangeError(`sweepOf: rows must be a whole number of at least 2, got ${rows}`);
  }
  const { droop, bump } = model.setup.travel;
  const tabled = (values: readonly number[], share: Budget, row: (value: number) => SweepRow) => {
    const found: SweepRow[] = [];
    for (const i of coarseFirst(rows)) {
      if (share.isSpent(ROW_WORK)) break;
      found[i] = row(values[i]!);
    }
    return found.filter(Boolean);
  };
  const limitsAt = limitReader(model);
  const byTravel = tabled(evenly(droop, bump, rows), budget.share(2), (travel) =>
    sweepRow(model, travel, 0, limitsAt),
  );
  const bySteer = tabled(evenly(-1, 1, rows), budget.share(1), (steer) =>
    sweepRow(model, 0, steer, limitsAt),
  );
  return { byTravel, bySteer, ...(budget.cut ? { cutShort: true } : {}) };
}

/** One row at any travel (mm) and steer (−1 … +1). @param limitsAt reads the limits there; given for many rows */
export function sweepRow(
  model: Model,
  travel: number,
  steer: number,
  limitsAt = limitReader(model),
): SweepRow {
  const pose = solvePose(model.frontEnd, travel, steer);
  if (!pose.ok) {
    const { side, along, startsAt } = pose;
    return { ok: false, travel, steer, side, joint: jointOf(pose.status), along, startsAt };
  }
  const gaps = gapsAt(model, pose);
  const past = limitsPastAt(limitsAt(travel, steer));
  return { ok: true, travel, steer, left: sweepSide(pose.left), right: sweepSide(pose.right), gaps, past };
}

function sweepSide(pose: SidePose): SweepSide {
  const { camber, steerAngle, toe, caster, kingpinInclination, scrubRadius, mechanicalTrail } = pose;
  const halfTrack = Math.abs(pose.contactPatch[1]);
  return {
    camber,
    steerAngle,
    toe,
    caster,
    kingpinInclination,
    scrubRadius,
    mechanicalTrail,
    halfTrack,
    wheelCenter: pose.wheelCenter,
  };
}

/** `count` numbers from `low` to `high`; both ends exact, and the middle of a symmetric range exactly 0. */
function evenly(low: number, high: number, count: number): number[] {
  const last = count - 1;
  return Array.from({ length: count }, (_, i) => {
    if (i === 0) return low;
    return i === last ? high : (low * (last - i) + high * i) / last + 0; // + 0 turns −0 into 0
  });
}
