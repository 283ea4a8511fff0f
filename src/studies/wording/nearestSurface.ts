import { GAP, GAP_ROW } from "../../gaps/partGap.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { POSE } from "../../suspension/poseRow.ts";
import { type SolvedPose, solvePose } from "../../suspension/solvePose.ts";
import type { Model } from "../model/model.ts";
import { type Pair, pairGapTo } from "../model/pairs.ts";

/** mm. Slack for a point that lies on the bead itself. */
const ON_BEAD = 0.5;

/** What a part's gap is to: the rotor, the wheel's center, or of the ring the tire or the wheel inside its beads. */
export type Surface = "tire" | "wheel" | "rotor" | "wheel center";

/** What a part is nearest to at a pose. @throws RangeError when no pair has that name on that side. */
export function nearestSurface(
  model: Model,
  pose: Pick<SolvedPose, Side>,
  side: Side,
  part: string,
): Surface {
  const pair = pairNamed(model, side, part);
  if (!pair) throw new RangeError(`nearestSurface: no part "${part}" on the ${side} side`);
  if (pair.solid !== "ring") return pair.solid;
  const { row } = pose[side];
  const gap = new Float64Array(GAP_ROW);
  pairGapTo(gap, 0, pair, row, 0);
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

/** What a pair that rides together is nearest to: the same at every pose. */
export function surfaceOfPair(model: Model, side: Side, part: string): Surface {
  const pose = solvePose(model.frontEnd, 0, 0);
  return pose.ok ? nearestSurface(model, pose, side, part) : "tire";
}

/** What a sentence calls the part of a pair beside its surface: "lower ball joint" of "rotor to lower ball joint". */
export function partWords(model: Model, side: Side, part: string): string {
  return pairNamed(model, side, part)?.partName ?? part;
}

function pairNamed(model: Model, side: Side, name: string): Pair | undefined {
  return model.pairs.find((pair) => pair.side === side && pair.name === name);
}
