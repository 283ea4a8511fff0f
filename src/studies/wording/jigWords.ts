import { formatAngle } from "../../units/angle.ts";
import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import { MM_PER_INCH } from "../../units/lengthUnits.ts";
import type { JigRow, JigSheet } from "../jig/jigSheet.ts";
import type { JigSketchWords } from "../jig/jigView.ts";
import { withMinus } from "./lengths.ts";

/** What a reading is called, and how it is taken. */
export interface ReadingWords {
  readonly name: string;
  readonly how: string;
  /** From where to where, in a few words, where the name does not tell. */
  readonly between?: string;
}

const HEIGHT = "up along the ball joint line from";

/**
 * −1 for a place told by the other word, as a tape reads it: behind, inboard. The setup file has it ahead and outboard, with
 * a minus.
 */
export function jigWay({ key, mustRead }: Pick<JigRow, "key" | "mustRead">): 1 | -1 {
  return (key === "armAhead" || key === "armOut") && mustRead < 0 ? -1 : 1;
}

/** The words of every line of the jig sheet, either hand. @param from what heights are read from */
export function readingWords(
  key: JigRow["key"],
  { jointHeight, pinEnd, halfLength, rows }: JigSheet,
  format: LengthFormat,
): ReadingWords {
  const from = jointHeight === 0 ? "the lower ball joint center" : "the jig's table";
  const mark = formatLength(halfLength, format);
  const row = rows.find((one) => one.key === key);
  const isOther = row !== undefined && jigWay(row) < 0;
  switch (key) {
    case "front":
      return {
        name: "Tape in front",
        how: `from the mark ${mark} ahead of the ball joint line to the straightedge on the face, square to the face`,
        between: `between the jig’s two straightedges, ${mark} ahead`,
      };
    case "behind":
      return {
        name: "Tape behind",
        how: `the same from the mark ${mark} behind`,
        between: `between the jig’s two straightedges, ${mark} behind`,
      };
    case "difference":
      return { name: "Behind less front", how: "the toe built in; more than asked for is toe-in" };
    case "faceAngle":
      return {
        name: "Angle finder on the face",
        how: "zeroed on the ball joint line, then up the face, square to its straightedge; + = top of the face leans outboard",
      };
    case "faceHeight":
      return { name: "Height of the pin at the face", how: `center of the pin, ${HEIGHT} ${from}` };
    case "pinEndHeight":
      return {
        name: "Height of the pin at its end",
        how: `center of the pin ${formatLength(pinEnd, format)} outboard of the face, ${HEIGHT} ${from}; checks the angle`,
      };
    case "lead":
      return {
        name: "Lead of the pin at the face",
        how: "center of the pin ahead of the ball joint line, along the straightedge; less than 0 is behind",
      };
    case "span":
      return { name: "Ball joint span", how: "lower to upper ball joint center" };
    case "armAhead":
      return {
        name: isOther ? "Tie rod end behind" : "Tie rod end ahead",
        how: isOther
          ? "its center behind the ball joint line, along the straightedge"
          : "its center ahead of the ball joint line, along the straightedge; less than 0 is behind",
      };
    case "armOut":
      return {
        name: isOther ? "Tie rod end inboard" : "Tie rod end outboard",
        how: isOther
          ? "its center inboard of the ball joint line, square to the straightedge"
          : "its center outboard of the ball joint line, square to the straightedge; less than 0 is inboard",
      };
    case "armUp":
      return { name: "Tie rod end height", how: `its center, ${HEIGHT} ${from}` };
    case "lowerToArm":
      return {
        name: "Lower joint to tie rod end",
        how: "center to center, straight across; checks the three places",
      };
    case "upperToArm":
      return {
        name: "Upper joint to tie rod end",
        how: "center to center, straight across; checks the three places",
      };
  }
}

/** What stands over the numbers of `jigCells`. */
export const JIG_COLUMNS = ["Must read", "Tolerance"] as const;

