import { type ToldVerdict, toldVerdict } from "../doubts/doubt.ts";
import type { Model } from "../model/model.ts";
import { type CheckEntry, type CheckReport, DEFAULT_TOLERANCE, type Verdict } from "../reports/check.ts";
import { isSame } from "./lengths.ts";
import { nearestSurface, partWords, type Surface } from "./nearestSurface.ts";
import { reportedPose } from "./poseWords.ts";

/** What the answer of a check is told by, before it is words. */
export interface VerdictFacts {
  readonly verdict: ToldVerdict;
  /** null when nothing is measured. */
  readonly told: ToldEntry | null;
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
  const entry = toldEntry(report);
  const scope = report.limits.length > 0 ? "reach" : (report.limitedBy ?? []).length > 0 ? "limits" : "all";
  return {
    verdict: toldVerdict(report),
    scope,
    told: entry && {
      entry,
      twin: twinOf(entry, report),
      surface: surfaceOf(entry, model),
      part: partWords(model, entry.side, entry.part),
    },
  };
}

/**
 * The entry to tell of: the least gap among those that make the verdict; but what rubs at every pose before what rubs
 * at some. Of a check that is not finished the least found. null when nothing is measured.
 */
export function toldEntry(report: CheckReport): CheckEntry | null {
  const isOpen = toldVerdict(report) === "unfinished";
  const order = isOpen ? (a: CheckEntry, b: CheckEntry) => a.gap - b.gap : compareEntries;
  return report.parts.reduce<CheckEntry | null>(
    (told, entry) => (told === null || order(entry, told) < 0 ? entry : told),
    null,
  );
}

const RANK: Readonly<Record<Verdict, number>> = { rubs: 0, close: 1, clear: 2 };

/** The order in which entries are told: the worse verdict first, of what rubs that which does at every pose, then the least gap. */
export function compareEntries(a: CheckEntry, b: CheckEntry): number {
  const always = (entry: CheckEntry) => (entry.verdict === "rubs" && entry.together ? 0 : 1);
  return RANK[a.verdict] - RANK[b.verdict] || always(a) - always(b) || a.gap - b.gap;
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
