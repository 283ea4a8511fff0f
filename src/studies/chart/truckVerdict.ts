import type { Model } from "../model/model.ts";
import type { Pair } from "../model/pairs.ts";
import type { Budget } from "../numeric/budget.ts";
import { checkClearance, type Verdict } from "../reports/check.ts";
import type { CheckEntry } from "../reports/pairSearch.ts";
import { type AskedPoses, withAskedTravel } from "../search/sideRange.ts";
import type { ChartCell } from "./chartTypes.ts";
import type { PoseHints } from "./poseHints.ts";
import type { Ranges } from "./seenGap.ts";
import { sureVerdict, type WorstEntry, worstOfTruck } from "./worstOfTruck.ts";

/** What helps to tell a truck's verdict sooner. */
export interface VerdictHelp {
  readonly ranges: Ranges;
  readonly hints: PoseHints;
  /** What no gap of a pair is below, mm, as far as other trucks tell. */
  readonly carried: (pair: Pair, needed: number) => number;
}

/** The verdict of a truck over some poses, the very one a check says, and what decides. @param budget once it is spent, `unfinished` */
export function truckVerdict(whole: Model, poses: AskedPoses, help: VerdictHelp, budget: Budget): ChartCell {
  const model = withAskedTravel(whole, poses);
  const worst = worstOfTruck(model, help.ranges, help.hints, help.carried, budget);
  const { entry, bound } = worst;
  const verdict = sureVerdict(worst, model.setup.allowance);
  if (verdict !== null && (verdict === "rubs" || !budget.cut))
    return told(entry, verdict, verdict === "rubs" ? null : bound);
  if (budget.cut) return { kind: "unfinished" };
  // Within a few tenths of a millimeter of a border between verdicts: the check itself decides.
  const check = checkClearance(whole, { budget, poses });
  if (check.cutShort && check.verdict !== "rubs") return { kind: "unfinished" };
  return told(check.worst, check.verdict, check.verdict === "rubs" ? null : leastBound(check.parts));
}

function leastBound(parts: readonly CheckEntry[]): number | null {
  return parts.length === 0 ? null : Math.min(...parts.map(({ bound }) => bound));
}

function told(entry: WorstEntry | null, verdict: Verdict, bound: number | null): ChartCell {
  if (entry === null)
    return {
      kind: "verdict",
      verdict,
      gap: null,
      bound: null,
      part: null,
      side: null,
      travel: 0,
      steer: 0,
    };
  const { gap, part, side, travel, steer, together } = entry;
  const known = {
    kind: "verdict",
    verdict,
    gap,
    bound,
    part,
    side,
    travel,
    steer,
  } as const;
  return together ? { ...known, together } : known;
}
