import * as z from "zod";
import { parseAngle } from "../../units/angle.ts";
import { parseLength } from "../../units/parseLength.ts";
import { parseQuantity, type Quantity } from "../../units/quantity.ts";
import { nearestWord } from "../../units/words.ts";
import { MAX_NAME, MAX_QUANTITY } from "../reading/limits.ts";
import { type DegreeRange, fieldKinds, type Sign } from "./fieldKinds.ts";

/**
 * The sorts of field a setup is made of. Each takes the description that ends up in the JSON Schema and in
 * "required: …". Every mistake a single field can hold is found here, whatever else is wrong in the file;
 * what takes two fields or the file's units is found when a block is resolved.
 */

/** What to say of a missing key: the description up to its first colon or semicolon. */
export function required(description: string): string {
  return `required: ${/^[^:;]*/.exec(description)![0]}`;
}

const SIGN_MEND: Readonly<Record<Exclude<Sign, "any">, string>> = {
  positive: "must be more than 0",
  notNegative: "must be 0 or more",
  notPositive: "must be 0 or less",
};

const SIGN_BOUND: Readonly<Record<Sign, object>> = {
  any: {},
  positive: { exclusiveMinimum: 0 },
  notNegative: { minimum: 0 },
  notPositive: { maximum: 0 },
};

/** Whether somebody meant to tell how well a number is known; one that is told well is taken off before a field is read. */
function isWithinBlock(input: unknown): boolean {
  if (typeof input !== "object" || input === null || Array.isArray(input)) return false;
  return Object.hasOwn(input, "value") || Object.hasOwn(input, "within");
}

const WITHIN_MEND = 'must have "value" and "within", each a number or text, and nothing else';

/**
 * A length as typed: a number in the file's units, or text with a unit.
 * @param mayBeEmpty "" is asked for and not read yet; default false
 */
export function lengthField(description: string, sign: Sign = "any", mayBeEmpty = false) {
  return z
    .union([z.number().meta({ ...SIGN_BOUND[sign] }), z.string()], {
      error: ({ input }) => lengthMend(input, description, sign) ?? undefined,
    })
    .superRefine((value, context) => {
      const message = mayBeEmpty && value === "" ? null : lengthMend(value, description, sign);
      if (message !== null) context.addIssue({ code: "custom", message });
    })
    .meta({ description })
    .register(fieldKinds, { kind: "length", sign });
}

function lengthMend(input: unknown, description: string, sign: Sign): string | null {
  if (input === undefined) return required(description);
  if (isWithinBlock(input)) return WITHIN_MEND;
  if (typeof input !== "number" && typeof input !== "string") {
    return 'must be a length: a number in the file\'s units, or text such as "5 5/8 in"';
  }
  const length = parseLength(input, "in"); // the sign is the same in mm, and what is finite in inches is in mm
  if (!length.ok) return length.mend;
  return sign === "any" || hasSign(length.mm, sign) ? null : SIGN_MEND[sign];
}

/** A weight, load, pressure, area or volume as typed: a number in the file's unit of it, or text with a unit. */
export function quantityField(description: string, quantity: Quantity, sign: Sign = "positive") {
  const mendOf = (input: unknown): string | null => {
    if (input === undefined) return required(description);
    if (isWithinBlock(input)) return WITHIN_MEND;
    if (typeof input !== "number" && typeof input !== "string") return `must be a ${quantity}, a number`;
    const parsed = parseQuantity(input, quantity, "in"); // the sign is the same in any unit
    if (!parsed.ok) return parsed.mend;
    if (Math.abs(parsed.value) > MAX_QUANTITY[quantity])
      return `is more ${quantity} than any truck has; check the number and its unit`;
    return hasSign(parsed.value, sign) ? null : SIGN_MEND[sign as Exclude<Sign, "any">];
  };
  return z
    .union([z.number().meta({ ...SIGN_BOUND[sign] }), z.string()], {
      error: ({ input }) => mendOf(input) ?? undefined,
    })
    .superRefine((value, context) => {
      const message = mendOf(value);
      if (message !== null) context.addIssue({ code: "custom", message });
    })
    .meta({ description })
    .register(fieldKinds, { kind: "quantity", quantity, sign });
}

