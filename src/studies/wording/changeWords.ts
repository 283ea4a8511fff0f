import { setAt } from "../../setup/reading/setAt.ts";
import { parseKeyText } from "../../setup/types/keyPath.ts";
import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import { SPACER, TRIM } from "../change/changeField.ts";
import type {
  AlsoMoves,
  ChangeReport,
  FoundChange,
  SetField,
  Smaller,
  TriedField,
  TrimmedPart,
} from "../change/changeTypes.ts";
import { fieldName } from "./fieldName.ts";
import { amountText, angleText, lengthText } from "./lengths.ts";
import { safeLength } from "./safeSide.ts";
import { safeValue, valueText } from "./windowWords.ts";

/** What changes are told with. */
export interface ChangeSpeech {
  readonly format: LengthFormat;
  /** The setup as typed, the variant shown applied: it names the fields. */
  readonly document: unknown;
  /** mm. */
  readonly allowance: number;
  /** That a part to be trimmed stands where nobody has read it, in a sentence; null = it is read. Default it is not asked. */
  readonly isAssumed?: (part: string) => string | null;
}

/** Which steering a field of it is of. */
const STEERINGS: Readonly<Record<string, string>> = {
  "truck.steering.stroke": "rack",
  "truck.steering.swing": "pitman",
};

/** What of the order of effort is called: a field's name, or that a panel is cut. */
export function effortName(key: string, document: unknown): string {
  if (key === SPACER) return "Wheel spacer";
  if (key === TRIM) return "Trim a panel";
  const steering = STEERINGS[key];
  // Of a steering that the truck has not it is called as on one that has it.
  const shown = steering === undefined ? document : setAt(document, ["truck", "steering", "type"], steering);
  return fieldName(parseKeyText(key) ?? [], shown);
}

/** What is done: `Backspacing from 4 1/4 in to 5 in`; never told as less of a change than it takes. */
export function changeTitle({ set, trim }: FoundChange, { format, document }: ChangeSpeech): string {
  if (trim !== null)
    return `Trim the ${trim.part} back by ${lengthText(safeLength(trim.depth, "up", format), format)}`;
  const told = set.map((one, i) => {
    const name = effortName(one.key, document);
    if (one.key === SPACER) return `${i === 0 ? name : name.toLowerCase()} of ${toText(one, format)}`;
    return `${i === 0 ? name : name.toLowerCase()}${name.includes(",") ? ":" : ""} from ${valueText(one.from, one.kind, format)} to ${toText(one, format)}`;
  });
  return told.join(" and ");
}

/** The value a change writes, as it is told: rounded away from where it is now. */
function toText({ kind, from, to }: SetField, format: LengthFormat): string {
  return valueText(to, kind, format, to > from ? "up" : "down");
}

/** The value told, mm or radians. */
export function writtenTo({ kind, from, to }: SetField, format: LengthFormat): number {
  return safeValue(to, kind, format, to > from ? "up" : "down");
}

/** What else it moves or breaks, a sentence each. */
export function movesSentences(change: FoundChange, { format, isAssumed }: ChangeSpeech): readonly string[] {
  const assumed = change.trim && isAssumed?.(change.trim.part);
  return [
    ...(assumed ? [assumed] : []),
    ...smallerSentences(change, format),
    ...change.alsoMoves.map((moves) => movesSentence(moves, format)),
    ...hintSentences(change, format),
  ];
}

/** What is known of smaller changes of the field. */
function smallerSentences({ set, trim, smaller }: FoundChange, format: LengthFormat): readonly string[] {
  const [only] = set;
  if (trim !== null) return trimSentences(trim, smaller, format);
  if (only === undefined || set.length > 1) return [pairSentence(set, smaller, format)];
  switch (smaller.rank) {
    case "proven":
      return [
        `Proven to be the smallest, to within ${fineText(smaller.within, only, format)}: nothing less clears.`,
      ];
    case "sampled":
      return [
        `Nothing less clears among the values looked at, every ${stepText(smaller.step, only, format)}.`,
      ];
    case "proven pair":
    case "stepped":
    case "searched":
      return ["Checked to clear; a smaller change that clears is not ruled out."];
  }
}

