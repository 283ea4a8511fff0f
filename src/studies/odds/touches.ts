import { GAP_ROW } from "../../gaps/partGap.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { deepestNear, type Ranges, type Seen } from "../chart/seenGap.ts";
import type { Model } from "../model/model.ts";
import { type Pair, pairGapTo } from "../model/pairs.ts";
import { Budget } from "../numeric/budget.ts";
import { ownPairs, rangesToCheck } from "../reports/check.ts";
import { searchPairBelow } from "../reports/pairSearch.ts";
import { ALL_POSES, rangesOf } from "../search/sideRange.ts";
import { type PoseToStart, TriedPose } from "../search/triedPose.ts";
import { provenOverPoses, type WholePair } from "./provenOverPoses.ts";

/**
 * What is proven of a truck over all its poses: no gap is less than what is asked for; some pose was found whose gap is; or
 * neither, where the least gap is that within a hundredth of a millimeter, or the budget ended it.
 */
export type Proof = "keeps" | "misses" | "open";

/** A pose at which a pair of some truck missed, to be tried first of the next. */
interface Hint extends PoseToStart {
  /** How many trucks missed here. */
  times: number;
}

/** Poses kept of each pair. */
const MOST_HINTS = 4;

/** rad, and share of the steering's stroke: poses nearer than this are tried as one. */
const SAME_ARM = 0.02;
const SAME_STEER = 0.1;

/** Of a budget a quarter is for the limits. */
const LIMITS_PART = 4;

/** mm. Where others missed and this one comes as near it is looked about for worse. */
const NEAR = 3;

/** mm. A gap nearer to what is asked for than this is left open. */
const OPEN_WITHIN = 0.01;

/**
 * Asks many like trucks whether anything comes nearer than some gap. What one missed at is tried first of the next, which ends
 * most of those that miss at once; of the others each pair is searched until it is proven, and no further.
 */
export class Touches {
  private readonly hints = new Map<string, Hint[]>();
  private readonly row = new Float64Array(GAP_ROW);

  /** @param least mm: a gap less than this misses */
  constructor(private readonly least: number) {}

  /** What is proven of a truck. */
  of(model: Model, budget: Budget = Budget.endless()): Proof {
    const { ranges, searched } = rangesToCheck(model, ALL_POSES, budget.share(LIMITS_PART));
    const asked = rangesOf(model, searched ?? [], model.setup.roll !== null, 1, "asked");
    const pairs = this.inOrder(ownPairs(model));
    if (this.missesAtHint(pairs, asked)) return "misses";
    const open: Pair[] = [];
    for (const side of ["left", "right"] as const) {
      const whole = pairs.filter((pair) => pair.side === side).filter(isWhole);
      if (whole.length === 0) continue;
      const { missed, left: unproven } = provenOverPoses(whole, asked[side], this.least);
      if (missed !== null) {
        this.keepHint(missed.pair, missed.at);
        return "misses";
      }
      open.push(...unproven);
    }
    open.push(...pairs.filter((pair) => !isWhole(pair)));
    let proof: Proof = "keeps";
    for (const pair of open) {
      const ofPair = this.ofPair(model, pair, ranges, budget);
      if (ofPair === "misses") return "misses";
      if (ofPair === "open") proof = "open";
    }
    return proof;
  }

  /** Those that missed most often first. */
  private inOrder(pairs: readonly Pair[]): readonly Pair[] {
    const times = (pair: Pair) =>
      (this.hints.get(keyOf(pair)) ?? []).reduce((sum, hint) => sum + hint.times, 0);
    return [...pairs].sort((a, b) => times(b) - times(a));
  }

  /** Where others missed, or near the worst of these: only what a search would find as well, so no proof depends on the trucks before. */
  private missesAtHint(pairs: readonly Pair[], ranges: Ranges): boolean {
    const sure = this.least - OPEN_WITHIN;
    let near: Seen | null = null;
    for (const pair of pairs) {
      const hints = this.hints.get(keyOf(pair));
      if (hints === undefined || pair.kind === "together") continue;
      const range = ranges[pair.side];
      const tried = new TriedPose(range.wheel, range);
      for (const hint of hints) {
        const arm = Math.min(Math.max(hint.arm, range.armLow), range.armHigh);
        if (!tried.stands(arm, hint.steer) || !tried.keeps(arm, hint.steer)) continue;
        const gap = pairGapTo(this.row, 0, pair, tried.row, 0, near?.gap ?? sure + NEAR);
        if (gap < sure) {
          hint.times++;
          return true;
        }
        if (gap < (near?.gap ?? sure + NEAR)) near = { pair, gap, arm, steer: hint.steer };
      }
    }
    if (near === null) return false;
    const { pair, gap, ...at } = deepestNear(near, ranges[near.pair.side]);
    if (!(gap < sure)) return false;
    this.keepHint(pair, at);
    return true;
  }

  private ofPair(model: Model, pair: Pair, ranges: Ranges, budget: Budget): Proof {
    if (pair.kind === "together") return pair.roughGap(this.least, 0) < this.least ? "misses" : "keeps";
    // A search for gaps below this proves, where it finds none, that none is below the least.
    const below = this.least + OPEN_WITHIN;
    const { entry, bound } = searchPairBelow(model, pair, ranges[pair.side], below, OPEN_WITHIN, budget);
    if (entry !== null && entry.gap < this.least) return "misses";
    return bound >= this.least ? "keeps" : "open";
  }

  private keepHint(pair: Pair, { arm, steer }: PoseToStart): void {
    const hint: Hint = { arm, steer, times: 1 };
    const key = keyOf(pair);
    const hints = this.hints.get(key) ?? [];
    const isKnown = hints.some(
      (one) => Math.abs(one.arm - hint.arm) < SAME_ARM && Math.abs(one.steer - hint.steer) < SAME_STEER,
    );
    if (isKnown && hints.length >= MOST_HINTS) return;
    hints.push(hint);
    hints.sort((a, b) => b.times - a.times);
    this.hints.set(key, hints.slice(0, MOST_HINTS));
  }
}

function isWhole(pair: Pair): pair is WholePair {
  return pair.kind === "rod" || pair.kind === "body";
}

function keyOf({ side, kind, name }: { side: Side; kind: string; name: string }): string {
  return `${side} ${kind} ${name}`;
}
