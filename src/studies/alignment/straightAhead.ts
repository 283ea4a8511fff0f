import type { AdjustersSetup, WheelTargets } from "../../setup/types/types.ts";
import { type Alignment, alignmentOf } from "../../suspension/alignment.ts";
import { armAngleFor } from "../../suspension/armAngle.ts";
import { assembleFrontEnd, type FrontEnd, type Side, type SideModel } from "../../suspension/frontEnd.ts";
import type { FrontEndInput } from "../../suspension/inputs.ts";
import { POSE, POSE_ROW, poseRowTo } from "../../suspension/poseRow.ts";
import { PoseStatus } from "../../suspension/poseStatus.ts";
import { SIDE } from "../../suspension/sideRow.ts";
import type { ThreadCallout } from "../../units/threadCallout.ts";

/** The alignment of one wheel at a travel (mm), steering straight ahead; null out of reach. */
export function straightAhead(model: SideModel, side: Side, travel: number): Alignment | null {
  const angle = armAngleFor(model, travel);
  if (!Number.isFinite(angle)) return null;
  const pose = new Float64Array(POSE_ROW);
  const status = poseRowTo(pose, 0, model.row, Math.cos(angle), Math.sin(angle), ...model.innerAtRest);
  return status === PoseStatus.Ok ? alignmentOf(pose, 0, side === "right") : null;
}

/** rad. Far below any gauge, and above the rounding of an assembly. */
const TOE_TOLERANCE = 1e-12;

/** Each step of the secant gains digits; a truck needs 3 or 4. */
const MOST_STEPS = 30;

/**
 * The front end with the tie rod of one side set so that its wheel has a toe (rad, + = in) at a travel (mm), steering
 * straight ahead. The other side gets the same toe at travel 0. @returns null when it does not go together or reach.
 */
export function withToe(input: FrontEndInput, side: Side, travel: number, toe: number): FrontEnd | null {
  let [last, lastExcess] = [Number.NaN, Number.NaN];
  let atRest = toe;
  for (let step = 0; step < MOST_STEPS; step++) {
    const assembled = assembleFrontEnd({ ...input, toe: atRest });
    const read = assembled.ok ? straightAhead(assembled.frontEnd[side], side, travel) : null;
    if (!assembled.ok || read === null) return null;
    const excess = read.toe - toe;
    if (Math.abs(excess) <= TOE_TOLERANCE || atRest === last) return assembled.frontEnd;
    // Toe there changes about as toe at rest does; after the first step the secant knows better.
    const slope = Number.isNaN(last) ? 1 : (excess - lastExcess) / (atRest - last);
    [last, lastExcess] = [atRest, excess];
    atRest -= excess / slope;
  }
  return null;
}

/** What an alignment of one wheel starts from. */
export interface SideJob {
  readonly frontEnd: FrontEnd;
  readonly adjusters: AdjustersSetup | null;
  readonly side: Side;
  /** Of the stance, mm. */
  readonly travel: number;
  readonly targets: WheelTargets;
  /** mm of each setting that sensitivities are given for. */
  readonly per: number;
}

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
