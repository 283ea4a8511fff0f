import type { KeyPath } from "../types/keyPath.ts";

type Holder = Record<string | number, unknown>;

/**
 * A copy of a document with `value` at a path; what is not on the way is shared with the original, which stays as it
 * is. Objects that are missing on the way are made. Putting what already stands there gives back the same document.
 * @throws RangeError where the path runs through a list position that is not there, or through plain text or a number
 */
export function setAt(document: unknown, path: KeyPath, value: unknown): unknown {
  const [step, ...rest] = path;
  if (step === undefined) return value;
  const here = holderAt(document, step);
  const before = Object.hasOwn(here, step) ? here[step] : undefined;
  const after = setAt(before, rest, value);
  if (after === before && (after !== undefined || Object.hasOwn(here, step))) return document;
  if (Array.isArray(here)) return here.map((item, i) => (i === step ? after : item));
  return { ...here, [step]: after };
}

/**
 * A copy of a document without the key or list entry at a path; the same document when there is nothing. An object
 * that is left empty stays.
 */
export function removeAt(document: unknown, path: KeyPath): unknown {
  const [step, ...rest] = path;
  if (step === undefined)
    throw new RangeError("removeAt: the path is empty; a document cannot be removed from itself");
  if (typeof document !== "object" || document === null || !Object.hasOwn(document, step)) return document;
  const here = document as Holder;
  if (rest.length > 0) {
    const inner = removeAt(here[step], rest);
    return inner === here[step] ? document : setAt(document, [step], inner);
  }
  if (Array.isArray(document)) return document.filter((_, i) => i !== step);
  const { [step]: _, ...others } = here;
  return others;
}

/** What holds a step: the object or list that is there, or a new object for a key of nothing. */
function holderAt(document: unknown, step: string | number): Holder {
  if (typeof step === "number") {
    if (Array.isArray(document) && Number.isInteger(step) && step >= 0 && step < document.length) {
      return document as unknown as Holder;
    }
    throw new RangeError(`setAt: there is no list entry ${step}`);
  }
  if (step === "__proto__") throw new RangeError("setAt: __proto__ is no key");
  if (document === undefined || document === null) return {};
  if (typeof document === "object" && !Array.isArray(document)) return document as Holder;
  throw new RangeError(
    `setAt: nothing can stand at "${step}" of ${Array.isArray(document) ? "a list" : "a plain value"}`,
  );
}
