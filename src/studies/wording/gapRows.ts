import type { Vec3 } from "../../geometry/vec.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import type { CheckEntry, CheckReport } from "../reports/check.ts";
import { type GapEntry, isSamePart, type PartOnSide } from "../reports/gapsAt.ts";
import { type GapWord, gapWord, markText } from "./gapTexts.ts";
import { isFoundAlike } from "./lengths.ts";
import { PAST_LIMITS } from "./stageTexts.ts";
import { compareEntries, isUnproven } from "./verdictFacts.ts";

/** One part in the list of answers: its worst gap of all, and its gap at the pose shown. */
export interface PartRow {
  readonly part: string;
  /** The nearer side at the pose shown; null where the pose is out of reach. */
  readonly now: GapEntry | null;
  /** The side to tell of over the whole range, see `compareEntries`; null while that is being worked out. */
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
    const { worst } = row;
    if (worst !== null && !(worst.verdict === entry.verdict && isFoundAlike(worst.gap, entry.gap, "length")))
      row.isAlike = false;
    if (worst === null || compareEntries(entry, worst) < 0) row.worst = entry;
  }
  return [...rows].map(([part, row]) => ({ part, ...row })).sort(compareRows);
}

function compareRows(a: PartRow, b: PartRow): number {
  if (a.worst !== null && b.worst !== null) return compareEntries(a.worst, b.worst);
  return nearest(a) - nearest(b);
}

function nearest({ worst, now }: PartRow): number {
  return worst?.gap ?? now?.gap ?? Number.POSITIVE_INFINITY;
}

/** What a row is marked with, and tells first. */
export interface PartMark {
  readonly word: GapWord;
  /** Close for want of proof alone: no gap below the allowance was found. */
  readonly isOpen: boolean;
  /** mm. */
  readonly gap: number;
  readonly side: GapEntry["side"];
}

/** Its worst gap as the check proved it, else its gap now; null where there is neither. */
export function partMark({ worst, now }: PartRow, allowance: number): PartMark | null {
  if (worst !== null) {
    const { verdict, gap, side } = worst;
    return { word: verdict, isOpen: isUnproven(worst, allowance), gap, side };
  }
  return now && { word: gapWord(now.gap, allowance), isOpen: false, gap: now.gap, side: now.side };
}

/** A gap to be marked on the picture. */
export interface MarkedGap {
  readonly kind: "now" | "worst" | "elsewhere";
  readonly word: GapWord;
  /** What its label says; "" where the label of the worst place says it already: one label a part and side. */
  readonly text: string;
  /** The same in fewer words, for a picture that is too narrow; the shortest last. */
  readonly shorter: readonly string[];
  /** The amount alone, with its word. */
  readonly amount: string;
  readonly part: string;
  readonly side: GapEntry["side"];
  /** mm. */
  readonly gap: number;
  readonly onPart: Vec3;
  readonly onRing: Vec3;
}

/** Allowances within which what is worst somewhere is marked though it is far enough here: how much is left is looked for there. */
const NEARLY = 2;

/**
 * What is marked: the worst place of all first, crossed (at another pose: where it will be), then what is too near at
 * the pose shown, nearest first, the part that is worst somewhere where it is nearly so, and the part pointed out. @param gaps at the pose shown; @param isWorstPose the pose is
 * the worst's own; @param isSoFar its search is not finished; @param uncounted sides of which the pose shown passes limits,
 * so that no answer counts it
 */
export function gapMarks(
  gaps: readonly GapEntry[],
  worst: CheckEntry | null,
  isWorstPose: boolean,
  selection: PartOnSide | null,
  allowance: number,
  format: LengthFormat,
  isSoFar = false,
  uncounted: readonly GapEntry["side"][] = [],
): MarkedGap[] {
  const isElsewhere = worst !== null && !isWorstPose;
  const isPast = (side: GapEntry["side"]) => uncounted.includes(side);
  const nowWords = (side: GapEntry["side"]) => (isPast(side) ? `now, ${PAST_LIMITS}` : "now");
  const now = gaps
    .filter(
      (entry) =>
        gapWord(entry.gap, allowance) !== "clear" ||
        (entry.part === worst?.part && !entry.together && entry.gap < NEARLY * allowance) ||
        isSamePart(entry, selection) ||
        (isWorstPose && isSamePart(entry, worst)),
    )
    .sort((a, b) => a.gap - b.gap)
    .map((entry): MarkedGap => {
      const { part, side, gap, point, onRing } = entry;
      const word = gapWord(gap, allowance);
      const amount = markText(gap, word, format);
      const isWorst = isSamePart(entry, worst);
      const when = isElsewhere
        ? ` ${nowWords(side)}`
        : isWorst
          ? `, the worst${isSoFar ? " so far" : ""}`
          : "";
      const alone = isElsewhere && isPast(side) ? `${amount}, ${PAST_LIMITS}` : amount;
      const text = isElsewhere && isWorst ? "" : `${part}: ${amount}${when}`;
      return {
        kind: isWorst && isWorstPose ? "worst" : "now",
        word,
        text,
        amount,
        part,
        side,
        gap,
        shorter: [`${part}: ${alone}`, alone],
        onPart: point,
        onRing,
      };
    });
  if (!isElsewhere) return now.sort((a, b) => Number(b.kind === "worst") - Number(a.kind === "worst"));
  const { part, side, gap, point, verdict: word } = worst;
  const amount = markText(gap, word, format, isUnproven(worst, allowance));
  const here = now.find((mark) => isSamePart(mark, worst));
  const worstName = `at worst${isSoFar ? " so far" : ""}`;
  const [when, and, or] = isPast(side) ? [nowWords(side), ", and", ";"] : ["now", " and", ","];
  const told =
    here?.amount === amount
      ? `${amount} ${when}${and} ${worstName}`
      : `${here ? `${here.amount} ${when}${or} ` : ""}${amount} ${worstName}`;
  const text = `${part}: ${told}`;
  // What rubs here too is not told as if it rubbed elsewhere alone.
  const both = here?.word === "rubs" && here.amount !== amount ? `rubs ${when}${or} ` : "";
  const shorter = [`${part}: ${both}${amount} ${worstName}`, `${both}${amount} ${worstName}`];
  const marked = { word, text, shorter, amount, part, side, gap, onPart: point, onRing: point };
  return [{ kind: "elsewhere", ...marked }, ...now];
}

/** The same marks with the side of each part that is on both, for a view in which one side stands behind the other. @param gaps all of the pose */
export function withSides(marks: readonly MarkedGap[], gaps: readonly GapEntry[]): readonly MarkedGap[] {
  return marks.map((mark) => {
    const { part, side, text, shorter } = mark;
    if (!gaps.some((other) => other.part === part && other.side !== side)) return mark;
    const sided = (told: string) => (told.startsWith(part) ? `${side} ${told}` : told);
    return { ...mark, text: sided(text), shorter: shorter.map(sided) };
  });
}

/** The same marks told as of assumed numbers, while too little is read for a verdict. */
export function asAssumed(marks: readonly MarkedGap[]): readonly MarkedGap[] {
  const told = (text: string) => (text === "" ? "" : `assumed: ${text}`);
  return marks.map((mark) => ({
    ...mark,
    text: told(mark.text),
    shorter: mark.shorter.map(told),
    amount: told(mark.amount),
  }));
}
