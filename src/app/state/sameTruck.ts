import type { Setup } from "../../setup/types/types.ts";

/** What a setup and its poses are called and how it was written, which changes nothing of the truck. */
const NAMES: ReadonlySet<string> = new Set([
  "name",
  "variant",
  "variantNames",
  "fromExample",
  "within",
  "confirmed",
  "poses",
]);

/** What is written down beside a truck: nothing of it turns, nor is anything of it touched. */
const NOTES: ReadonlySet<string> = new Set([
  "name",
  "variant",
  "variantNames",
  "fromExample",
  "confirmed",
  "order",
  "jig",
  "asBuilt",
  "poses",
]);

/** Whether two trucks are one in every number, whatever their variants are called. */
export function isSameTruck({ setup: a }: { setup: Setup }, { setup: b }: { setup: Setup }): boolean {
  return isSameBut(NAMES, a, b);
}

/**
 * Whether two setups stand, move and touch alike: they may differ in an order that is not in the truck yet, in what was
 * read off the jig, in the poses that have a name, and in what they are called.
 */
export function isMovedAlike(a: Setup, b: Setup): boolean {
  return isSameBut(NOTES, a, b);
}

/** The same of two documents as typed, each with one variant applied; none is like what is no object. */
export function isTypedAlike(a: unknown, b: unknown): boolean {
  const isObject = (one: unknown) => typeof one === "object" && one !== null;
  return isObject(a) && isObject(b) && isSameBut(NOTES, a as object, b as object);
}

function isSameBut<T extends object>(left: ReadonlySet<string>, a: T, b: T): boolean {
  if (a === b) return true;
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...keys].every((key) => left.has(key) || isAlike(a[key as keyof T], b[key as keyof T]));
}

/** Whether two values are alike in all they hold. */
export function isAlike(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  // A scan has millions of numbers: their places as keys would hold the page for most of a second.
  if (isNumbers(a) && isNumbers(b)) return a.length === b.length && a.every((one, i) => one === b[i]);
  const keys = Object.keys(a);
  if (keys.length !== Object.keys(b).length) return false;
  return keys.every((key) =>
    isAlike((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]),
  );
}

function isNumbers(one: object): one is Float64Array | Uint32Array {
  return one instanceof Float64Array || one instanceof Uint32Array;
}
