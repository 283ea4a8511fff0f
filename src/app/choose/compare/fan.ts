import { effectiveDocument, withoutVariants } from "../../../setup/editing/effectiveDocument.ts";
import { setupFields } from "../../../setup/fieldCatalogue.ts";
import type { SetupField } from "../../../setup/fields/setupField.ts";
import { setAt } from "../../../setup/reading/setAt.ts";
import type { KeyPath } from "../../../setup/types/keyPath.ts";
import type { FileUnits } from "../../../units/lengthUnits.ts";
import { plainLengthText } from "../../../units/plainLengthText.ts";
import type { Truck } from "../../state/truck.ts";
import type { TypedDocument } from "../../state/typedDocument.ts";

/** One value of a fan. */
export interface FanStep {
  /** What the file would hold. */
  readonly value: number | string;
  /** As it is read. */
  readonly text: string;
  /** null = it does not go together. */
  readonly truck: Truck | null;
}

/** Fields that one number says: those of knuckle, wheel, tire and alignment. */
export function fanFields(document: TypedDocument | null): readonly SetupField[] {
  return setupFields().filter(({ pattern, kind }) => {
    const [block] = pattern;
    if (block !== "knuckle" && block !== "wheel" && block !== "tire" && block !== "alignment") return false;
    if (kind !== "length" && kind !== "signedLength" && kind !== "angle") {
      return false;
    }
    // What lies deeper, such as the targets of an alignment, moves no metal.
    if (pattern.includes("*") || pattern.length > 2) return false;
    // Only what is said already, or what every setup has: of backspacing and offset one stands.
    return block === "knuckle" || block === "alignment" || isSaid(document, pattern);
  });
}

function isSaid(document: TypedDocument | null, pattern: readonly string[]): boolean {
  let value: unknown = document;
  for (const key of pattern) value = (value as Record<string, unknown> | undefined)?.[key];
  return value !== undefined;
}

/** Evenly spaced values, ends included. */
export function fanValues(from: number, to: number, steps: number): number[] {
  return Array.from({ length: steps }, (_, i) => from + ((to - from) * i) / (steps - 1));
}

/** A fan's value as the file holds it: a length as text, exact; an angle in degrees. @param value mm or degrees */
export function fileValue(field: SetupField, value: number, units: FileUnits): number | string {
  return field.kind === "angle" ? Number(value.toFixed(6)) : plainLengthText(value, units);
}

/** What is shown with one field put to another value, as a document of its own without variants. */
export function fanDocument(
  document: TypedDocument,
  variant: string | null,
  path: KeyPath,
  value: number | string,
): TypedDocument {
  const shown = effectiveDocument(document, variant) ?? document;
  return setAt(withoutVariants(shown), path, value) as TypedDocument;
}