/** What is known of other pairs of the same two fields. */
function pairSentence(set: FoundChange["set"], smaller: Smaller, format: LengthFormat): string {
  const each = (values: readonly number[]) =>
    listed([...new Set(values.map((value, i) => fineText(value, set[i]!, format)))]);
  if (smaller.rank === "proven pair")
    return `Checked to clear, and proven that no smaller pair of these two does (neither change larger), to within ${each(smaller.within)}.`;
  return smaller.rank === "stepped"
    ? `Checked to clear; ${each(smaller.steps)} less of either one does not. Other pairs of the two are not ruled out.`
    : "Checked to clear; smaller pairs are not ruled out.";
}

function trimSentences({ left }: TrimmedPart, smaller: Smaller, format: LengthFormat): readonly string[] {
  if (left === null) return ["What remains is not checked: only of a path is the edge known once it is cut."];
  const checked = "Checked: with the edge that remains it clears at every pose that counts";
  const [step] = smaller.rank === "stepped" ? smaller.steps : [];
  return [
    step === undefined
      ? `${checked}.`
      : `${checked}; with an edge ${fineLength(step, format)} nearer it does not.`,
  ];
}

/** What a proof leaves open is less than any tape shows: told in 64ths, never as less than it is. */
function fineText(value: number, { kind }: SetField, format: LengthFormat): string {
  return kind === "angle" ? angleText(value, 2) : fineLength(value, format);
}

function fineLength(mm: number, format: LengthFormat): string {
  const fine = { ...format, fraction: format.fraction === "decimal" ? "decimal" : 64 } as const;
  return lengthText(safeLength(mm, "up", fine), fine);
}

function stepText(value: number, { kind }: SetField, format: LengthFormat): string {
  return kind === "angle" ? angleText(value, 2) : fineLength(value, format);
}

/** What a change moves besides, in a sentence. */
export function movesSentence(moves: AlsoMoves, format: LengthFormat): string {
  switch (moves.what) {
    case "rideHeight":
      return `It ${moves.to > moves.from ? "raises" : "lowers"} the truck ${amountText(moves.to - moves.from, format)} with the arms at the same angles.`;
    case "scrubRadius":
      return `Scrub radius from ${lengthText(moves.from, format)} to ${lengthText(moves.to, format)}.`;
    case "halfTrack":
      return `Each wheel stands ${amountText(moves.to - moves.from, format)} ${moves.to > moves.from ? "farther out" : "closer in"}.`;
    case "bumpSteer":
      return `Bump steer from ${angleText(moves.from, 2)} to ${angleText(moves.to, 2)} (root mean square over the travel).`;
    case "drop":
      return dropSentence(moves, format);
    case "limit":
      return `The ${moves.side} ${moves.name} is then past its limit somewhere.`;
    case "fenderCover":
      return "Look up the local rules on how much of the tire the fender must cover.";
  }
}

/** Drop that goes: the order's where the truck has just that, else what the truck has, beside what is ordered. */
function dropSentence(
  { from, to, ordered }: Extract<AlsoMoves, { readonly what: "drop" }>,
  format: LengthFormat,
): string {
  const [has, asked] = [lengthText(from, format), lengthText(ordered, format)];
  const [whose, more] =
    has === asked ? ["drop that is ordered", ""] : ["drop the truck has", `; ${asked} is ordered`];
  if (to > 0) return `It takes away ${whose}: of ${has} it leaves ${lengthText(to, format)}${more}.`;
  const stands = to > -0.5 ? "as high as" : `${amountText(to, format)} lower than`;
  return `It takes away all the ${whose}, ${has}: the pin then stands ${stands} on the base knuckle${more}.`;
}

