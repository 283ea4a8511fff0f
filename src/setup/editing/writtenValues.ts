import { type KeyPath, valueAt } from "../types/keyPath.ts";

/** A value a variant holds; undefined = the key is taken out. */
export interface WrittenValue {
  readonly path: KeyPath;
  readonly value: unknown;
}

/** What differs in some blocks of a document, key by key; what is taken out first. */
export function writtenValues(
  before: unknown,
  after: unknown,
  blocks: readonly string[],
): readonly WrittenValue[] {
  const all = [...new Set(blocks)].flatMap((block) => changesIn(before, after, [block]));
  return [
    ...all.filter(({ value }) => value === undefined),
    ...all.filter(({ value }) => value !== undefined),
  ];
}

function changesIn(before: unknown, after: unknown, path: KeyPath): readonly WrittenValue[] {
  const [a, b] = [valueAt(before, path), valueAt(after, path)];
  if (isSameJson(a, b)) return [];
  if (!isBlock(a) || !isBlock(b)) return [{ path, value: b }];
  const keys = [...new Set([...Object.keys(a), ...Object.keys(b)])];
  return keys.flatMap((key) => changesIn(before, after, [...path, key]));
}

function isBlock(value: unknown): value is object {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** Whether two JSON values are the same as typed: order of keys aside, and `5.5` is another value than `"5 1/2"`. */
export function isSameJson(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return a === b; // 0 is -0
  if (Array.isArray(a) || Array.isArray(b)) {
    return (
      Array.isArray(a) &&
      Array.isArray(b) &&
      a.length === b.length &&
      a.every((item, i) => isSameJson(item, b[i]))
    );
  }
  const keys = Object.keys(a);
  if (keys.length !== Object.keys(b).length) return false;
  return keys.every(
    (key) =>
      Object.hasOwn(b, key) &&
      isSameJson((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]),
  );
}