function hasSign(value: number, sign: Sign): boolean {
  switch (sign) {
    case "positive":
      return value > 0;
    case "notNegative":
      return value >= 0;
    case "notPositive":
      return value <= 0;
    default:
      return true;
  }
}

/** An angle as typed: degrees as a number, or text such as `8.4°` or `8° 24'`. */
export function angleField(description: string, range: DegreeRange) {
  return z
    .union([z.number().meta({ exclusiveMinimum: range.above, exclusiveMaximum: range.below }), z.string()], {
      error: ({ input }) => angleMend(input, description, range) ?? undefined,
    })
    .superRefine((value, context) => {
      const message = angleMend(value, description, range);
      if (message !== null) context.addIssue({ code: "custom", message });
    })
    .meta({ description })
    .register(fieldKinds, { kind: "angle", degrees: range });
}

function angleMend(input: unknown, description: string, range: DegreeRange): string | null {
  if (input === undefined) return required(description);
  if (isWithinBlock(input)) return WITHIN_MEND;
  if (typeof input !== "number" && typeof input !== "string")
    return "must be an angle in degrees, such as 8.4";
  const angle = parseAngle(input);
  if (!angle.ok) return angle.mend;
  const deg = (angle.rad / Math.PI) * 180;
  const fits = deg > range.above && deg < range.below;
  return fits ? null : `must be more than ${range.above} and less than ${range.below} degrees`;
}

/** A point as typed: three lengths. */
export function pointField(description: string) {
  return z
    .tuple([lengthField("x, forward"), lengthField("y, left"), lengthField("z, up")], {
      error: tupleMend(description, "a point of three lengths, [x, y, z]"),
    })
    .meta({ description })
    .register(fieldKinds, { kind: "point" });
}

/** Three plain numbers, such as a direction. */
export function numbersField(description: string, what: string) {
  const number = z.number({ error: "must be a finite number" });
  return z
    .tuple([number, number, number], { error: tupleMend(description, what) })
    .meta({ description })
    .register(fieldKinds, { kind: "numbers" });
}

/** A name or other text: not blank, on one line, at most so many characters. */
export function textField(description: string, most: number = MAX_NAME) {
  return z
    .string({ error: textMend(description) })
    .superRefine((text, context) => {
      if (text.trim() === "") context.addIssue({ code: "custom", message: "must not be empty" });
      if (text.length > most)
        context.addIssue({ code: "custom", message: `must be at most ${most} characters` });
      if (/\p{Cc}/u.test(text))
        context.addIssue({ code: "custom", message: "must be one line of plain text" });
    })
    .meta({ description, minLength: 1, maxLength: most })
    .register(fieldKinds, { kind: "text" });
}

/** Text in a notation of its own, such as a bolt pattern. @param parse says what is wrong with a text */
export function notationField(
  description: string,
  parse: (text: string) => { readonly ok: true } | { readonly ok: false; readonly mend: string },
) {
  return z
    .string({ error: textMend(description) })
    .superRefine((text, context) => {
      const read = parse(text);
      if (!read.ok) context.addIssue({ code: "custom", message: read.mend });
    })
    .meta({ description, minLength: 1 })
    .register(fieldKinds, { kind: "text" });
}

function textMend(description: string) {
  return ({ input }: { readonly input?: unknown }) =>
    input === undefined ? required(description) : "must be text in double quotes";
}

/** One of a few fixed words. */
export function choiceField<const Words extends readonly [string, ...string[]]>(
  description: string,
  words: Words,
) {
  return z
    .enum(words, {
      error: ({ input }) =>
        input === undefined ? `required: ${choiceMend(input, words)}` : choiceMend(input, words),
    })
    .meta({ description })
    .register(fieldKinds, { kind: "choice", words });
}

/** What to say of a value that is none of the words: `must be "in" or "mm"; did you mean "in"?`. */
export function choiceMend(input: unknown, words: readonly string[]): string {
  const near = typeof input === "string" ? nearestWord(input.slice(0, 60), words) : null;
  return `must be ${words.map((word) => `"${word}"`).join(" or ")}${near ? `; did you mean "${near}"?` : ""}`;
}

/** Gives the sentence for a list of fixed length. */
export function tupleMend(description: string, what: string) {
  return ({ input }: { readonly input?: unknown }) =>
    input === undefined ? required(description) : `must be ${what}`;
}
