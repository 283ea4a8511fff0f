import type { FileUnits } from "../../units/lengthUnits.ts";
import { parseLength } from "../../units/parseLength.ts";
import { hasWithin, joinWithin, splitWithin, unitAtEnd, withUnit } from "../../units/withinText.ts";
import { type KeyPath, valueAt } from "../types/keyPath.ts";
import type { LengthUnit } from "../types/types.ts";

/** A number and how well it is known, as typed, apart. */
export interface TypedPair {
  readonly value: number | string;
  readonly within: number | string;
}

/** What is typed as `{ "value": …, "within": … }`; null = it is something else. */
export function pairOf(typed: unknown): TypedPair | null {
  if (typeof typed !== "object" || typed === null || Array.isArray(typed)) return null;
  const { value, within, ...others } = typed as Readonly<Record<string, unknown>>;
  const isPlain = (one: unknown): one is number | string =>
    typeof one === "number" || (typeof one === "string" && !hasWithin(one));
  return isPlain(value) && isPlain(within) && Object.keys(others).length === 0 ? { value, within } : null;
}

/** A number typed with its uncertainty, in either notation, taken apart; null = it stands alone, or does not read. */
export function typedPair(typed: unknown): TypedPair | null {
  if (typeof typed !== "string") return pairOf(typed);
  const split = splitWithin(typed);
  return split?.ok ? { value: split.value, within: split.within } : null;
}

/** A number as typed without its uncertainty; anything else as it is. */
export function bareTyped(typed: unknown): unknown {
  return typedPair(typed)?.value ?? typed;
}

/**
 * Another value in a number's place with the uncertainty it had, in the notation it had; the value alone where it had none.
 * Where one of the two would then be read in the other's unit, both are told.
 * @param bare unit of what has none: the file's of a length, `°` of an angle, else ""
 */
export function withSameWithin(before: unknown, value: unknown, bare: FileUnits | "°" | ""): unknown {
  const pair = typedPair(before);
  if (pair === null || (typeof value !== "number" && typeof value !== "string") || typedPair(value))
    return value;
  const [ofValue, ofWithin] = [unitAtEnd(String(value)), unitAtEnd(String(pair.within))];
  const isMixed = bare !== "" && (ofValue === "") !== (ofWithin === "");
  const told = (one: number | string, unit: string) =>
    isMixed && unit === "" ? withUnit(String(one), bare) : one;
  const both = { value: told(value, ofValue), within: told(pair.within, ofWithin) };
  return typeof before === "string" ? joinWithin(both.value, both.within) : both;
}

/** A length of a document as typed, without what is said of its accuracy, mm; null where none stands or it does not read. */
export function lengthAt(document: unknown, path: KeyPath, units: LengthUnit): number | null {
  const typed = bareTyped(valueAt(document, path));
  const read = typeof typed === "number" || typeof typed === "string" ? parseLength(typed, units) : null;
  return read?.ok ? read.mm : null;
}
