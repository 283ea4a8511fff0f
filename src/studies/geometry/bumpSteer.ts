import { armAngleFor } from "../../suspension/armAngle.ts";
import type { FrontEnd, Side } from "../../suspension/frontEnd.ts";
import { POSE, POSE_ROW, poseRowTo } from "../../suspension/poseRow.ts";
import { PoseStatus } from "../../suspension/poseStatus.ts";
import { evenly } from "../numeric/evenly.ts";

/** Toe change of one wheel over travel, steering straight ahead. mm and radians. */
export interface BumpSteer {
  readonly side: Side;
  /** Toe less toe at travel 0, + = toe-in. */
  readonly curve: readonly { readonly travel: number; readonly toeChange: number }[];
  /** Root mean square of the change over the range, the travels weighing alike. */
  readonly rms: number;
  /** The change farthest from 0, and where it is. */
  readonly most: { readonly travel: number; readonly toeChange: number };
}

/** A range of travel, mm. */
export interface TravelRange {
  readonly droop: number;
  readonly bump: number;
}

/** Points of a bump steer curve: smooth as it is, its root mean square is good to far below what a gauge reads. */
const POINTS = 33;

/**
 * The bump steer curve of one wheel over a range of travel.
 * @returns null where the wheel cannot follow the whole range.
 */
export function bumpSteer(frontEnd: FrontEnd, side: Side, range: TravelRange): BumpSteer | null {
  const atRest = straightToe(frontEnd, side, 0);
  const curve: { travel: number; toeChange: number }[] = [];
  for (const travel of evenly(range.droop, range.bump, POINTS)) {
    const toe = straightToe(frontEnd, side, travel);
    if (!Number.isFinite(toe)) return null;
    curve.push({ travel, toeChange: toe - atRest });
  }
  const meanSquare = curve.reduce((sum, { toeChange }) => sum + toeChange ** 2, 0) / POINTS;
  const most = curve.reduce((best, next) =>
    Math.abs(next.toeChange) > Math.abs(best.toeChange) ? next : best,
  );
  return { side, curve, rms: Math.sqrt(meanSquare), most };
}

/** Toe of one wheel, rad, + = in, steering straight ahead; NaN out of reach. */
function straightToe(frontEnd: FrontEnd, side: Side, travel: number): number {
  const model = frontEnd[side];
  const pose = new Float64Array(POSE_ROW);
  const angle = armAngleFor(model, travel);
  if (!Number.isFinite(angle)) return Number.NaN;
  const status = poseRowTo(pose, 0, model.row, Math.cos(angle), Math.sin(angle), ...model.innerAtRest);
  if (status !== PoseStatus.Ok) return Number.NaN;
  return Math.atan2(pose[POSE.wheelAxis]!, pose[POSE.wheelAxis + 1]!);
}
