import { formatAngle } from "../../units/angle.ts";
import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import type { AsBuiltSide, AsBuiltSides, ReadingPass } from "../jig/asBuiltReport.ts";
import type { FittedKnuckle, Residual, Unknown } from "../jig/fitKnuckle.ts";
import type { BuiltKnuckle } from "../jig/jigReadings.ts";
import type { JigSheet } from "../jig/jigSheet.ts";
import { gaugeFormat, jigOffText, jigText, jigWay, readingWords } from "./jigWords.ts";
import { listWords, lower } from "./nameWords.ts";

/** One dimension of a knuckle as ordered and as built. mm and radians. */
export interface BuiltRow {
  readonly key: Unknown;
  readonly name: string;
  readonly measure: "length" | "angle";
  readonly ordered: number;
  readonly built: number;
  /** One standard deviation; null = not read, taken as ordered. */
  readonly within: number | null;
}

const NAMES: Readonly<Record<Unknown, string>> = {
  hubFace: "Hub-face distance",
  pinHeight: "Pin height",
  pinAngle: "Pin angle",
  pinLead: "Pin lead",
  toe: "Toe built in",
  span: "Ball joint span",
  armX: "Tie rod end forward",
  armY: "Tie rod end outboard",
  armZ: "Tie rod end up",
};

/** Every dimension of a knuckle, the one that decides most first. */
export const DIMENSIONS = Object.keys(NAMES) as readonly Unknown[];

/** Every dimension of a knuckle beside what was ordered, in that order. */
export function builtRows({ knuckle, within }: FittedKnuckle, ordered: BuiltKnuckle): readonly BuiltRow[] {
  return DIMENSIONS.map((key) => ({
    key,
    name: NAMES[key],
    measure: key === "pinAngle" || key === "toe" ? "angle" : "length",
    ordered: dimension(ordered, key),
    built: dimension(knuckle, key),
    within: within[key],
  }));
}

function dimension({ steeringArm, ...knuckle }: BuiltKnuckle, key: Unknown): number {
  switch (key) {
    case "armX":
      return steeringArm[0];
    case "armY":
      return steeringArm[1];
    case "armZ":
      return steeringArm[2];
    default:
      return knuckle[key];
  }
}

/** The word for a reading: never color alone. */
export function passWord(passes: boolean): string {
  return passes ? "passes" : "FAILS";
}

/** Where no knuckle was read yet. */
export const NOTHING_READ = "nothing read yet";

/** What a closed list of readings says of them: how many knuckles were read, and how many readings fail. */
export function readingsNote(taken: number, failing: number): string {
  if (taken === 0) return NOTHING_READ;
  if (failing === 0) return taken === 2 ? "both knuckles pass" : "the one knuckle read passes";
  return failing === 1 ? "1 reading FAILS" : `${failing} readings FAIL`;
}

/** Where readings are from: with the file that was opened or saved last, or typed since. "" = none came with it. */
export function readingsFrom(came: number, typed: number): string {
  if (came === 0) return "";
  const told = came === 1 ? "1 reading came" : `${came} readings came`;
  if (typed === 0) return `${told} with the file; nothing was typed here since.`;
  return `${told} with the file, ${typed === 1 ? "1 was" : `${typed} were`} typed since.`;
}

/** Beside a reading that fails and that no other checks; why is said above, with what to correct. */
export const AGAIN_FIRST = "read it again first";

/** Beside what was read, where it fails: the word, and how far it is off; "" where it passes. */
export function failText(row: ReadingPass | undefined, format: LengthFormat): string {
  return row === undefined || row.passes ? "" : `${passWord(false)} ${passOffText(row, format)}`;
}

/** How far a reading is off, with its sign; one that fails by less than a tape shows is told finer than its tolerance. */
export function passOffText(row: ReadingPass, format: LengthFormat): string {
  const { measure, tolerance, passes } = row;
  const off = jigWay(row) * row.off;
  const text = (value: number, like: LengthFormat) => jigText(Math.abs(value), measure, like);
  const isHidden = !passes && measure === "length" && text(off, format) === text(tolerance, format);
  return jigOffText(off, measure, isHidden ? gaugeFormat(format) : format);
}

