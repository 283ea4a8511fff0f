import type { KeyPath } from "../types/keyPath.ts";
import { MAX_DEPTH, MAX_KEYS, MAX_VALUES } from "./limits.ts";

/** What makes a document too much to read: where, and how to mend it. */
export interface TooMuch {
  readonly path: KeyPath;
  readonly mend: string;
}

/**
 * Whether a document is nested deeper than `MAX_DEPTH` (which also ends a walk round a circle), has an object of more
 * than `MAX_KEYS` keys, or more than `MAX_VALUES` values: found before anything else looks at it. Null = it is not.
 */
export function tooMuch(document: unknown): TooMuch | null {
  let values = 0;
  const look = (value: unknown, depth: number, at: KeyPath): TooMuch | null => {
    if (++values > MAX_VALUES) return { path: [], mend: TOO_MANY_VALUES };
    if (typeof value !== "object" || value === null) return null;
    if (depth === MAX_DEPTH) return { path: [], mend: TOO_DEEP };
    const keys = Array.isArray(value) ? null : Object.keys(value);
    if (keys !== null && keys.length > MAX_KEYS)
      return { path: at, mend: `has ${keys.length} keys; at most ${MAX_KEYS}` };
    const inner: ArrayLike<unknown> = keys === null ? (value as unknown[]) : Object.values(value);
    for (let i = 0; i < inner.length; i++) {
      const next = inner[i];
      // Most values are plain, and need no place of their own.
      if ((typeof next !== "object" || next === null) && values < MAX_VALUES) {
        values++;
        continue;
      }
      const found = look(next, depth + 1, [...at, keys === null ? i : keys[i]!]);
      if (found !== null) return found;
    }
    return null;
  };
  return look(document, 0, []);
}

const TOO_DEEP = `objects and lists are nested more than ${MAX_DEPTH} deep; no setup needs that`;

export const TOO_MANY_VALUES = `a setup holds at most ${MAX_VALUES} numbers, texts, lists and objects; put large meshes in files beside it`;