/** What must be read of a line of the jig sheet, and how far off it may be, under `JIG_COLUMNS`. */
export function jigCells(
  row: Omit<JigRow, "isCheck">,
  format: LengthFormat,
): readonly [mustRead: string, tolerance: string] {
  const { measure, mustRead, tolerance } = row;
  return [
    askedText(jigWay(row) * mustRead, measure, format, tolerance),
    `±${jigText(tolerance, measure, format)}`,
  ];
}

/** What was read in a line of the sheet, mm or rad, as the line's own word has it. */
export function jigReadText(row: Omit<JigRow, "isCheck">, is: number, format: LengthFormat): string {
  return jigText(jigWay(row) * is, row.measure, format);
}

/** How a sheet for the jig shows lengths: finer than a tape of sixteenths. @param shown how lengths are shown elsewhere */
export function jigFormat({ units, fraction }: LengthFormat): LengthFormat {
  if (units === "mm") return { units, decimals: 1 };
  return fraction === "decimal" ? { units, fraction, decimals: 3 } : { units, fraction: 64 };
}

/** mm. A fraction that is off by no more than this says what a tape must read, */
const READ_EXACT = 0.1;

/** unless it takes more than this share of what the reading may be off. */
const SHARE_EXACT = 1 / 4;

/**
 * A number that is asked of the jig: as a tape has it where a sixteenth says it, else in decimals. Finer fractions would read as
 * sharper than the tolerance beside them. @param tolerance mm, of the reading, either way
 */
function askedText(
  value: number,
  measure: JigRow["measure"],
  format: LengthFormat,
  tolerance: number,
): string {
  const { units, fraction } = format;
  if (measure === "angle" || units === "mm" || fraction === "decimal") return jigText(value, measure, format);
  const sixteenth = MM_PER_INCH / 16;
  const off = Math.abs(value - sixteenth * Math.round(value / sixteenth));
  const isExact = off <= Math.min(READ_EXACT, SHARE_EXACT * tolerance);
  return jigText(value, measure, isExact ? { units, fraction: 16 } : gaugeFormat(format));
}

/** mm: rounding. */
const SAME = 1e-6;

/**
 * A length of a sheet outside its table: as the line has it that asks for it, or fine enough for any line where none does.
 * @param mm of a reading as its line has it, or without its sign
 */
export function jigAskedLength(mm: number, { rows }: JigSheet, format: LengthFormat): string {
  const lengths = rows.filter(({ measure }) => measure === "length");
  const asked = lengths.filter(({ mustRead }) => Math.abs(Math.abs(mustRead) - Math.abs(mm)) < SAME);
  const tolerances = (asked.length > 0 ? asked : lengths).map(({ tolerance }) => tolerance);
  return askedText(mm, "length", format, Math.min(...tolerances));
}

/** A number of the sheet with its unit: `6 1/8 in`, `8.40°`. */
export function jigText(value: number, measure: JigRow["measure"], format: LengthFormat): string {
  return measure === "angle" ? withMinus(formatAngle(value, 2)) : withMinus(formatLength(value, format));
}

/** The same with its sign, for what is off; what reads as nothing has none. */
export function jigOffText(value: number, measure: JigRow["measure"], format: LengthFormat): string {
  const text = jigText(value, measure, format);
  return value > 0 && !/^0(\.0+)?(°| )/.test(text) ? `+${text}` : text;
}

/** What a shop has to know before it clamps anything, a sentence a line. */
export function jigSetupSentences(sheet: JigSheet, format: LengthFormat): readonly string[] {
  const { jointHeight, clampAt, faceAt, halfLength, knuckle } = sheet;
  const length = (mm: number) => jigAskedLength(mm, sheet, format);
  const from =
    jointHeight === 0
      ? "above the lower ball joint center"
      : `above the table, the lower ball joint center standing ${length(jointHeight)} above it`;
  return [
    `Set the ball joint line, lower center to upper center, upright in the jig; heights are along it.`,
    `Clamp one straightedge along the truck's length in line with the ball joint centers, square to the ball joint line, at pin height: ${length(clampAt)} ${from}.`,
    `Lay the other on the hub face along the truck's length, across the middle of the pin: ${length(faceAt)} ${from}.`,
    `Mark the first ${length(halfLength)} ahead of the ball joint line and as far behind, and read the tape at both marks, square to the face: swing it for the least reading.`,
    knuckle.toe === 0
      ? "No toe is built in: both tapes must read alike."
      : `${formatAngle(Math.abs(knuckle.toe), 2)} of toe-${knuckle.toe > 0 ? "in" : "out"} is built in: the tape reads less ${knuckle.toe > 0 ? "in front" : "behind"}.`,
    offHeightSentence(sheet, format),
    ...dropSentence(sheet, format),
    "Left and right are mirror images: ahead, outboard and up read alike on both.",
  ];
}

