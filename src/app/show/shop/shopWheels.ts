import { useMemo } from "react";
import { effectiveDocument, withoutVariants } from "../../../setup/editing/effectiveDocument.ts";

import { variantNames } from "../../../setup/editing/resolveShown.ts";
import { isSameJson, writtenValues } from "../../../setup/editing/writtenValues.ts";
import { removeAt } from "../../../setup/reading/setAt.ts";
import type { Result } from "../../../setup/types/types.ts";
import type { AxisSubject } from "../../../studies/chart/readAxis.ts";
import { type Fit, readFits, withFit } from "../../../studies/chart/readFits.ts";
import { truckName } from "../../../studies/wording/truckName.ts";
import { type Truck, trucks } from "../../state/truck.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import type { WorkbenchStore } from "../../state/workbenchStore.ts";
import { useSheetFields } from "./useSheetFields.ts";

/** Blocks that a line of the list tells. */
const TOLD = ["tire", "wheel"] as const;

export interface ShopWheels {
  /** The list as the shop wrote it; "" = it keeps none. */
  readonly text: string;
  /** What it is read for; null without a truck. */
  readonly subject: AxisSubject | null;
  /** The list read for that truck; null where there is none. */
  readonly read: Result<readonly Fit[]> | null;
}

/** The wheels and tires that the shop keeps, read for a truck. */
export function useShopWheels(truck: Truck | null): ShopWheels {
  const { wheels: text } = useSheetFields();
  const good = useWorkbench((s) => s.good);
  const file = useWorkbench((s) => s.file);
  const subject = useMemo(
    () => truck && good && { document: good.document, setup: truck.setup, file },
    [truck, good, file],
  );
  const read = useMemo(() => (subject && text !== "" ? readFits(text, subject) : null), [subject, text]);
  return { text, subject, read };
}

/** What a truck with a wheel of the list on it is called. @param base the truck: a variant, null = the setup as it stands */
export function fitName(base: string | null, { name }: Fit): string {
  return `${truckName(base)}, ${name}`;
}

/** The truck that a variant is with another wheel of the list on it, by its name; of any other the very same. */
export function withoutFit(
  variant: string | null,
  fits: readonly Fit[],
  names: readonly string[],
): string | null {
  for (const { name } of fits) {
    if (variant === name) return null;
    const base = variant?.endsWith(`, ${name}`) ? variant.slice(0, -name.length - 2) : null;
    if (base !== null && names.includes(base)) return base;
    if (base === truckName(null)) return null;
  }
  return variant;
}

/** A truck that the list is tried on. */
export interface TriedOn {
  /** On which of the two compared a wheel is put. */
  readonly letter: "A" | "B";
  /** A variant without any wheel of the list, null = the setup as it stands. */
  readonly base: string | null;
  /** What stands there now. */
  readonly chosen: string | null;
}

/**
 * What the list is tried on: both trucks compared, each without a wheel of the list; or one, where that is the same truck.
 * @param letter which of the two that one becomes
 */
export function trucksToTry(
  chosen: readonly [string | null, string | null],
  letter: "A" | "B",
  fits: readonly Fit[],
  names: readonly string[],
): readonly TriedOn[] {
  const both = (["A", "B"] as const).map(
    (one, i): TriedOn => ({
      letter: one,
      base: withoutFit(chosen[i]!, fits, names),
      chosen: chosen[i]!,
    }),
  );
  return both[0]!.base === both[1]!.base ? both.filter((one) => one.letter === letter) : both;
}

/**
 * Puts a wheel and tire of the list on a truck, as a variant of its own and one step to undo; where there is that variant already,
 * it is that. The variant on the board stays.
 * @param base the truck: a variant, null = the setup as it stands
 * @returns the variant's name; null = the truck cannot be put together
 */
export function putFitOn(store: WorkbenchStore, base: string | null, fit: Fit): string | null {
  const { good, file, meshes, variant, ...actions } = store.getState();
  if (good === null) return null;
  const made = trucks.make(good.document, file, base, meshes);
  if (!made.ok) return null;
  const document = base === null ? withoutVariants(good.document) : effectiveDocument(good.document, base);
  const fitted = withFit(document, fit, { file, setup: made.value.setup });
  const name = fitName(base, fit);
  const there = variantNames(good.document).includes(name) ? effectiveDocument(good.document, name) : null;
  // Which numbers are still an example's follows each edit by itself.
  const numbers = (of: unknown) => removeAt(of, ["fromExample"]);
  if (there !== null && isSameJson(numbers(there), numbers(fitted))) return name;
  actions.beginGesture();
  actions.chooseVariant(base);
  const put = actions.duplicateAsVariant(name, writtenValues(document, fitted, TOLD));
  actions.endGesture();
  actions.chooseVariant(variant);
  return put;
}
