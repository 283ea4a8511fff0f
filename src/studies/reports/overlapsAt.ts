import { GAP_ROW } from "../../gaps/partGap.ts";
import { mirrorY } from "../../geometry/vec.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { POSE } from "../../suspension/poseRow.ts";
import type { SolvedPose } from "../../suspension/solvePose.ts";
import type { Model } from "../model/model.ts";
import { pairGapTo } from "../model/pairs.ts";
import type { PartOnSide } from "./gapsAt.ts";
import { type OverlapPatch, overlapPatch } from "./overlapPatch.ts";
import { ringSight } from "./ringSight.ts";

/** Where one pair overlaps at a pose; vehicle axes (right side y < 0). */
export interface Overlap extends PartOnSide, OverlapPatch {}

/**
 * Every overlap at one pose, to be drawn: of each pair whose gap is negative, and of no other. What rides on the knuckle
 * together with the wheel is left out: it overlaps in the file, not on the road.
 */
export function overlapsAt(model: Model, pose: Pick<SolvedPose, Side>): Overlap[] {
  const row = new Float64Array(GAP_ROW);
  const found: Overlap[] = [];
  for (const pair of model.pairs) {
    const { name, side } = pair;
    // This also puts what moves where it is at the pose.
    if (pair.kind === "together" || !(pairGapTo(row, 0, pair, pose[side].row, 0) < 0)) continue;
    const patch = overlapPatch(pair.part, ringSight(pair.ring, pose[side].row, POSE.wheelCenter));
    found.push({ part: name, side, ...(side === "right" ? mirrored(patch) : patch) });
  }
  return found;
}

function mirrored({ fill, border }: OverlapPatch): OverlapPatch {
  return {
    fill: fill.map((corners) => corners.map(mirrorY)),
    border: border.map(([a, b]) => [mirrorY(a), mirrorY(b)]),
  };
}
