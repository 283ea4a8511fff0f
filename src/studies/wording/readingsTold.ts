import { parseKeyText } from "../../setup/types/keyPath.ts";
import type { Reading } from "../../setup/types/readingTypes.ts";
import type { SetupIssue } from "../../setup/types/types.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import type { NextReading, ReadingResidual, Suspect } from "../measure/measured.ts";
import { fieldName } from "./fieldName.ts";
import { amountText, angleText, lengthText, tellingFormat } from "./lengths.ts";
import { pointWords } from "./measureNames.ts";
import { errorsText, gainSentence } from "./measureWords.ts";
import { listWords, lower } from "./nameWords.ts";
import { LINES, lipStationName } from "./worksheetWords.ts";

/** What a reading of a length or an angle is, as a person reads it. @param value mm, or radians of an angle */
export function readingText({ kind }: Pick<Reading, "kind">, value: number, format: LengthFormat): string {
  return kind === "angle" ? angleText(value) : lengthText(value, format);
}

/**
 * How far a reading is off what all readings together give, with its sign: `+1/8 in`, `0 in`; and how it stands to the others.
 */
export function residualWords(
  { reading, off, inSigmas }: ReadingResidual,
  format: LengthFormat,
): { readonly off: string; readonly stands: string } {
  if (inSigmas === null) return { off: "–", stands: "no other reading checks it" };
  const text = readingText(reading, Math.abs(off), format);
  const isNone = /^0(?:\.0+)?[ °]/.test(text);
  return {
    off: isNone ? text : `${off > 0 ? "+" : "−"}${text}`,
    stands: `off the others by ${errorsText(inSigmas)}`,
  };
}

/** The reading most likely wrong, and what it would be by all others. @param names of readings, by their place in the file */
export function suspectSentence(
  { reading, inSigmas, wouldBe, alike, without }: Suspect,
  names: (index: number) => string,
  format: LengthFormat,
): string {
  const read =
    "is" in reading ? ` reads ${readingText(reading, reading.is, format)}` : " does not go with the others";
  const by = wouldBe === null ? "" : `; by all others it would be ${readingText(reading, wouldBe, format)}`;
  const or =
    alike.length === 0
      ? ""
      : ` It may equally be ${alike.map(({ index }) => `“${lower(names(index))}”`).join(" or ")}: these cannot be told apart yet.`;
  const rest = without.mostSigmas < 2.5 ? " Without it the rest agrees." : "";
  return `Most likely wrong: “${lower(names(reading.index))}”${read}${by}; it is off by ${errorsText(inSigmas)}. Read it again.${or}${rest}`;
}

/**
 * What would help most, and what it would do; "" = nothing would help by a tenth. @param name of the reading asked for
 * @param isOnLayout the lip's points are those of the assumed layout
 */
export function nextSentence(
  next: NextReading,
  name: string,
  format: LengthFormat,
  isOnLayout = false,
): string {
  const { tells } = next;
  // Fractions may read alike what differs by a tenth.
  const shown = tells ? tellingFormat([tells.from, tells.to], amountText, format) : format;
  const gain = gainSentence(
    next,
    (mm) => amountText(mm, shown),
    (point) => (isOnLayout && lipStationName(point)) || pointWords(point),
  );
  return gain === "" ? "" : `What would help most next: ${lower(name)}. ${gain}`;
}

/** Said where there is nothing to be worked out of. */
export const NOTHING_READ = "no reading here can be understood; read something on the truck first";

/** Said where every reading goes with the others. @param known what is read that is no place on the truck: the tire's size, the wheel's, by name */
export function agreeSentence(residuals: readonly ReadingResidual[], known: readonly string[]): string {
  const checked = residuals.filter(({ inSigmas }) => inSigmas !== null).length;
  if (residuals.length === 0) {
    const places = "no place on the truck has been measured yet.";
    if (known.length === 0) return `N${places.slice(1)}`;
    return `Read so far: ${listWords(known.map(lower))}; ${places}`;
  }
  if (checked === 0)
    return "No reading checks another yet. Extra readings are welcome: they find a slip of the tape.";
  return `${checked} of ${residuals.length} readings check each other, and they agree.`;
}

/**
 * What is said of a reading that cannot be, with the others it is held against by their names.
 * @param mend one sentence without a full stop, which numbers readings by their places in the file, from 1
 * @param names of readings, by their place in the file
 */
export function cannotBe(mend: string, names: (index: number) => string): string {
  const named = (number: string) => `“${lower(names(Number(number) - 1))}”`;
  return mend
    .replace(/\breadings (\d+) and (\d+)\b/g, (_, a: string, b: string) => `${named(a)} and ${named(b)}`)
    .replace(/\breading (\d+)\b/g, (_, a: string) => named(a));
}

/** That a reading is left out which cannot be. @param mend as `cannotBe` gives it */
export function leftOutNote(name: string, mend: string): string {
  return `Left out: “${lower(name)}” ${mend}. What follows is without it.`;
}

/** What a tire stands on the floor by is told by this reading, under a name that nobody reads by. */
const LOADED_RADIUS = "tire.loadedRadius";

/**
 * What does not go together of a truck as read, in the names of what was read: one sentence without a full stop.
 * @param document the setup, a variant's patch applied
 */
export function faultWords({ key, mend }: Pick<SetupIssue, "key" | "mend">, document: unknown): string {
  if (key === LOADED_RADIUS)
    return `“${lower(LINES.wheelCenterHeight!.name)}” ${mend}; that reading or the tire size is off`;
  const path = parseKeyText(key);
  return path && path.length > 0 ? `${lower(fieldName(path, document))} ${mend}` : mend;
}

/** The same at a reading that is in the way. */
export function faultAtReading(issue: Pick<SetupIssue, "key" | "mend">, document: unknown): string {
  return issue.key === LOADED_RADIUS
    ? `${issue.mend}; this reading or the tire size is off`
    : `does not go with the other readings: ${faultWords(issue, document)}`;
}

/** The same in a line that leads to the readings in the way, which follow it. */
export const FAULT_POINTER = "The readings do not go together. Look again at:";

/**
 * That the readings put the truck in places in which it does not go together, which one is in the way, and the mend.
 * @param fault what does not go together, one sentence without a full stop
 * @param inTheWay readings without any one of which it does, by name
 */
export function noTruckSentence(fault: string, inTheWay: readonly string[]): string {
  const mend =
    inTheWay.length === 0
      ? "No single reading is to blame: look through the last ones you took, and read them again."
      : inTheWay.length === 1
        ? `Without “${lower(inTheWay[0]!)}” they do: read that again.`
        : `Without any one of these they do: ${inTheWay.map((one) => `“${lower(one)}”`).join(", ")}. Read them again; one contradicts the others.`;
  return `As read, these do not make a truck together: ${fault}. ${mend} Until then the picture and the answer show the last readings that did.`;
}

/** What a station of the lip is called among readings. */
export const STATION_NAME = "Station of the fender lip, along the truck";
