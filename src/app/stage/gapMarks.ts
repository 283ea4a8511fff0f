import type { Vec3 } from "../../geometry/vec.ts";
import type { CheckEntry } from "../../studies/reports/check.ts";
import type { GapEntry } from "../../studies/reports/gapsAt.ts";
import { type GapWord, gapWord } from "../../studies/wording/gapWord.ts";
import { markText } from "../../studies/wording/markText.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { isSamePart } from "../state/viewActions.ts";
import type { PartOnSide } from "../state/workbenchState.ts";

/** A gap to be marked on the picture. */
export interface MarkedGap {
  readonly kind: "now" | "worst" | "elsewhere";
  readonly word: GapWord;
  readonly text: string;
  readonly onPart: Vec3;
  readonly onRing: Vec3;
}

/**
 * What is marked: the worst place of all first, crossed (at another pose: where it will be), then what is too near at
 * the pose shown, and the part pointed out. @param gaps at the pose shown; @param isWorstPose the pose is the worst's own
 */
export function gapMarks(
  gaps: readonly GapEntry[],
  worst: CheckEntry | null,
  isWorstPose: boolean,
  selection: PartOnSide | null,
  allowance: number,
  format: LengthFormat,
): MarkedGap[] {
  const marks: MarkedGap[] = [];
  if (worst && !isWorstPose) {
    const word = gapWord(worst.gap, allowance);
    const text = `worst: ${markText(worst.gap, word, format)}`;
    marks.push({ kind: "elsewhere", word, text, onPart: worst.point, onRing: worst.point });
  }
  for (const entry of gaps) {
    const word = gapWord(entry.gap, allowance);
    const isWorst = worst !== null && isWorstPose && isSamePart(entry, worst);
    if (word === "clear" && !isWorst && !isSamePart(entry, selection)) continue;
    const amount = markText(entry.gap, word, format);
    const text = isWorst ? `worst: ${amount}` : worst && !isWorstPose ? `now ${amount}` : amount;
    const mark: MarkedGap = {
      kind: isWorst ? "worst" : "now",
      word,
      text,
      onPart: entry.point,
      onRing: entry.onRing,
    };
    if (isWorst) marks.unshift(mark);
    else marks.push(mark);
  }
  return marks;
}
