import { isRead, isSaidMine } from "../../setup/exampleMarks.ts";
import { type KeyPath, valueAt } from "../../setup/types/keyPath.ts";
import { listWords, lower } from "./asBuiltWords.ts";
import { fieldName } from "./fieldName.ts";

/** What the three coordinates of a point say. */
const AXES = ["how far ahead", "how far out", "its height"] as const;

/**
 * What of a field is read while the rest is assumed, in words: `its height is read; how far ahead and how far out are assumed`, `1
 * of 7 points is read; the others follow it`. Null where all of it is assumed.
 * @param document the setup, a variant's patch applied
 */
export function readInPart(path: KeyPath, document: unknown): string | null {
  const own = ownEntries(path, document);
  if (own === null || !own.some(Boolean)) return null;
  if (Array.isArray(valueAt(document, [...path, 0]))) {
    const count = own.filter(Boolean).length;
    return `${count} of ${own.length} points ${count === 1 ? "is" : "are"} read; the others follow`;
  }
  const axes = (isOwn: boolean) => AXES.filter((_, axis) => own[axis] === isOwn);
  return `${clause(axes(true), "read")}; ${clause(axes(false), "assumed")}`;
}

/** What is still assumed of a field, inside a list: `upper ball joint`, `lower ball joint, only how far ahead`. */
export function assumedName(path: KeyPath, document: unknown): string {
  const name = lower(fieldName(path, document));
  const own = ownEntries(path, document);
  if (own === null || !own.some(Boolean)) return name;
  if (Array.isArray(valueAt(document, [...path, 0])))
    return `${name}, ${own.filter((one) => !one).length} of ${own.length}`;
  return `${name}, only ${listWords(AXES.filter((_, axis) => !own[axis]))}`;
}

/** What is not measured yet, as a line: `Still assumed: …`. */
export function stillAssumed(fields: readonly KeyPath[], document: unknown): string {
  if (fields.length === 0) return "Nothing is assumed any more.";
  return `Still assumed: ${fields.map((path) => assumedName(path, document)).join("; ")}.`;
}

function clause(words: readonly string[], done: string): string {
  return `${listWords(words)} ${words.length === 1 ? "is" : "are"} ${done}`;
}

/** Of each coordinate of a point, or each point of a list, whether all of it is read or typed; null = it is a single number. */
function ownEntries(path: KeyPath, document: unknown): readonly boolean[] | null {
  const value = valueAt(document, path);
  if (!Array.isArray(value)) return null;
  const isOwn = (at: KeyPath, one: unknown): boolean =>
    Array.isArray(one)
      ? one.every((entry, i) => isOwn([...at, i], entry))
      : isRead(document, at) || isSaidMine(document, at);
  return value.map((one, i) => isOwn([...path, i], one));
}
