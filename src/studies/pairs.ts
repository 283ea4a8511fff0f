import { partGapTo } from "../gaps/partGap.ts";
import type { PartShape } from "../gaps/partShape.ts";
import type { RingShape } from "../gaps/ring/ringShape.ts";
import type { Side } from "../suspension/frontEnd.ts";
import { POSE } from "../suspension/poseRow.ts";

/**
 * What a pair's gap depends on. `body`: the part stands still on the truck, the ring moves. `leg`: the part
 * runs from a point of the truck to a point of the knuckle. `together`: both ride on the knuckle, so the gap
 * never changes.
 */
export type PairKind = "body" | "leg" | "together";

/** A solid of revolution on the knuckle and one part, on one side; that side's left-hand frame, mm. */
export interface Pair {
  /** Unique on its side. */
  readonly name: string;
  readonly side: Side;
  readonly kind: PairKind;
  /** Turns about the wheel axis; x from the wheel center. */
  readonly ring: RingShape;
  readonly part: PartShape;
}

/**
 * Gap of one pair at one pose, as `partGapTo` (same `out` row, same `beat`).
 * @param pose a row filled by `poseRowTo` at `poseAt`, left-hand frame of the pair's side.
 */
export function pairGapTo(
  out: Float64Array,
  at: number,
  pair: Pair,
  pose: Float64Array,
  poseAt: number,
  beat = Number.POSITIVE_INFINITY,
): number {
  return partGapTo(out, at, pair.ring, pose, poseAt + POSE.wheelCenter, pair.part, beat);
}
