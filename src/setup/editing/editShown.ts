import { setAt } from "../reading/setAt.ts";
import { effectiveDocument, variantIndex, withoutVariants } from "./effectiveDocument.ts";
import { isSameJson } from "./writtenValues.ts";

/**
 * A copy of a document in which a change was made: to the document itself (`variant` null), or to what a variant makes of
 * it, which is then written to that variant's patch as the least patch that says it. The same document when nothing
 * changed.
 * @param change gets the document with the variant applied, gives a changed copy
 * @throws RangeError when there is no such variant
 */
export function editShown(
  document: unknown,
  variant: string | null,
  change: (shown: unknown) => unknown,
): unknown {
  if (variant === null) return change(document);
  const shown = effectiveDocument(document, variant);
  if (shown === null) throw new RangeError(`editShown: there is no variant ${JSON.stringify(variant)}`);
  const changed = change(shown);
  if (changed === shown) return document;
  const patch = patchBetween(withoutVariants(document), changed as Readonly<Record<string, unknown>>);
  return setAt(document, ["variants", variantIndex(document, variant), "patch"], patch);
}

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
