import { effectiveDocument, withoutVariants } from "../../setup/editing/effectiveDocument.ts";
import { variantNames } from "../../setup/editing/resolveShown.ts";
import type { Setup } from "../../setup/types/types.ts";
import { windowField } from "./windowField.ts";
import type { FieldWindow } from "./windowTypes.ts";

/** Where a variant stands on a window; null name = the setup as it stands. mm or radians. */
export interface VariantTick {
  readonly name: string | null;
  readonly value: number;
}

/** What the setup and each of its variants give a field, in order; those that do not give it are left out. @param document whole */
export function variantTicks(
  document: unknown,
  setup: Setup,
  key: string,
  file: string,
): readonly VariantTick[] {
  return [null, ...variantNames(document)].flatMap((name): VariantTick[] => {
    const shown = name === null ? withoutVariants(document) : effectiveDocument(document, name);
    if (shown === null) return [];
    const found = windowField(shown, setup, key, file);
    return found.ok ? [{ name, value: found.value.now }] : [];
  });
}

/** Whether a value fits, all else as it is in the window's truck. */
export function isInside({ fits }: Pick<FieldWindow, "fits">, value: number): boolean {
  return fits.some(({ from, to }) => value >= from && value <= to);
}
