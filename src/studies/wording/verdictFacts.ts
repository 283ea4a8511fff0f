import { type ToldVerdict, toldVerdict } from "../doubts/doubt.ts";
import type { Model } from "../model/model.ts";
import type { CheckEntry, CheckReport } from "../reports/check.ts";
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

/** mm and share of lock within which both sides do the same. */
const ALIKE = 1e-6;

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
  const making = isOpen ? report.parts : report.parts.filter(({ verdict }) => verdict === report.verdict);
  const always = report.verdict === "rubs" ? making.filter(({ together }) => together) : [];
  const from = always.length > 0 ? always : making;
  return from.reduce<CheckEntry | null>(
    (worst, entry) => (worst === null || entry.gap < worst.gap ? entry : worst),
    null,
  );
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
    Math.abs(entry.gap - told.gap) < ALIKE &&
    Math.abs(entry.travel - told.travel) < ALIKE &&
    Math.abs(entry.steer + told.steer) < ALIKE;
  return report.parts.find(isTwin) ?? null;
}
