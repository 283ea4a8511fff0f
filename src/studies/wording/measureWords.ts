import type { PointName } from "../../setup/types/readingTypes.ts";
import type { SetupIssue } from "../../setup/types/types.ts";
import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import type {
  Measured,
  MeasuredPoint,
  NextReading,
  OpenWay,
  ReadingResidual,
  Standing,
  Suspect,
} from "../measure/measured.ts";
import { pointWords, readingWords, readText } from "./measureNames.ts";
import { listWords } from "./nameWords.ts";

/** Words for the three coordinates of a point. */
const AXIS_WORDS = ["how far ahead", "how far out", "how high"] as const;

/** Most points named where many moved. */
const MOST_NAMED = 3;

/** mm: a point that moves by less is not worth telling. */
const WORTH_TELLING = 1;

/** Where a coordinate is from, a word beside it: never color alone. */
const STANDING_WORDS: Readonly<Record<Standing, string>> = {
  measured: "measured",
  partly: "partly",
  given: "as in the setup",
  assumed: "assumed",
};

/** How a whole point stands, in a word or two: `measured`, or what of it is not. */
export function standingText({ standing }: MeasuredPoint): string {
  const [first] = standing;
  if (standing.every((one) => one === first)) return STANDING_WORDS[first];
  const told = standing.flatMap((one, axis) =>
    one === "measured" ? [] : [`${"xyz"[axis]} ${STANDING_WORDS[one]}`],
  );
  return told.join(", ");
}

/** One standard deviation of a coordinate: `±0.06 in`. */
export function withinWords(mm: number, { units }: LengthFormat, decimals = units === "in" ? 2 : 1): string {
  const fine: LengthFormat = { units, fraction: "decimal", decimals };
  return `±${formatLength(mm, fine)}`;
}

/** How far a reading is off the others, or why that cannot be told. */
export function sigmaText({ inSigmas }: ReadingResidual): string {
  return inSigmas === null ? "no other reading checks it" : errorsText(inSigmas);
}

/** How far a reading is off in its standard deviations, which two in three stay within: `2.3 times its usual error`. */
export function errorsText(inSigmas: number): string {
  return `${Math.abs(inSigmas).toFixed(1)} times its usual error`;
}

