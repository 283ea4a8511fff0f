import type { SetupIssue } from "../../setup/types/types.ts";
import { isOnAssumedLayout } from "../../setup/worksheet/assumedLayout.ts";

export interface Wrong {
  /** Of the document. */
  readonly issues: readonly SetupIssue[];
  /** Of what stands in a field and does not read, where the fields are not shown. */
  readonly unread: readonly SetupIssue[];
  /** The setup shown. */
  readonly document: unknown;
  /** Readings without any one of which the truck goes together; null = not looked through yet. */
  readonly inTheWay: readonly number[] | null;
  /** The worksheet is shown: what its readings say stands under the card. */
  readonly isAtWorksheet: boolean;
  /** What was put away, as `awayKey` has it. */
  readonly away: string | null;
}

/** By which line what is wrong is told: readings by their names, all else by its field. null = by none. */
export function whichBar({
  issues,
  unread,
  document,
  inTheWay,
  isAtWorksheet,
  away,
}: Wrong): "readings" | "issues" | null {
  const [first] = issues;
  if (!first) return unread.length > 0 ? "issues" : null;
  if (unread.length > 0 || !followsFromReadings(first, document)) return "issues";
  if (awayKey(first) === away) return null;
  if (inTheWay !== null && inTheWay.length > 0) return "readings";
  // Under the card it is told while its readings are looked through.
  return inTheWay === null && isAtWorksheet ? null : "issues";
}

/** What is put away: it comes back as another. */
export function awayKey({ key, value }: SetupIssue): string {
  return `${key} ${value}`;
}

/** A reading that does not read tells so itself; all else may follow from readings. */
export function followsFromReadings({ key }: SetupIssue, document: unknown): boolean {
  return isOnAssumedLayout(document) && !key.startsWith("readings");
}
