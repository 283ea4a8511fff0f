import { formatAngle } from "../../units/angle.ts";
import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import type { AsBuiltSide } from "../jig/asBuiltReport.ts";
import type { Correction } from "../jig/corrections.ts";
import type { JigSheet } from "../jig/jigSheet.ts";
import { gaugeFormat, readingWords } from "./jigWords.ts";
import { listWords, lower } from "./nameWords.ts";

/** What to do about dimensions that are off: `move the hub face 0.097 in inward along the pin`. */
export function correctionWords(changes: readonly Correction[], format: LengthFormat): string {
  const fine = gaugeFormat(format);
  const length = (mm: number) => formatLength(Math.abs(mm), fine);
  const angle = (rad: number) => formatAngle(Math.abs(rad), 2);
  const arm: string[] = [];
  const others = changes.flatMap(({ key, by, isPinAlone }) => {
    const way = (more: string, less: string) => (by > 0 ? more : less);
    switch (key) {
      case "hubFace":
        return [`move the hub face ${length(by)} ${way("outward", "inward")} along the pin`];
      case "pinHeight":
        return [`move the pin ${length(by)} ${way("up", "down")} the ball joint line`];
      case "pinAngle":
        return [`tilt the pin’s outer end ${way("down", "up")} ${angle(by)}`];
      case "pinLead":
        return [`move the pin ${length(by)} ${way("forward", "back")}`];
      case "toe":
        return [
          `turn the pin’s outer end ${way("forward", "back")} ${angle(by)} (the steering arm ${isPinAlone ? "stays where it stands" : "turns with it"})`,
        ];
      case "span":
        return [`set the ball joint seats ${length(by)} ${way("farther apart", "closer together")}`];
      case "armX":
        arm.push(`${length(by)} ${way("forward", "back")}`);
        return [];
      case "armY":
        arm.push(`${length(by)} ${way("outboard", "inboard")}`);
        return [];
      case "armZ":
        arm.push(`${length(by)} ${way("up", "down")}`);
        return [];
      default:
        return key satisfies never;
    }
  });
  return listWords(arm.length === 0 ? others : [...others, `move the steering arm’s end ${listWords(arm)}`]);
}

/** What makes failed knuckles pass, a sentence each, with the caution where something would be cut. @param read the sides that were read */
export function correctionSentences(
  read: readonly AsBuiltSide[],
  sheet: JigSheet,
  format: LengthFormat,
): readonly string[] {
  const isCut = read.some(
    (side) => !side.allPass && contradicting(side).length === 0 && side.corrections.changes.length > 0,
  );
  return [
    ...read.flatMap((side) => (side.allPass ? [] : [correctionSentence(side, sheet, format)])),
    ...(isCut ? ["Cut and re-weld only where a qualified welder and reviewer allow that at all."] : []),
  ];
}

/** Which member, which way, by how much. */
function correctionSentence(knuckle: AsBuiltSide, sheet: JigSheet, format: LengthFormat): string {
  const { side, passes, corrections } = knuckle;
  const namesOf = (keys: readonly (typeof passes)[number]["key"][]) =>
    listWords(keys.map((key) => lower(readingWords(key, sheet, format).name)));
  const suspect = contradicting(knuckle);
  if (suspect.length > 0)
    return `Before the ${side} knuckle is changed, read ${namesOf(suspect)} again: its readings contradict each other.`;
  const { changes, failing } = corrections;
  if (changes.length === 0)
    return `Its readings do not tell what is off on the ${side} knuckle: read ${namesOf(failing)} again.`;
  const count = passes.length === 1 ? "its one check passes" : `all ${passes.length} checks pass`;
  const unchecked = uncheckedFailing(knuckle);
  const first =
    unchecked.length === 0
      ? ""
      : `First read ${namesOf(unchecked)} again: no other reading checks ${unchecked.length === 1 ? "it" : "them"}. `;
  const then = failing.length === 0 ? `then ${count}` : `${namesOf(failing)} would fail still: read again`;
  const what = failing.length === 0 ? "bring" : "correct";
  const how = failing.length === 0 ? " within tolerance" : "";
  return `${first}To ${what} the ${side} knuckle${how}, ${correctionWords(changes, format)}; ${then}.`;
}

/** Readings that fail and that no other reading checks: a slip of the tape would look the same. */
function uncheckedFailing({ passes, fit }: AsBuiltSide) {
  return fit.residuals.flatMap(({ key, inSigmas }) =>
    inSigmas === null && passes.some((row) => row.key === key && !row.passes) ? [key] : [],
  );
}

function contradicting({ fit }: AsBuiltSide) {
  return fit.residuals.filter(({ isSuspect }) => isSuspect).map(({ key }) => key);
}
