import type { LengthFormat } from "../../units/formatLength.ts";
import { KEPT } from "../limits/frontEndLimit.ts";
import type { LimitMargin, LimitPose, LimitsReport } from "../limits/limitsOf.ts";
import { isPassed, type LimitOverRange, mayBePassed } from "../limits/limitsPassed.ts";
import type { Verdict } from "../reports/check.ts";
import { isFoundAlike } from "./lengths.ts";
import { safeLength, safePercent } from "./safeSide.ts";

/** One limit in the list: the worse of both sides over the whole range, and at the pose shown. */
export interface LimitRow {
  readonly name: string;
  /** null while the pose is out of reach. */
  readonly now: LimitMargin | null;
  /** Both sides have the same margin now. */
  readonly isAlike: boolean;
  /** Both sides have the same least margin over the range. */
  readonly isLeastAlike: boolean;
  /** It is passed at the pose shown. */
  readonly isPassed: boolean;
  /** null while it is being worked out. */
  readonly overall: LimitOverRange | null;
}

/** A row a limit, the least share in hand over the range first; by the pose shown as long as the range is not known. */
export function limitRows(pose: LimitPose | null, overall: readonly LimitOverRange[] | null): LimitRow[] {
  const rows = new Map<string, LimitRow>();
  for (const margin of pose?.ok ? pose.margins : []) {
    const { name } = margin;
    const row = rows.get(name);
    // Ranked: the first of a name is its worse side.
    const isAlike = row?.now != null && isFoundAlike(row.now.margin, margin.margin, margin.measure);
    const isBeyond = margin.margin < -KEPT;
    if (row === undefined)
      rows.set(name, { name, now: margin, isAlike, isLeastAlike: false, isPassed: isBeyond, overall: null });
    else if (isAlike) rows.set(name, { ...row, isAlike });
  }
  for (const limit of overall ?? []) {
    const { name } = limit;
    const row = rows.get(name) ?? {
      name,
      now: null,
      isAlike: true,
      isLeastAlike: false,
      isPassed: false,
      overall: null,
    };
    const isLeastAlike =
      row.overall !== null && isFoundAlike(row.overall.margin, limit.margin, limit.measure);
    const isWorse = row.overall === null || limit.margin < row.overall.margin;
    rows.set(name, { ...row, isLeastAlike, overall: isWorse ? limit : row.overall });
  }
  return [...rows.values()].sort((a, b) => shareInHand(a) - shareInHand(b));
}

/** What is left of a row's limit over the range, 1 = all of it, below 0 past it; at the pose shown while that is not known. */
export function shareInHand({ now, overall }: LimitRow): number {
  return overall === null ? (now?.share ?? 1) : overall.margin / overall.range;
}

/** What a row is marked with: passed at the pose shown, passed somewhere (or not proven that it is not), kept everywhere. */
export function limitMark({ isPassed: isPassedNow, overall }: LimitRow): Verdict {
  if (isPassedNow) return "rubs";
  if (overall === null) return "clear";
  return isPassed(overall) || isOpen(overall) ? "close" : "clear";
}

/** The time ended before it was proven that no pose passes it. */
export function isOpen(limit: LimitOverRange): boolean {
  return mayBePassed(limit) && !isPassed(limit);
}

/** Where a limit is told of: where it is first passed, or passed most; or where it comes nearest while it is kept. */
export interface LimitPlace {
  readonly kind: "from" | "most" | "least";
  /** The pose to go to: mm, −1 … +1. */
  readonly travel: number;
  readonly steer: number;
  /** The same as they are told: where it is passed no later than it is. */
  readonly told: { readonly travel: number; readonly steer: number };
}

export function limitPlace(limit: LimitOverRange, format: LengthFormat): LimitPlace {
  const { travel, steer, starts } = limit;
  const at = { travel, steer, told: { travel, steer } };
  if (!isPassed(limit)) return { kind: "least", ...at };
  const height = starts?.bump ?? starts?.droop ?? null;
  const start = height === null ? (starts?.left ?? starts?.right ?? null) : { travel: height, steer: 0 };
  if (start === null) return { kind: "most", ...at };
  const told = {
    travel: safeLength(start.travel, start.travel < 0 ? "up" : "down", format),
    steer: (Math.sign(start.steer) * safePercent(start.steer)) / 100,
  };
  return { kind: "from", travel: start.travel, steer: start.steer, told };
}

/** The limit with the least in hand at a pose. */
export interface FirstLimit {
  readonly limit: LimitMargin;
  /** The other side has the same margin. */
  readonly isAlike: boolean;
}

/** @param margins ranked; null where there are none */
export function firstLimit(margins: readonly LimitMargin[]): FirstLimit | null {
  const [limit] = margins;
  if (limit === undefined) return null;
  const isAlike = margins.some(
    (other) =>
      other !== limit && other.name === limit.name && isFoundAlike(other.margin, limit.margin, limit.measure),
  );
  return { limit, isAlike };
}

/** What is known of all limits over the range. */
export type LimitsState = "passed" | "kept" | "open";

/** `open` = none was found passed, and the time ended before it was proven of every one. */
export function limitsState({ overall }: Pick<LimitsReport, "overall">): LimitsState {
  if (overall.some(isPassed)) return "passed";
  return overall.some(isOpen) ? "open" : "kept";
}
