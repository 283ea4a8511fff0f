import { isSameJson } from "./isSameJson.ts";

type JsonObject = Readonly<Record<string, unknown>>;

/**
 * The smallest JSON Merge Patch (RFC 7396) that turns one object into another: only keys that differ, lists whole,
 * null for keys to take out. Parts that the two share cost nothing. The target must hold no null (a patch cannot set
 * one, and a setup has none).
 */
export function patchBetween(from: JsonObject, to: JsonObject): JsonObject {
  const patch: Record<string, unknown> = {};
  for (const key of Object.keys(from)) if (!Object.hasOwn(to, key)) patch[key] = null;
  for (const [key, target] of Object.entries(to)) {
    const source = Object.hasOwn(from, key) ? from[key] : undefined;
    if (source === target || isSameJson(source, target)) continue;
    // Both objects: go inside. Otherwise the target replaces what was there, whole.
    patch[key] = isObject(source) && isObject(target) ? patchBetween(source, target) : target;
  }
  return patch;
}

function isObject(value: unknown): value is JsonObject {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
