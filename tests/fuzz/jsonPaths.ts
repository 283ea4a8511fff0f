import type { KeyPath } from "../../src/setup/types/keyPath.ts";

/** Any JSON value. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

/** Every place of a document below its top, outer before inner. */
export function pathsIn(value: Json, at: KeyPath = []): KeyPath[] {
  if (typeof value !== "object" || value === null) return [];
  const keys = Array.isArray(value) ? value.map((_, i) => i) : Object.keys(value);
  return keys.flatMap((key) => {
    const path = [...at, key];
    return [path, ...pathsIn((value as Record<string | number, Json>)[key]!, path)];
  });
}

/** What stands at a path. */
export function valueIn(document: Json, path: KeyPath): Json | undefined {
  let value: Json | undefined = document;
  for (const key of path) value = (value as Record<string | number, Json> | undefined)?.[key];
  return value;
}

/** The document with a value at a path that is there; undefined takes the place out. The document is not changed. */
export function withValue(document: Json, path: KeyPath, value: Json | undefined): Json {
  const [key, ...rest] = path;
  if (key === undefined) return value ?? null;
  const inner = (document as Record<string | number, Json>)[key]!;
  const put = rest.length > 0 ? withValue(inner, rest, value) : value;
  if (Array.isArray(document)) {
    const list = [...document] as Json[];
    if (put === undefined) list.splice(Number(key), 1);
    else list[Number(key)] = put;
    return list;
  }
  const entries = Object.entries(document as object).flatMap(([name, held]): [string, Json][] => {
    if (name !== key) return [[name, held as Json]];
    return put === undefined ? [] : [[name, put]];
  });
  return Object.fromEntries(entries);
}
