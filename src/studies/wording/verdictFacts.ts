import { type ToldVerdict, toldVerdict } from "../doubts/doubt.ts";
import type { Model } from "../model/model.ts";
import { type CheckEntry, type CheckReport, DEFAULT_TOLERANCE, type Verdict } from "../reports/check.ts";
import { isSame } from "./lengths.ts";
import { nearestSurface, partWords, type Surface } from "./nearestSurface.ts";
import { reportedPose } from "./poseWords.ts";

/** What the answer of a check is told by, before it is words. */
export interface VerdictFacts {
  readonly verdict: ToldVerdict;
  /** The worst gap of all, see `CheckReport.worst`; null when nothing is measured. */
  readonly told: ToldEntry | null;
  /** What rubs at every pose beside it: the deepest of these. */
  readonly always: ToldEntry | null;
  /** How far the answer holds: over the whole range asked for, as far as the linkage reaches, or within the limits. */
  readonly scope: "all" | "reach" | "limits";
}

/** The entry of a check that tells its verdict. */
export interface ToldEntry {
  readonly entry: CheckEntry;
  /** The same part on the other side, when it does there exactly what it does here, mirrored. */
  readonly twin: CheckEntry | null;
  /** What of the wheel end it is nearest to. */
  readonly surface: Surface;
  /** The part as a sentence calls it. */
  readonly part: string;
}

export function verdictFacts(report: CheckReport, model: Model): VerdictFacts {
  const { worst } = report;
  const scope = report.limits.length > 0 ? "reach" : (report.limitedBy ?? []).length > 0 ? "limits" : "all";
  const always = worst && alwaysRubs(report, worst);
  return {
    verdict: toldVerdict(report),
    scope,
    told: worst && toldOf(worst, report, model),
    always: always && toldOf(always, report, model),
  };
}

/** The deepest of what rubs at every pose, but for the part that is told; null = no other does. */
function alwaysRubs({ parts }: CheckReport, told: CheckEntry): CheckEntry | null {
  return parts
    .filter((entry) => entry.verdict === "rubs" && entry.together && entry.part !== told.part)
    .reduce<CheckEntry | null>(
      (deepest, entry) => (deepest && deepest.gap <= entry.gap ? deepest : entry),
      null,
    );
}

function toldOf(entry: CheckEntry, report: CheckReport, model: Model): ToldEntry {
  return {
    entry,
    twin: twinOf(entry, report),
    surface: surfaceOf(entry, model),
    part: partWords(model, entry.side, entry.part),
  };
}

const RANK: Readonly<Record<Verdict, number>> = { rubs: 0, close: 1, clear: 2 };

/** The order in which entries are listed: the worse verdict first, then the least gap. */
export function compareEntries(a: CheckEntry, b: CheckEntry): number {
  return RANK[a.verdict] - RANK[b.verdict] || a.gap - b.gap;
}

/**
 * Close only because nothing more is proven: the gap found keeps the allowance, but the search ended with a bound that
 * does not, and that is off by more than a tape would tell.
 */
export function isUnproven({ verdict, gap, bound }: CheckEntry, allowance: number): boolean {
  return verdict === "close" && gap >= allowance && gap - bound > DEFAULT_TOLERANCE;
}

/** What the check's worst place is nearest to on the wheel. */
function surfaceOf(entry: CheckEntry, model: Model): Surface {
  const pose = reportedPose(model, entry.travel, entry.steer);
  return pose ? nearestSurface(model, pose, entry.side, entry.part) : "tire";
}

function twinOf(told: CheckEntry, report: CheckReport): CheckEntry | null {
  const isTwin = (entry: CheckEntry) =>
    entry.part === told.part &&
    entry.side !== told.side &&
    isSame(entry.gap, told.gap) &&
    isSame(entry.travel, told.travel) &&
    isSame(entry.steer, -told.steer);
  return report.parts.find(isTwin) ?? null;
}
