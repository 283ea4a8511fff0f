import { parseLength } from "../../units/parseLength.ts";
import { type KeyPath, valueAt } from "../types/keyPath.ts";
import type { LengthUnit } from "../types/types.ts";
import { bareTyped } from "./typedPair.ts";

/** A length of a document as typed, without what is said of its accuracy, mm; null where none stands or it does not read. */
export function lengthAt(document: unknown, path: KeyPath, units: LengthUnit): number | null {
  const typed = bareTyped(valueAt(document, path));
  const read = typeof typed === "number" || typeof typed === "string" ? parseLength(typed, units) : null;
  return read?.ok ? read.mm : null;
}
