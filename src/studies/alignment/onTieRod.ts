import type { Alignment } from "../../suspension/alignment.ts";
import type { FrontEnd, Side } from "../../suspension/frontEnd.ts";
import { POSE, POSE_ROW, poseRowTo } from "../../suspension/poseRow.ts";
import { PoseStatus } from "../../suspension/poseStatus.ts";
import { SIDE } from "../../suspension/sideRow.ts";
import type { ThreadCallout } from "../../units/threadCallout.ts";
import { straightAhead } from "./straightAhead.ts";

/** The wheel as it stands at a travel on a tie rod of another length (mm), steering straight ahead; null out of reach. */
export function onTieRod(frontEnd: FrontEnd, side: Side, travel: number, tieRod: number): Alignment | null {
  const model = frontEnd[side];
  const row = model.row.slice();
  row[SIDE.tieRodLength] = tieRod;
  const pose = new Float64Array(POSE_ROW);
  if (poseRowTo(pose, 0, row, 1, 0, ...model.innerAtRest) !== PoseStatus.Ok) return null;
  const centerHeightAtRest = pose[POSE.wheelCenter + 2]!;
  // The arm's reach was found with the other tie rod; so small a change matters only at its very border.
  return straightAhead({ ...model, row, centerHeightAtRest }, side, travel);
}

/** Turns of a sleeve with a right-hand thread at one end and a left-hand one at the other: two pitches each. @param change mm, + = longer */
export function sleeveTurns(change: number, { pitch }: Pick<ThreadCallout, "pitch">): number {
  return change / (2 * pitch);
}