/** The drop, from the same datum; none where no base knuckle is known. */
function dropSentence(sheet: JigSheet, format: LengthFormat): readonly string[] {
  const { drop, clampAt } = sheet;
  if (drop === null) return [];
  const height = jigAskedLength(clampAt - drop, sheet, format);
  return [
    `Drop: the pin stands ${jigAskedLength(Math.abs(drop), sheet, format)} ${drop < 0 ? "lower" : "higher"} along the ball joint line than on the base knuckle, whose pin height there is ${height}.`,
  ];
}

/** Why at pin height: what a clamp that slipped costs on this knuckle. */
function offHeightSentence({ offHeight, knuckle }: JigSheet, format: LengthFormat): string {
  const by = formatLength(offHeight.by, { units: format.units, decimals: 2 });
  if (knuckle.pinAngle === 0)
    return "The face stands square to the pin and this pin has no angle, so here the tape reads alike at any height.";
  const costs = formatLength(Math.abs(offHeight.costs), gaugeFormat(format));
  const [more, less] = offHeight.costs > 0 ? ["more", "less"] : ["less", "more"];
  return `Not above pin height and not below: the ball joint line leans ${formatAngle(Math.abs(knuckle.pinAngle), 2)} against the face, so a straightedge clamped ${by} too high reads ${costs} ${more}, one as much too low reads that much ${less}, and the hub face comes out wrong by that.`;
}

/** Decimals as fine as a gauge reads: a few thousandths of an inch do not show on a tape's fractions. */
export function gaugeFormat({ units }: LengthFormat): LengthFormat {
  return units === "in" ? { units, fraction: "decimal", decimals: 3 } : { units, decimals: 2 };
}

/** For who types readings into a file: there a place behind or inboard is less than 0. "" = no line of the sheet is told so. */
export function jigFileSentence({ rows }: JigSheet): string {
  return rows.some((row) => jigWay(row) < 0)
    ? "In the setup file's asBuilt block, what is read behind or inboard is given with a minus sign."
    : "";
}

/** What is written on the sketch of the jig. */
export function jigSketchWords(
  sheet: JigSheet,
  side: "left" | "right",
  format: LengthFormat,
): JigSketchWords {
  const { offHeight, jointHeight } = sheet;
  const [more, less] = offHeight.costs >= 0 ? ["more", "less"] : ["less", "more"];
  const by = formatLength(offHeight.by, { units: format.units, decimals: 2 });
  const costs = formatLength(Math.abs(offHeight.costs), gaugeFormat(format));
  return {
    fromFront: `${side === "left" ? "Left" : "Right"} knuckle, seen from the front`,
    fromAbove: "Seen from above, along the ball joint line",
    forward: "the front of the truck is below",
    datum: `Heights from the ${jointHeight === 0 ? "lower ball joint center" : "jig's table"}`,
    straightedge: "straightedge",
    onFace: "on the face",
    tape: { front: "tape in front", behind: "tape behind" },
    angleFinder: "angle finder",
    tieRodEnd: "tie rod end",
    armOut: (mm) => `${jigAskedLength(Math.abs(mm), sheet, format)} ${mm < 0 ? "inboard" : "outboard"}`,
    mark: "mark",
    offHeight: `Dashed: clamped ${by} too high reads ${costs} ${more}, too low ${less}`,
    length: (mm) => jigAskedLength(mm, sheet, format),
    angle: (rad) => jigText(rad, "angle", format),
  };
}
