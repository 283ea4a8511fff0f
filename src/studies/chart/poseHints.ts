import { GAP_ROW } from "../../gaps/partGap.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import type { Model } from "../model/model.ts";
import { type Pair, pairGapTo } from "../model/pairs.ts";
import type { Budget } from "../numeric/budget.ts";
import { ownPairs } from "../reports/check.ts";
import { Frontier } from "../search/frontier.ts";
import type { SideRange } from "../search/sideRange.ts";
import { TriedPose } from "../search/triedPose.ts";

/** A pose as shares: of the range of arm angles, from its low end; of full lock. */
export interface PoseHint {
  readonly armShare: number;
  readonly steer: number;
}

/** Poses at which pairs of a truck alike came near, by `pairKey`. */
export type PoseHints = ReadonlyMap<string, readonly PoseHint[]>;

/** Microseconds, about, of a gap at a pose. */
const POSE_WORK = 20;

/** Names a pair on trucks that differ in sizes alone. */
export function pairKey({ kind, side, name }: Pair): string {
  return `${kind} ${side} ${name}`;
}

/** Where each pair of each of some trucks comes near, by a grid of poses and a walk down from its worst. */
export function hintsOf(
  trucks: readonly { readonly model: Model; readonly ranges: Readonly<Record<Side, SideRange>> }[],
  budget: Budget,
): PoseHints {
  const hints = new Map<string, PoseHint[]>();
  for (const { model, ranges } of trucks)
    for (const pair of ownPairs(model)) {
      const hint = nearPose(pair, ranges[pair.side], budget);
      if (hint === null) continue;
      const key = pairKey(pair);
      const known = hints.get(key);
      if (known === undefined) hints.set(key, [hint]);
      else if (!known.some((one) => isAlike(one, hint))) known.push(hint);
    }
  return hints;
}

/** Share of a range within which two poses tell the same. */
const ALIKE = 1e-3;

function isAlike(a: PoseHint, b: PoseHint): boolean {
  return Math.abs(a.armShare - b.armShare) < ALIKE && Math.abs(a.steer - b.steer) < ALIKE;
}

function nearPose(pair: Pair, range: SideRange, budget: Budget): PoseHint | null {
  if (pair.kind === "together") return null;
  const found = new Frontier(Number.NEGATIVE_INFINITY);
  const tried = new TriedPose(range.wheel, range);
  const row = new Float64Array(GAP_ROW);
  const take = (arm: number, steer: number) => {
    const gap = pairGapTo(row, 0, pair, tried.row, 0, found.best);
    if (gap < found.best && tried.keeps(arm, steer)) found.offer(gap, arm, steer);
  };
  tried.lookOver(found, take, budget, POSE_WORK);
  if (!found.hasFound) return null;
  const wide = range.armHigh - range.armLow;
  return { armShare: wide > 0 ? (found.bestArm - range.armLow) / wide : 0, steer: found.bestSteer };
}
