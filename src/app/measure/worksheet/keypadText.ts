/** A key of the pad: a digit, a fraction of an inch, the point of a decimal, the sign, or the way back. */
export type PadKey = Digit | Fraction | "." | "±" | "⌫";

export type Digit = "0" | "1" | "2" | "3" | "4" | "5" | "6" | "7" | "8" | "9";
export type Fraction = `${number}/${2 | 4 | 8 | 16}`;

export const DIGITS: readonly Digit[] = ["7", "8", "9", "4", "5", "6", "1", "2", "3", "0"];

/** As they stand on a tape, a line a denominator. */
export const FRACTIONS: readonly (readonly Fraction[])[] = [
  ["1/4", "1/2", "3/4"],
  ["1/8", "3/8", "5/8", "7/8"],
  ["1/16", "3/16", "5/16", "7/16"],
  ["9/16", "11/16", "13/16", "15/16"],
];

/** Digits before the point: no truck is longer, in inches or in mm. */
const MAX_WHOLE = 5;
/** Digits after the point. */
const MAX_DECIMALS = 3;

/** What the pad writes: a sign, whole digits, then a fraction or decimals. */
interface PadText {
  readonly sign: "" | "-";
  readonly whole: string;
  readonly fraction: string;
  /** With its point; "" = none. */
  readonly decimals: string;
}

const WRITTEN = /^(-?)(\d*)(?:(?:^|(?<=\d) |(?<=-))(\d+\/\d+)|(\.\d*))?$/;

/**
 * What stands in a field after a key of the pad: digits go to the whole inches, whether a fraction stands there yet or not;
 * a fraction takes the other's place, and goes when it is pressed again; the way back takes the fraction first. Text that
 * the pad would not write, such as `5-5/8"`, stays: keys add to its end, and the way back takes its last letter.
 */
export function afterPadKey(text: string, key: PadKey): string {
  const read = readPad(text);
  if (read === null) return afterOther(text, key);
  const { sign, whole, fraction, decimals } = read;
  switch (key) {
    case "±":
      return written({ ...read, sign: sign === "" ? "-" : "" });
    case "⌫":
      if (fraction !== "") return written({ ...read, fraction: "" });
      if (decimals !== "") return written({ ...read, decimals: decimals.slice(0, -1) });
      return whole === "" ? "" : written({ ...read, whole: whole.slice(0, -1) });
    case ".":
      return decimals !== "" || fraction !== ""
        ? text
        : written({ ...read, whole: whole || "0", decimals: "." });
    default:
      if (key.includes("/")) return written({ ...read, decimals: "", fraction: fraction === key ? "" : key });
      if (decimals !== "")
        return decimals.length > MAX_DECIMALS ? text : written({ ...read, decimals: decimals + key });
      if (whole.length >= MAX_WHOLE) return text;
      return written({ ...read, whole: whole === "0" ? key : whole + key });
  }
}

/** The fraction that stands in a field, by which its key is shown pressed; null = none, or not the pad's own text. */
export function padFraction(text: string): string | null {
  return readPad(text)?.fraction || null;
}

function readPad(text: string): PadText | null {
  const [whole, sign = "", digits = "", fraction = "", decimals = ""] = WRITTEN.exec(text.trim()) ?? [];
  if (whole === undefined) return null;
  return { sign: sign === "-" ? "-" : "", whole: digits, fraction, decimals };
}

function written({ sign, whole, fraction, decimals }: PadText): string {
  return sign + [whole + decimals, fraction].filter((part) => part !== "").join(" ");
}

function afterOther(text: string, key: PadKey): string {
  if (key === "⌫") return text.slice(0, -1);
  if (key === "±") return text.startsWith("-") ? text.slice(1) : `-${text}`;
  return key.includes("/") ? `${text.trimEnd()} ${key}` : text + key;
}
