import { GAP, GAP_ROW, partGapTo } from "../gaps/partGap.ts";
import type { Vec3 } from "../geometry/vec.ts";
import type { Side } from "../suspension/frontEnd.ts";
import { POSE } from "../suspension/poseRow.ts";
import type { SolvedPose } from "../suspension/solvePose.ts";
import type { Model } from "./model.ts";

/** The gap between one side's ring and one part at one pose; mm, vehicle axes (right side y < 0). */
export interface GapEntry {
  readonly part: string;
  readonly side: Side;
  /** Signed distance, negative = depth of interference. */
  readonly gap: number;
  /** Nearest (or deepest) point on the part. */
  readonly point: Vec3;
  /** The matching point on the ring's surface. */
  readonly onRing: Vec3;
}

/** All gaps at one pose, left side first, in the setup's order of parts. */
export function gapsAt(model: Model, pose: SolvedPose): GapEntry[] {
  const row = new Float64Array(GAP_ROW);
  return model.parts.map(({ side, shape }) => {
    const wheel = pose[side].row;
    const gap = partGapTo(row, 0, model.ring, wheel, POSE.wheelCenter, shape);
    return {
      part: shape.name,
      side,
      gap,
      point: onTruck(row, GAP.point, side),
      onRing: onTruck(row, GAP.onRing, side),
    };
  });
}

/** A point of a left-hand frame row in vehicle axes. */
export function onTruck(row: Float64Array, at: number, side: Side): Vec3 {
  return [row[at]!, side === "right" ? -row[at + 1]! : row[at + 1]!, row[at + 2]!];
}
