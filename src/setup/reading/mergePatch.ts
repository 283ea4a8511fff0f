import { type KeyPath, keyText } from "../types/keyPath.ts";

/** The patched value, or the key that is refused. */
export type Patched =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly key: string; readonly mend: string };

const REFUSED_KEYS = new Set(["__proto__", "constructor", "prototype"]);

/** Why keys named `__proto__`, `constructor` and `prototype` are refused wherever they stand. */
export const REFUSED_KEY_MEND = "this name is not allowed as a key; remove it";

/**
 * JSON Merge Patch (RFC 7396): objects are merged key by key, null removes a key, anything else replaces.
 * Neither argument is changed; untouched parts are shared with the result. Refuses keys that would reach an
 * object's prototype. Nesting is bounded by the caller.
 */
export function mergePatch(target: unknown, patch: unknown): Patched {
  const refused = refusedKeys(patch)[0];
  if (refused) return { ok: false, key: keyText(refused), mend: REFUSED_KEY_MEND };
  return { ok: true, value: merge(target, patch) };
}

function merge(target: unknown, patch: unknown): unknown {
  if (!isObject(patch)) return patch;
  const merged = new Map<string, unknown>(isObject(target) ? Object.entries(target) : []);
  for (const [key, change] of Object.entries(patch)) {
    if (change === null) merged.delete(key);
    else merged.set(key, merge(merged.get(key), change));
  }
  return Object.fromEntries(merged);
}

/** Paths of every key that is refused, in the order they stand. */
export function refusedKeys(value: unknown, path: KeyPath = []): KeyPath[] {
  if (typeof value !== "object" || value === null) return [];
  if (Array.isArray(value)) {
    return value.flatMap((item, i) => (typeof item === "object" ? refusedKeys(item, [...path, i]) : []));
  }
  return Object.keys(value).flatMap((key) => {
    const at = [...path, key];
    return REFUSED_KEYS.has(key) ? [at] : refusedKeys((value as Record<string, unknown>)[key], at);
  });
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
