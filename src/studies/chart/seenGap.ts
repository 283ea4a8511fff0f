import { GAP_ROW } from "../../gaps/partGap.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { type Pair, pairGapTo, type TogetherPair } from "../model/pairs.ts";
import type { SideRange } from "../search/sideRange.ts";
import { TriedPose } from "../search/triedPose.ts";
import { type PoseHints, pairKey } from "./poseHints.ts";

export type Ranges = Readonly<Record<Side, SideRange>>;

export type MovingPair = Exclude<Pair, TogetherPair>;

/** A pair with the worst gap seen so far, mm; Infinity = none. */
export interface Seen {
  readonly pair: MovingPair;
  readonly gap: number;
  readonly arm: number;
  readonly steer: number;
}

/** The worst of a pair at the poses hinted at. */
export function seenGap(pair: MovingPair, range: SideRange, hints: PoseHints): Seen {
  let seen: Seen = { pair, gap: Number.POSITIVE_INFINITY, arm: 0, steer: 0 };
  const tried = new TriedPose(range.wheel, range);
  const row = new Float64Array(GAP_ROW);
  for (const hint of hints.get(pairKey(pair)) ?? []) {
    const arm = Math.min(range.armLow + hint.armShare * (range.armHigh - range.armLow), range.armHigh);
    if (!tried.stands(arm, hint.steer)) continue;
    const gap = pairGapTo(row, 0, pair, tried.row, 0, seen.gap);
    if (gap < seen.gap && tried.keeps(arm, hint.steer)) seen = { pair, gap, arm, steer: hint.steer };
  }
  return seen;
}

/** Rounds of looking about a pose for a worse one, each half as far where none was found; the first an eighth of the range. */
const ROUNDS = 10;
const FIRST_SHARE = 0.125;

/** The same, and down from there to where no pose nearby is worse. */
export function deepestNear(seen: Seen, range: SideRange): Seen {
  const tried = new TriedPose(range.wheel, range);
  const row = new Float64Array(GAP_ROW);
  let best = seen;
  const look = (arm: number, steer: number) => {
    if (!tried.stands(arm, steer)) return;
    const gap = pairGapTo(row, 0, seen.pair, tried.row, 0, best.gap);
    if (gap < best.gap && tried.keeps(arm, steer)) best = { pair: seen.pair, gap, arm, steer };
  };
  const within = (value: number, low: number, high: number) => Math.min(Math.max(value, low), high);
  let share = FIRST_SHARE;
  for (let round = 0; round < ROUNDS; round++) {
    const { gap, arm, steer } = best;
    for (const way of [-share, share]) {
      look(within(arm + way * (range.armHigh - range.armLow), range.armLow, range.armHigh), best.steer);
      look(
        best.arm,
        within(steer + way * (range.steerHigh - range.steerLow), range.steerLow, range.steerHigh),
      );
    }
    if (!(best.gap < gap)) share *= 0.5;
  }
  return best;
}