function hintSentences({ set, trim }: FoundChange, format: LengthFormat): readonly string[] {
  const hints: string[] = [];
  if (trim !== null)
    hints.push("Fold or reinforce what is cut: an edge that is cut loses strength and can cut a tire.");
  for (const { key, from, to, reached = from } of set) {
    const out = key === "wheel.backspacing" || key === "wheel.offset" ? from - to : 0;
    if (key === SPACER)
      hints.push(
        "Every nut must still turn on by at least the stud's diameter (common practice): longer studs, or a spacer with studs of its own. It must center on the hub, and rules on spacers differ from place to place.",
      );
    if (out > 0)
      hints.push(
        `A wheel spacer of ${lengthText(safeLength(out, "up", format), format)} puts the wheel in the same place.`,
      );
    if (key === "travel.bump" || key === "limits.bumpStop.travel")
      hints.push("A stop that is met sooner leaves less travel for the road: ask what the springs need.");
    if (/^(limits\.steeringStop|truck\.steering)/.test(key))
      hints.push(
        `It takes away ${wholePercent(1 - to / reached)}% of the steering each way: a wider turning circle at every corner and parking place.`,
      );
    if (key === "tire.sectionWidth" || key === "tire.diameter")
      hints.push("A smaller tire carries less: check that its load index is enough for the axle.");
  }
  return hints;
}

/** Why changes cannot be saved for a moment. */
export const CHANGES_WAIT = "Not yet: they are looked for again, for the truck as it is now.";

/** A share in whole percent, never told as less than it is, nor as none. */
function wholePercent(share: number): number {
  return Math.max(1, Math.ceil(100 * share - 1e-9));
}

/** What is said above the list. */
export function changeSentence(
  { verdict, changes, without, isPaired, cutShort }: ChangeReport,
  speech: ChangeSpeech,
): string {
  const { allowance, format, document } = speech;
  const least = formatLength(allowance, format);
  if (verdict === "clear") return `It already keeps a gap of ${least}: nothing needs to change.`;
  const fields = without.map((field) => triedWords(field, format, document));
  const none = fields.length === 0 ? "" : ` Not enough alone: ${fields.join("; ")}.`;
  if (changes.length === 0)
    return cutShort
      ? `No change found so far keeps ${least}: the search is not finished.${none}`
      : `No change that was tried keeps ${least}.${none}`;
  const isCut = cutShort === true;
  const rest = changes.every(({ set }) => set.length > 1)
    ? onlyPairsWords(none, isCut)
    : `${none}${isPaired ? pairedWords(changes, isCut) : ""}`;
  return `Any one of these keeps a gap of ${least}, least effort first.${rest}`;
}

/** `pin angle, tried from −1.5° to 18.5°`; `…, tried every 0.83° from −1.5° to 18.5°`. */
function triedWords(
  { key, kind, from, to, step }: TriedField,
  format: LengthFormat,
  document: unknown,
): string {
  const name = effortName(key, document).toLowerCase();
  const every =
    step === null ? "" : ` every ${kind === "angle" ? angleText(step, 2) : fineLength(step, format)}`;
  return `${name}, tried${every} from ${valueText(from, kind, format)} to ${valueText(to, kind, format)}`;
}

/** What is known of single changes where all that was found are pairs. @param none which are not enough */
function onlyPairsWords(none: string, isCut: boolean): string {
  return isCut
    ? `${none} No single change that is enough was found in the time allowed; these are pairs, perhaps not all there are.`
    : " No single change is enough; these are pairs.";
}

/** What is known of pairs where only the knuckle's fields do it alone. */
function pairedWords(changes: ChangeReport["changes"], isCut: boolean): string {
  const found = isCut ? "were found to be enough alone in the time allowed" : "are enough alone";
  const only = `Of the fields tried, only the knuckle's ${found}`;
  if (changes.some(({ set }) => set.length > 1))
    return ` ${only}; pairs of the others that are enough stand first${isCut ? ", perhaps not all there are" : ""}.`;
  return isCut
    ? ` ${only}, and no pair of the others.`
    : ` ${only}; no pair of the others that was tried is enough.`;
}

function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} or ${words.at(-1)}`;
}
