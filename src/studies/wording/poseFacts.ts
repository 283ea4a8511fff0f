import type { ApartPose, SolvedPose } from "../../suspension/solvePose.ts";
import type { LimitMargin } from "../limits/limitsOf.ts";
import { limitsAtPose, limitsPastAt } from "../limits/limitsPastAt.ts";
import type { Model } from "../model/model.ts";
import type { Verdict } from "../reports/check.ts";
import type { GapEntry } from "../reports/gapsAt.ts";
import { gapWord } from "./gapTexts.ts";
import { nearestSurface, partWords, type Surface } from "./nearestSurface.ts";

/** What is told of one pose, before it is words. */
export interface PoseFacts {
  /** null when nothing is measured. */
  readonly nearest: {
    readonly entry: GapEntry;
    readonly verdict: Verdict;
    readonly surface: Surface;
    readonly part: string;
  } | null;
  /** How many more gaps are nearer than the allowance. */
  readonly others: number;
  /** The limits passed, the one past by the greatest share first. */
  readonly past: readonly LimitMargin[];
}

/** @param gaps all of that pose, in any order */
export function poseFacts(gaps: readonly GapEntry[], pose: SolvedPose | ApartPose, model: Model): PoseFacts {
  const { allowance } = model.setup;
  const entry = nearestOf(gaps);
  const tooNear = gaps.filter(({ gap }) => gapWord(gap, allowance) !== "clear").length;
  return {
    nearest: entry && {
      entry,
      verdict: gapWord(entry.gap, allowance),
      surface: nearestSurface(model, pose, entry.side, entry.part),
      part: partWords(model, entry.side, entry.part),
    },
    others: Math.max(0, tooNear - 1),
    past: limitsPastAt(limitsAtPose(model, pose)),
  };
}

/** The least gap; but what rides with the wheel and rubs before all else. */
function nearestOf(gaps: readonly GapEntry[]): GapEntry | null {
  const always = gaps.filter(({ together, gap }) => together && gap < 0);
  return (always.length > 0 ? always : gaps).reduce<GapEntry | null>(
    (best, entry) => (best === null || entry.gap < best.gap ? entry : best),
    null,
  );
}
