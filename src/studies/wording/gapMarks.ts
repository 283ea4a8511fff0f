import type { Vec3 } from "../../geometry/vec.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import type { CheckEntry } from "../reports/check.ts";
import { type GapEntry, isSamePart, type PartOnSide } from "../reports/gapsAt.ts";
import { type GapWord, gapWord, markText } from "./gapTexts.ts";
import { isUnproven } from "./verdictFacts.ts";

/** A gap to be marked on the picture. */
export interface MarkedGap {
  readonly kind: "now" | "worst" | "elsewhere";
  readonly word: GapWord;
  readonly text: string;
  /** mm. */
  readonly gap: number;
  readonly onPart: Vec3;
  readonly onRing: Vec3;
}

/**
 * What is marked: the worst place of all first, crossed (at another pose: where it will be), then what is too near at
 * the pose shown, and the part pointed out. @param gaps at the pose shown; @param isWorstPose the pose is the worst's own; @param isSoFar its
 * search is not finished
 */
export function gapMarks(
  gaps: readonly GapEntry[],
  worst: CheckEntry | null,
  isWorstPose: boolean,
  selection: PartOnSide | null,
  allowance: number,
  format: LengthFormat,
  isSoFar = false,
): MarkedGap[] {
  const marks: MarkedGap[] = [];
  const worstName = isSoFar ? "worst so far" : "worst";
  if (worst && !isWorstPose) {
    const word = worst.verdict;
    const text = `${worstName}: ${markText(worst.gap, word, format, isUnproven(worst, allowance))}`;
    marks.push({ kind: "elsewhere", word, text, gap: worst.gap, onPart: worst.point, onRing: worst.point });
  }
  for (const entry of gaps) {
    const word = gapWord(entry.gap, allowance);
    const isWorst = worst !== null && isWorstPose && isSamePart(entry, worst);
    if (word === "clear" && !isWorst && !isSamePart(entry, selection)) continue;
    const amount = markText(entry.gap, word, format);
    const text = isWorst ? `${worstName}: ${amount}` : worst && !isWorstPose ? `now ${amount}` : amount;
    const mark: MarkedGap = {
      kind: isWorst ? "worst" : "now",
      word,
      text,
      gap: entry.gap,
      onPart: entry.point,
      onRing: entry.onRing,
    };
    if (isWorst) marks.unshift(mark);
    else marks.push(mark);
  }
  return marks;
}
