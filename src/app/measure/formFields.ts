import { fieldAt, pathsIn, setupFields } from "../../setup/fieldCatalogue.ts";
import { type KeyPath, keyText, valueAt } from "../../setup/types/keyPath.ts";
import { fieldGroup, fieldName } from "../../studies/wording/fieldName.ts";

/** A field of the form that can be gone to. */
export interface FormField {
  readonly path: KeyPath;
  /** Under what it stands, and what it is called there. */
  readonly group: string;
  readonly name: string;
  /** What it means. */
  readonly meaning: string;
}

/** Of a setup's file, but no part of the form; and what the form shows as one field whatever it holds. */
const NO_FIELDS = ["$schema", "format", "version", "variants", "fromExample", "readings"];

/** All that the form has of a document: of a list of points the list, of a block that is not there yet the block. */
export function formFields(document: unknown): readonly FormField[] {
  const found = new Map<string, FormField>();
  for (const { pattern } of setupFields()) {
    if (NO_FIELDS.includes(pattern[0]!) || pattern.at(-1) === "*") continue;
    for (const path of pathsIn(pattern, document)) {
      const there = path.findIndex((_, i) => i > 0 && valueAt(document, path.slice(0, i)) === undefined);
      const shown = there < 0 ? path : path.slice(0, there);
      const field = fieldAt(shown, document);
      if (field === null) continue;
      const meaning = field.meaning;
      const name = fieldName(shown, document);
      found.set(keyText(shown), { path: shown, group: fieldGroup(shown, document), name, meaning });
    }
  }
  return [...found.values()];
}

/** Those that have every word sought: first by their names, then by what they mean. */
export function fieldsWith(fields: readonly FormField[], sought: string): readonly FormField[] {
  const words = sought.toLowerCase().split(/\s+/).filter(Boolean);
  if (words.length === 0) return [];
  const has = (text: string) => words.every((word) => text.toLowerCase().includes(word));
  const isNamed = ({ group, name }: FormField) => has(`${group} ${name}`);
  return [
    ...fields.filter(isNamed),
    ...fields.filter((one) => !isNamed(one) && has(`${one.group} ${one.name} ${one.meaning}`)),
  ];
}
