import { GAP, GAP_ROW, partGapTo } from "../gaps/partGap.ts";
import type { Side } from "../suspension/frontEnd.ts";
import { POSE } from "../suspension/poseRow.ts";
import type { SolvedPose } from "../suspension/solvePose.ts";
import type { Model } from "./model.ts";

/** mm. Slack for a point that lies on the bead itself. */
const ON_BEAD = 0.5;

/** What of the ring a part is nearest to at a pose: the tire, or the wheel inside its beads. */
export function nearestSurface(model: Model, pose: SolvedPose, side: Side, part: string): "tire" | "wheel" {
  const shape = model.parts.find((p) => p.side === side && p.shape.name === part)?.shape;
  if (!shape) throw new RangeError(`nearestSurface: no part "${part}" on the ${side} side`);
  const { row } = pose[side];
  const gap = new Float64Array(GAP_ROW);
  partGapTo(gap, 0, model.ring, row, POSE.wheelCenter, shape);
  let along = 0;
  let distanceSq = 0;
  for (let axis = 0; axis < 3; axis++) {
    const fromCenter = gap[GAP.onRing + axis]! - row[POSE.wheelCenter + axis]!;
    along += fromCenter * row[POSE.wheelAxis + axis]!;
    distanceSq += fromCenter * fromCenter;
  }
  const radius = Math.sqrt(Math.max(0, distanceSq - along * along));
  const { profile } = model.tire;
  const bead = Math.max(profile[1]!, profile[profile.length - 1]!);
  return radius <= bead + ON_BEAD ? "wheel" : "tire";
}
