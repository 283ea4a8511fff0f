import { setAt } from "../reading/setAt.ts";
import { effectiveDocument, variantIndex, withoutVariants } from "./effectiveDocument.ts";
import { patchBetween } from "./patchBetween.ts";

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
