import { GAP, GAP_ROW } from "../../gaps/partGap.ts";
import type { Vec3 } from "../../geometry/vec.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import type { SolvedPose } from "../../suspension/solvePose.ts";
import type { Model } from "../model/model.ts";
import { pairGapTo } from "../model/pairs.ts";
import { Budget } from "../numeric/budget.ts";

/** A pair on one side of the truck. */
export interface PartOnSide {
  /** The pair's name: the body part's, or of what moves. */
  readonly part: string;
  readonly side: Side;
}

/** Whether two name the same part on the same side. */
export function isSamePart(a: PartOnSide, b: PartOnSide | null): boolean {
  return b !== null && a.part === b.part && a.side === b.side;
}

/** The gap of one pair at one pose; mm, vehicle axes (right side y < 0). */
export interface GapEntry extends PartOnSide {
  /** Signed distance, negative = depth of interference. */
  readonly gap: number;
  /** Nearest (or deepest) point on the part. */
  readonly point: Vec3;
  /** The matching point on the surface of the ring (or rotor, or wheel center). */
  readonly onRing: Vec3;
  /** Both ride on the knuckle: the gap is the same at every pose. */
  readonly together?: true;
}

/** Microseconds, about, of one gap at a pose: a solid pressed deep makes it longer. */
const GAP_WORK = 20;

/**
 * All gaps at one pose: body parts, left side first, in the setup's order; then what moves, left side first.
 * @param budget once it is spent, the rest is left out.
 */
export function gapsAt(
  model: Pick<Model, "pairs">,
  pose: Pick<SolvedPose, Side>,
  budget: Budget = Budget.endless(),
): GapEntry[] {
  const row = new Float64Array(GAP_ROW);
  const found: GapEntry[] = [];
  for (const pair of model.pairs) {
    if (budget.isSpent(GAP_WORK)) break;
    const { name, side, kind } = pair;
    const gap = pairGapTo(row, 0, pair, pose[side].row, 0);
    found.push({
      part: name,
      side,
      gap,
      point: onTruck(row, GAP.point, side),
      onRing: onTruck(row, GAP.onRing, side),
      ...(kind === "together" ? { together: true } : {}),
    });
  }
  return found;
}

/** A point of a left-hand frame row in vehicle axes. */
export function onTruck(row: Float64Array, at: number, side: Side): Vec3 {
  return [row[at]!, side === "right" ? -row[at + 1]! : row[at + 1]!, row[at + 2]!];
}
