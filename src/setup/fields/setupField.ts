import * as z from "zod";
import { MAX_LENGTH, RIM_DIAMETER_RANGE } from "../reading/limits.ts";
import { type DegreeRange, fieldKinds, type Sign } from "./fieldKinds.ts";
import { fieldLabel } from "./fieldLabels.ts";

/** What a field holds. `length` never goes below 0, `signedLength` may; `list` and `block` hold other fields. */
export type FieldKind =
  | "length"
  | "signedLength"
  | "angle"
  | "number"
  /** A weight, load, pressure, area or volume: bare in the file's unit of it, or text with a unit. */
  | "quantity"
  | "choice"
  | "text"
  | "point"
  | "numbers"
  | "list"
  | "block";

/** Values a number may have; null = no end. Lengths in mm, angles in degrees. An excluded end is not allowed itself. */
export interface FieldRange {
  readonly least: number | null;
  readonly most: number | null;
  readonly leastExcluded: boolean;
  readonly mostExcluded: boolean;
}

/** One field of the setup file, for whoever draws it or reads what is typed into it. */
export interface SetupField {
  /** Keys from the top; `*` for any entry of a list or of a point: `["truck", "body", "*", "points", "*", "0"]` has z at "2". */
  readonly pattern: readonly string[];
  /** What a form calls it, in the trade's words. */
  readonly label: string;
  /** What it means, one sentence without a full stop, from the schema. */
  readonly meaning: string;
  readonly kind: FieldKind;
  readonly required: boolean;
  /** What holds when it is left out, in words (`1/4 in`, `from the free radius`); null = it must be given, or nothing holds. */
  readonly default: string | null;
  readonly range: FieldRange;
  /** Of a `choice`: the words, most usual first. */
  readonly choices: readonly string[];
  /** One step: degrees of an angle, or of a plain number; null = lengths step by the fraction shown, others not at all. */
  readonly step: number | null;
  /** The field goes only with this word at this key of its own block: a stroke with `type` "rack". */
  readonly when: { readonly key: string; readonly is: string } | null;
  /** Reads and checks a value as typed. */
  readonly schema: z.ZodType;
}

const NO_ENDS: FieldRange = { least: null, most: null, leastExcluded: false, mostExcluded: false };

/** Degrees. Shims and toe gauges are read to a tenth (common practice, no source). */
const ANGLE_STEP_DEG = 0.1;

/** Describes the field a schema stands for, where it stands. */
export function setupFieldOf(
  schema: z.ZodType,
  pattern: readonly string[],
  when: SetupField["when"],
): SetupField {
  const required = !(schema instanceof z.ZodOptional);
  const inner = unwrapped(schema);
  const nature = fieldKinds.get(inner);
  const { meaning, byDefault } = splitDescription(inner.description ?? "");
  const base = {
    pattern,
    label: fieldLabel(pattern, meaning),
    meaning,
    required,
    when,
    schema: inner,
    default: required ? null : byDefault,
    range: NO_ENDS,
    choices: [],
    step: null,
  };
  if (!nature) return { ...base, ...plainKind(inner) };
  switch (nature.kind) {
    case "length":
      return {
        ...base,
        kind: nature.sign === "positive" || nature.sign === "notNegative" ? "length" : "signedLength",
        range: pattern.at(-1) === "rimDiameter" ? rimRange : lengthRange(nature.sign),
      };
    case "angle":
      return { ...base, kind: "angle", range: angleRange(nature.degrees), step: ANGLE_STEP_DEG };
    case "choice":
      return { ...base, kind: "choice", choices: nature.words };
    case "quantity":
      return { ...base, kind: "quantity", range: quantityRange(nature.sign) };
    default:
      return { ...base, kind: nature.kind };
  }
}

/** The schema inside `optional`. */
export function unwrapped(schema: z.ZodType): z.ZodType {
  return schema instanceof z.ZodOptional ? unwrapped(schema.def.innerType as z.ZodType) : schema;
}

function plainKind(schema: z.ZodType): Pick<SetupField, "kind"> & Partial<SetupField> {
  if (schema instanceof z.ZodArray || schema instanceof z.ZodTuple) return { kind: "list" };
  if (schema instanceof z.ZodLiteral) return { kind: "choice", choices: [...schema.values].map(String) };
  if (schema instanceof z.ZodNumber) {
    return { kind: "number", step: 1, range: numberRange(schema) };
  }
  return { kind: schema instanceof z.ZodString ? "text" : "block" };
}

const rimRange: FieldRange = { ...NO_ENDS, ...RIM_DIAMETER_RANGE };

function numberRange(schema: z.ZodNumber): FieldRange {
  const end = (value: number | null) => (value !== null && Number.isFinite(value) ? value : null);
  const [least, most] = [end(schema.minValue), end(schema.maxValue)];
  const isExcluded = (value: number | null) => value !== null && !schema.safeParse(value).success;
  return { least, most, leastExcluded: isExcluded(least), mostExcluded: isExcluded(most) };
}

function lengthRange(sign: Sign): FieldRange {
  return {
    least: sign === "positive" || sign === "notNegative" ? 0 : -MAX_LENGTH,
    most: sign === "notPositive" ? 0 : MAX_LENGTH,
    leastExcluded: sign === "positive",
    mostExcluded: false,
  };
}

/** Without far ends: they differ from quantity to quantity, and only the sign is checked. */
function quantityRange(sign: Sign): FieldRange {
  const least = sign === "positive" || sign === "notNegative" ? 0 : null;
  return { ...NO_ENDS, least, most: sign === "notPositive" ? 0 : null, leastExcluded: sign === "positive" };
}

function angleRange({ above, below }: DegreeRange): FieldRange {
  return { least: above, most: below, leastExcluded: true, mostExcluded: true };
}

/** Descriptions end in `; default 1/4 in` where there is one. */
function splitDescription(description: string): {
  readonly meaning: string;
  readonly byDefault: string | null;
} {
  const found = /[;,] default (.+)$/.exec(description);
  return found
    ? { meaning: description.slice(0, found.index), byDefault: found[1]! }
    : { meaning: description, byDefault: null };
}
