import { pathsIn, setupFields } from "../../setup/fieldCatalogue.ts";
import type { FieldKind } from "../../setup/fields/setupField.ts";
import { type KeyPath, keyText } from "../../setup/types/keyPath.ts";
import type { Setup } from "../../setup/types/types.ts";
import { type WindowField, windowField } from "./windowField.ts";

/** Blocks whose numbers move metal or say which poses count, those most asked about first. */
const MOVING = [
  "knuckle",
  "wheel",
  "tire",
  "alignment",
  "truck",
  "hardware",
  "limits",
  "airSpring",
  "travel",
  "roll",
];

/** Whether a number at a path may move a gap or a curve: what an alignment aims at does not, nor does what a truck weighs. */
export function mayMove(path: KeyPath): boolean {
  return MOVING.includes(String(path[0])) && !(path[0] === "alignment" && path[1] === "targets");
}

/**
 * Every length and angle of a document that can be given other values and may move something: of a point its coordinates, of a
 * list each entry's. What a default stands for is there too.
 * @param document the variant shown applied; @param setup what was made of it
 */
export function fieldsToVary(document: unknown, setup: Setup, file: string): readonly WindowField[] {
  const rank = ([block]: KeyPath) => MOVING.indexOf(String(block));
  const paths = setupFields()
    .filter(({ pattern, kind }) => KINDS.includes(kind) && (mayMove(pattern) || pattern[0] === "allowance"))
    .flatMap(({ pattern, kind }) => {
      const all = pathsOf(pattern, document);
      return kind === "point" ? all.flatMap((path) => [0, 1, 2].map((axis) => [...path, axis])) : all;
    })
    .sort((a, b) => (rank(a) + 1 || MOVING.length + 1) - (rank(b) + 1 || MOVING.length + 1));
  return [...new Set(paths.map(keyText))].flatMap((key) => {
    const found = windowField(document, setup, key, file);
    return found.ok ? [found.value] : [];
  });
}

/** Of these kinds a field is, or has three of, what can be varied. */
const KINDS: readonly FieldKind[] = ["length", "signedLength", "angle", "point"];

/** What an air spring carries and holds moves nothing. */
const STILL = ["curve", "volume"];

/** A pattern's paths in a document; none inside a mesh, which may be long and is not moved about. */
function pathsOf(pattern: readonly string[], document: unknown): readonly KeyPath[] {
  return pattern.includes("vertices") || STILL.includes(pattern[1]!) ? [] : pathsIn(pattern, document);
}
