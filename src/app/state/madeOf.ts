import { effectiveDocument, withoutVariants } from "../../setup/editing/effectiveDocument.ts";
import { removeAt } from "../../setup/reading/setAt.ts";
import type { Truck } from "./truck.ts";

/**
 * What a truck was made of, as typed: its variant applied, without variants; the same object at every call. A truck and the document
 * asked about it are one pair: what is on the board by now may be another. null = it was made of no document.
 */
export const shownOf = ofTruck(({ document, setup: { variant } }) =>
  document !== null && variant === null ? withoutVariants(document) : effectiveDocument(document, variant),
);

/** What is asked about a truck is told by its text: a scan is long, and what is noted beside the truck asks nothing else. */
const NOT_ASKED = [["truck", "body"], ["order"], ["jig"], ["asBuilt"]] as const;

/** The same without the body, which the worker has already, and without what changes no answer. */
export const askedOf = ofTruck((truck) => NOT_ASKED.reduce<unknown>(removeAt, shownOf(truck)));

/** Works something out once for each truck. */
function ofTruck<R>(compute: (truck: Truck) => R): (truck: Truck) => R {
  const known = new WeakMap<Truck, { readonly it: R }>();
  return (truck) => {
    const one = known.get(truck) ?? { it: compute(truck) };
    known.set(truck, one);
    return one.it;
  };
}
