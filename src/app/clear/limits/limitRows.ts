import { KEPT } from "../../../studies/limits/frontEndLimit.ts";
import type { LimitMargin, LimitPose } from "../../../studies/limits/limitsOf.ts";
import type { LimitOverRange } from "../../../studies/limits/limitsPassed.ts";
import { ALIKE } from "./leastText.ts";

/** One limit in the list: the worse of both sides over the whole range, and at the pose shown. */
export interface LimitRow {
  readonly name: string;
  /** null while the pose is out of reach. */
  readonly now: LimitMargin | null;
  /** Both sides have the same margin now. */
  readonly isAlike: boolean;
  /** Both sides have the same least margin over the range. */
  readonly isLeastAlike: boolean;
  readonly isPassed: boolean;
  /** null while it is being worked out. */
  readonly overall: LimitOverRange | null;
}

/** A row a limit, the least share in hand over the range first; by the pose shown as long as the range is not known. */
export function limitRows(pose: LimitPose | null, overall: readonly LimitOverRange[] | null): LimitRow[] {
  const rows = new Map<string, LimitRow>();
  for (const margin of pose?.ok ? pose.margins : []) {
    const row = rows.get(margin.name);
    // Ranked: the first of a name is its worse side.
    const isAlike = row?.now != null && Math.abs(row.now.margin - margin.margin) < ALIKE;
    if (row === undefined)
      rows.set(margin.name, {
        ...{ name: margin.name, now: margin, isAlike: false, isLeastAlike: false },
        isPassed: margin.margin < -KEPT,
        overall: null,
      });
    else if (isAlike) rows.set(margin.name, { ...row, isAlike });
  }
  for (const limit of overall ?? []) {
    const row = rows.get(limit.name) ?? {
      ...{ name: limit.name, now: null, isAlike: true, isLeastAlike: false },
      ...{ isPassed: false, overall: null },
    };
    const isLeastAlike = row.overall !== null && Math.abs(row.overall.margin - limit.margin) < ALIKE;
    const isWorse = row.overall === null || (!isLeastAlike && limit.margin < row.overall.margin);
    rows.set(limit.name, { ...row, isLeastAlike, overall: isWorse ? limit : row.overall });
  }
  return [...rows.values()].sort((a, b) => shareOf(a) - shareOf(b));
}

function shareOf({ now, overall }: LimitRow): number {
  return overall === null ? (now?.share ?? 1) : overall.margin / overall.range;
}
