import { mergePatch } from "../reading/mergePatch.ts";
import { valueAt } from "../types/keyPath.ts";

/**
 * A document with one of its variants applied and without its variants; null = there is no such variant, or its patch is
 * none. With no variant (null) the very document.
 */
export function effectiveDocument(document: unknown, variant: string | null): unknown {
  if (variant === null) return document;
  const patch = valueAt(document, ["variants", variantIndex(document, variant), "patch"]);
  if (typeof patch !== "object" || patch === null || Array.isArray(patch)) return null;
  const patched = mergePatch(withoutVariants(document), patch);
  return patched.ok ? patched.value : null;
}

/** Where a variant stands in the document's list; −1 = nowhere. */
export function variantIndex(document: unknown, variant: string): number {
  const list = valueAt(document, ["variants"]);
  return Array.isArray(list) ? list.findIndex((entry) => valueAt(entry, ["name"]) === variant) : -1;
}

/** What a variant's patch is applied to. */
export function withoutVariants(document: unknown): Readonly<Record<string, unknown>> {
  const { variants: _, ...plain } = (document ?? {}) as Record<string, unknown>;
  return plain;
}
