import { KEPT } from "../../studies/limits/frontEndLimit.ts";
import type { LimitMargin, LimitPose } from "../../studies/limits/limitsOf.ts";
import type { LimitOverRange } from "../../studies/limits/limitsPassed.ts";
import { ALIKE } from "./leastText.ts";

/** One limit in the list: the worse of both sides at the pose shown, and over the whole range. */
export interface LimitRow {
  readonly name: string;
  /** null while the pose is out of reach. */
  readonly now: LimitMargin | null;
  /** Both sides have the same margin now. */
  readonly isAlike: boolean;
  readonly isPassed: boolean;
  /** null while it is being worked out. */
  readonly overall: LimitOverRange | null;
}

/** A row a limit, the least share in hand first: at the pose shown, or over the range where there is no such pose. */
export function limitRows(pose: LimitPose | null, overall: readonly LimitOverRange[] | null): LimitRow[] {
  const rows = new Map<string, LimitRow>();
  for (const margin of pose?.ok ? pose.margins : []) {
    const row = rows.get(margin.name);
    // Ranked: the first of a name is its worse side.
    const isAlike = row?.now != null && Math.abs(row.now.margin - margin.margin) < ALIKE;
    if (row === undefined)
      rows.set(margin.name, {
        ...{ name: margin.name, now: margin, isAlike: false, isPassed: margin.margin < -KEPT },
        overall: null,
      });
    else if (isAlike) rows.set(margin.name, { ...row, isAlike });
  }
  for (const limit of overall ?? []) {
    const row = rows.get(limit.name) ?? {
      ...{ name: limit.name, now: null, isAlike: true, isPassed: false, overall: null },
    };
    if (row.overall === null || limit.margin < row.overall.margin)
      rows.set(limit.name, { ...row, overall: limit });
  }
  return [...rows.values()].sort((a, b) => shareOf(a) - shareOf(b));
}

function shareOf({ now, overall }: LimitRow): number {
  return now?.share ?? (overall === null ? 1 : overall.margin / overall.range);
}
