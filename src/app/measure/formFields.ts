import { fieldAt, pathsIn, setupFields } from "../../setup/fieldCatalogue.ts";
import { type KeyPath, keyText, valueAt } from "../../setup/types/keyPath.ts";
import { fieldGroup, fieldName } from "../../studies/wording/fieldName.ts";

/** A field of the form that can be gone to. */
export interface FormField {
  readonly path: KeyPath;
  /** Where it leads: to itself, or to what the form has in its stead. */
  readonly goesTo: KeyPath;
  /** What the form has in its stead; "" = it stands there itself. */
  readonly instead: string;
  /** Under what it stands, and what it is called there. */
  readonly group: string;
  readonly name: string;
  /** What it means. */
  readonly meaning: string;
}

/** Of a setup's file, but no part of the form; and what the form shows as one field whatever it holds. */
const NO_FIELDS = ["$schema", "format", "version", "variants", "fromExample", "readings"];

/** What one thing can be given by, one way at a time; the form has the way in use. By the first key of their paths. */
const WAYS: Readonly<Record<string, readonly (readonly string[])[]>> = {
  wheel: [["backspacing"], ["offset"]],
  tire: [["size"], ["diameter", "sectionWidth", "treadWidth"], ["profile"]],
  stances: [["travel"], ["lowerArmAngle"], ["airSpringHeight"], ["lipHeight"], ["frameHeight"]],
  truck: [
    ["vertices", "triangles"],
    ["file", "unit", "place"],
  ],
};

/** Where the form has a field, or what is given in its stead. */
function standsAt(path: KeyPath, document: unknown): KeyPath {
  const [key, parent] = [String(path.at(-1)), path.slice(0, -1)];
  // A switch over the fields that hang on it.
  if (key === "type") return parent;
  const ways = WAYS[String(path[0])] ?? [];
  const isGiven = (one: string) => valueAt(document, [...parent, one]) !== undefined;
  const own = ways.find((way) => way.includes(key));
  if (!own || own.some(isGiven)) return path;
  const other = ways.flat().find(isGiven);
  return other === undefined ? path : [...parent, other];
}

/** All that the form has of a document: of a list of points the list, of a block that is not there yet the block. */
export function formFields(document: unknown): readonly FormField[] {
  const found = new Map<string, FormField>();
  for (const { pattern } of setupFields()) {
    // Of a part its kind: it is no field of the form.
    if (NO_FIELDS.includes(pattern[0]!) || ["*", "kind"].includes(String(pattern.at(-1)))) continue;
    for (const path of pathsIn(pattern, document)) {
      const there = path.findIndex((_, i) => i > 0 && valueAt(document, path.slice(0, i)) === undefined);
      const shown = there < 0 ? path : path.slice(0, there);
      const field = fieldAt(shown, document);
      if (field === null) continue;
      const meaning = field.meaning;
      const name = fieldName(shown, document);
      const goesTo = standsAt(shown, document);
      const instead = goesTo.length === shown.length && goesTo !== shown ? fieldName(goesTo, document) : "";
      const group = fieldGroup(shown, document);
      found.set(keyText(shown), { path: shown, goesTo, instead, group, name, meaning });
    }
  }
  return [...found.values()];
}

/**
 * Those that have every word sought: first where words of their names begin so, then anywhere in their names or meaning; of
 * these what stands in the form before what another is given in the stead of.
 */
export function fieldsWith(fields: readonly FormField[], sought: string): readonly FormField[] {
  const words = sought.toLowerCase().split(/\s+/).filter(Boolean);
  if (words.length === 0) return [];
  const rank = ({ group, name, meaning }: FormField) => {
    const named = `${group} ${name}`.toLowerCase();
    if (words.every((word) => begins(named, word))) return 0;
    if (words.every((word) => named.includes(word))) return 1;
    return words.every((word) => `${named} ${meaning.toLowerCase()}`.includes(word)) ? 2 : 3;
  };
  const ranked = fields.map((field) => ({ field, at: rank(field) })).filter(({ at }) => at < 3);
  const order = (one: (typeof ranked)[number]) => one.at + (one.field.instead === "" ? 0 : 0.5);
  return ranked.sort((a, b) => order(a) - order(b)).map(({ field }) => field);
}

/** Whether a word of a text begins so: a caliper is no lip. */
function begins(text: string, word: string): boolean {
  for (let at = text.indexOf(word); at >= 0; at = text.indexOf(word, at + 1)) {
    if (at === 0 || !/[a-z0-9]/.test(text[at - 1]!)) return true;
  }
  return false;
}
