import { type KeyPath, valueAt } from "../types/keyPath.ts";
import { isSameJson } from "./isSameJson.ts";

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