/** What the readings come to, in a sentence. */
export function measuredSentence({ points, residuals, isSettled }: Measured): string {
  const truck = points.filter(({ point }) => /\bArm\.|Arm\.|^steering\.|^body\[/.test(point));
  const whole = truck.filter(({ standing }) => standing.every((one) => one === "measured"));
  const checked = residuals.filter(({ inSigmas }) => inSigmas !== null);
  const readings = residuals.length === 1 ? "1 reading tells" : `${residuals.length} readings tell`;
  const points_ = `${whole.length} of ${truck.length} points`;
  return `${readings} ${points_} of the truck; ${checked.length} of them ${checked.length === 1 ? "is" : "are"} checked by others.${isSettled ? "" : " They were not solved to the last digit: look for readings that contradict each other."}`;
}

/** Which reading an issue's key is of, by its place in the list, from 0. */
export function readingAt(key: string): number {
  return Number(/^readings\[(\d+)\]/.exec(key)?.[1]);
}

/** A reading that no truck can have, alone or with the others, and its mend. */
export function leftOutSentence({ key, value, mend }: SetupIssue): string {
  return `Left out: reading ${readingAt(key) + 1}, ${value}, ${mend}.`;
}

/** The reading most likely wrong, what it would be, and what comes of leaving it out, a sentence each. */
export function suspectSentences(suspect: Suspect | null, format: LengthFormat): readonly string[] {
  if (suspect === null) return [];
  const { reading, inSigmas, wouldBe, alike, without } = suspect;
  const is = "is" in reading ? ` reads ${readText(reading.kind, reading.is, format)}` : "";
  const would =
    wouldBe === null ? "" : `; by the others it would be ${readText(reading.kind, wouldBe, format)}`;
  const others = alike.map((one) => `reading ${one.index + 1} (${readingWords(one)})`);
  const moves = without.moves
    .filter(({ by }) => Math.hypot(...by) > WORTH_TELLING)
    .slice(0, MOST_NAMED)
    .map(
      ({ point, side, by }) =>
        `${side === "right" ? "right " : ""}${pointWords(point)} by ${formatLength(Math.hypot(...by), format)}`,
    );
  return [
    `Most likely wrong: reading ${reading.index + 1}, ${readingWords(reading)},${is}, off the others by ${errorsText(inSigmas)}${would}. Read it again.`,
    ...(others.length === 0 ? [] : [`As likely: ${listWords(others)}; the readings do not tell them apart.`]),
    moves.length === 0
      ? "Without it no point moves by more than a millimeter."
      : `Without it, what moves is ${listWords(moves)}; the worst reading left is then off by ${errorsText(without.mostSigmas)}.`,
  ];
}

/** What too few readings leave open, a sentence each; points that nobody read at all together in the last. */
export function freeSentences(free: readonly OpenWay[]): readonly string[] {
  const unread = new Map<string, Set<number>>();
  const ways: string[] = [];
  for (const { moves } of free) {
    const [first, ...rest] = moves;
    if (first === undefined) continue;
    if (rest.length === 0) {
      const name = `${first.side === "right" ? "right " : ""}${pointWords(first.point)}`;
      unread.set(name, (unread.get(name) ?? new Set()).add(first.axis));
    } else {
      const words = moves.map(({ point, axis }) => `${AXIS_WORDS[axis]} the ${pointWords(point)} is`);
      ways.push(`No reading tells ${listWords([...new Set(words)])}: they may change together.`);
    }
  }
  const whole = [...unread].filter(([, axes]) => axes.size === 3).map(([name]) => name);
  const parts = [...unread]
    .filter(([, axes]) => axes.size < 3)
    .map(
      ([name, axes]) =>
        `No reading tells ${listWords([...axes].sort().map((axis) => AXIS_WORDS[axis]!))} the ${name} is.`,
    );
  return [...ways, ...parts, ...(whole.length === 0 ? [] : [`Not read at all: ${listWords(whole)}.`])];
}

/** The reading that would help most, in a sentence; "" = none would help by a tenth. */
export function nextSentence({ next }: Measured, format: LengthFormat): string {
  const gain = next && gainSentence(next, (mm) => withinWords(mm, format, format.units === "in" ? 3 : 2));
  return gain ? `Next reading that helps most: ${readingWords(next.ask)}. ${gain}` : "";
}

/** Share of what it leaves open that a reading must take away to be told. */
const WORTH_READING = 0.1;

/**
 * Which point a reading would tell, and how much better; "" = less than a tenth. @param amount of mm, in words
 * @param nameOf what the point is called, where it has a name beside the usual one
 */
export function gainSentence(
  { tells }: NextReading,
  amount: (mm: number) => string,
  nameOf: (point: PointName) => string = pointWords,
): string {
  if (tells === null || tells.to > (1 - WORTH_READING) * tells.from) return "";
  const point = nameOf(tells.point);
  const what = `${AXIS_WORDS[tells.axis]} the ${point}${point.includes(",") ? "," : ""} is`;
  return `It tells ${what} to about ${amount(tells.to)}; so far it is known to about ${amount(tells.from)}: two times in three the truth is nearer than that.`;
}

/** Right points that stand elsewhere than the left ones' mirror image, by more than their readings explain. */
export function unevenSentences({ points }: Measured, format: LengthFormat): readonly string[] {
  return points.flatMap((right) => {
    if (right.side !== "right") return [];
    const left = points.find(({ point, side }) => point === right.point && side === "left");
    if (!left) return [];
    const words = right.at.flatMap((value, axis) => {
      const by = value - left.at[axis]!;
      const within = Math.hypot(right.within[axis]!, left.within[axis]!);
      const isTold = right.standing[axis] === "measured" && left.standing[axis] === "measured";
      if (!isTold || Math.abs(by) < 3 * within) return [];
      const [more, less] = [
        ["farther ahead", "farther back"],
        ["farther out", "closer in"],
        ["higher", "lower"],
      ][axis]!;
      return [`${formatLength(Math.abs(by), format)} ${by > 0 ? more : less}`];
    });
    return words.length === 0
      ? []
      : [`The right ${pointWords(right.point)} stands ${listWords(words)} than the left one.`];
  });
}

/** Printed beside every answer from readings. */
export const MEASURE_CAUTION =
  "These are places worked out from what was read. What is assumed is nobody's truck: measure it before anything is cut or\n" +
  "welded. Work under a truck on stands on level ground, never on a jack alone.\n";