/** How one knuckle did, in one sentence, and what its readings do not tell or contradict, a sentence each. */
export function sideSentences(
  { side, passes, allPass, fit }: AsBuiltSide,
  sheet: JigSheet,
  format: LengthFormat,
): readonly string[] {
  const nameOf = (key: (typeof passes)[number]["key"]) => lower(readingWords(key, sheet, format).name);
  const failing = passes.filter((row) => !row.passes);
  const failed = failing.map((row) => `${nameOf(row.key)} by ${passOffText(row, format)}`);
  const count = passes.length;
  const verdict = allPass
    ? `The ${side} knuckle passes: ${count === 1 ? "its one check is" : `all ${count} checks are`} within tolerance.`
    : `The ${side} knuckle FAILS ${failing.length} of ${count} checks: ${failed.join(", ")}.`;
  const suspect = fit.residuals.filter(({ isSuspect }) => isSuspect);
  const contradiction =
    suspect.length === 0
      ? []
      : [
          `Its readings contradict each other: ${suspect.map(({ key }) => nameOf(key)).join(" or ")} ${suspect.length > 1 ? "stand" : "stands"} ${Math.abs(suspect[0]!.inSigmas!).toFixed(1)} standard deviations from what the others say. Read ${suspect.length > 1 ? "them" : "it"} again before you trust this.`,
        ];
  const open = builtRows(fit, fit.knuckle).filter(({ within }) => within === null);
  const missing =
    open.length === 0
      ? []
      : [
          `Too few readings to tell its ${listWords(open.map(({ name }) => lower(name)))}, taken as ordered: read ${listWords(fit.missing.map(nameOf))} too.`,
        ];
  return [verdict, ...contradiction, ...missing];
}

/** Which sides were read, where one was not. */
export function unreadSentence({ left, right }: AsBuiltSides): string {
  if (left !== null && right !== null) return "";
  return `The ${left === null ? "left" : "right"} knuckle was not read: on the truck it is taken as ordered.`;
}

/** What stands over the numbers of `builtCells`. */
export const BUILT_COLUMNS = ["Ordered", "As built", "Off", "Std. deviation"] as const;

/** A dimension of a knuckle under `BUILT_COLUMNS`, as fine as its ±; of what was not read, dashes. */
export function builtCells(
  { ordered, built, within, measure }: BuiltRow,
  format: LengthFormat,
): readonly [ordered: string, built: string, off: string, within: string] {
  const fine = gaugeFormat(format);
  if (within === null) return [jigText(ordered, measure, fine), "–", "–", "not read"];
  return [
    jigText(ordered, measure, fine),
    jigText(built, measure, fine),
    jigOffText(built - ordered, measure, fine),
    deviationText(within, measure, format),
  ];
}

/** One standard deviation, to what a fine gauge reads: `±0.017 in`, `±0.10°`; `under ±0.01°` of what that would show as none. */
export function deviationText(within: number, measure: BuiltRow["measure"], format: LengthFormat): string {
  const finest = FINEST_DEVIATION[measure === "angle" ? "angle" : format.units];
  const isHidden = within > 0 && within < 0.5 * finest;
  return `${isHidden ? "under " : ""}±${gaugeText(isHidden ? finest : within, measure, format)}`;
}

/** rad, mm: the last digit that is told. */
const FINEST_DEVIATION = { angle: (0.01 / 180) * Math.PI, in: 0.0254, mm: 0.01 } as const;

function gaugeText(within: number, measure: BuiltRow["measure"], format: LengthFormat): string {
  return measure === "angle" ? formatAngle(within, 2) : formatLength(within, gaugeFormat(format));
}

/** Printed beside every jig sheet and every as-built check. */
export const JIG_CAUTIONS =
  "These are distances and angles worked out from the readings and the numbers in the setup. A knuckle that reads right\n" +
  "says nothing about its welds, its steel or its strength. Steering parts must be built, welded and inspected by licensed,\n" +
  "qualified people, under the codes that apply where the truck is driven; that goes double for cutting and re-welding one.\n";

/** How a reading stands to what the others tell, or that none checks it. */
export function residualText({ key, off, inSigmas, isSuspect }: Residual, format: LengthFormat): string {
  if (inSigmas === null) return "no other reading checks it";
  const measure = key === "faceAngle" ? "angle" : "length";
  const finest = FINEST_DEVIATION[measure === "angle" ? "angle" : format.units];
  const amount = gaugeText(Math.max(Math.abs(off), finest), measure, format);
  return isSuspect
    ? `${amount} off what the others tell: read again`
    : `within ${amount} of what the others tell`;
}

/** How well each reading of a knuckle agrees with its others, a line a reading. */
export function residualLines(
  { residuals }: FittedKnuckle,
  sheet: JigSheet,
  format: LengthFormat,
): readonly string[] {
  return residuals.map((one) => `${readingWords(one.key, sheet, format).name}: ${residualText(one, format)}`);
}

/** How the knuckles did, over all their readings: what stands first. @param read the sides that were read */
export function knucklesSentence(read: readonly AsBuiltSide[]): string {
  const count = read.reduce((sum, { passes }) => sum + passes.length, 0);
  const whole = read.length === 2 ? "Both knuckles pass" : `The ${read[0]?.side} knuckle passes`;
  if (read.every(({ allPass }) => allPass))
    return count === 1
      ? `${whole}: its one check is within tolerance.`
      : `${whole}: all ${count} checks are within tolerance.`;
  return read
    .map(({ side, passes }) => {
      const failing = passes.filter((row) => !row.passes).length;
      const told = failing === 0 ? "passes" : `FAILS ${failing} of ${passes.length}`;
      return `${side === "left" ? "Left" : "Right"} knuckle ${told}.`;
    })
    .join(" ");
}
