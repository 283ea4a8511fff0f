import type { CheckEntry, CheckReport } from "../../studies/reports/check.ts";
import type { GapEntry } from "../../studies/reports/gapsAt.ts";

/** mm. Both sides' worst gaps this near each other are one number to any tape. */
const ALIKE = 0.05;

/** One part in the list of answers: its worst gap of all, and its gap at the pose shown. */
export interface PartRow {
  readonly part: string;
  /** The nearer side at the pose shown; null where the pose is out of reach. */
  readonly now: GapEntry | null;
  /** The worse side over the whole range; null while that is being worked out. */
  readonly worst: CheckEntry | null;
  /** Both sides' worst gaps are alike, or there is one side only to tell of. */
  readonly isAlike: boolean;
}

/** A row a part, the worst first; by the gap now as long as the worst are not known. */
export function partRows(gaps: readonly GapEntry[], report: CheckReport | null): PartRow[] {
  const rows = new Map<string, { now: GapEntry | null; worst: CheckEntry | null; isAlike: boolean }>();
  const rowOf = (part: string) => {
    const known = rows.get(part);
    if (known) return known;
    const made = { now: null, worst: null, isAlike: true };
    rows.set(part, made);
    return made as { now: GapEntry | null; worst: CheckEntry | null; isAlike: boolean };
  };
  for (const entry of gaps) {
    const row = rowOf(entry.part);
    if (row.now === null || entry.gap < row.now.gap) row.now = entry;
  }
  for (const entry of report?.parts ?? []) {
    const row = rowOf(entry.part);
    if (row.worst !== null && Math.abs(row.worst.gap - entry.gap) > ALIKE) row.isAlike = false;
    if (row.worst === null || entry.gap < row.worst.gap) row.worst = entry;
  }
  const key = (row: PartRow) => row.worst?.gap ?? row.now?.gap ?? Number.POSITIVE_INFINITY;
  return [...rows].map(([part, row]) => ({ part, ...row })).sort((a, b) => key(a) - key(b));
}
