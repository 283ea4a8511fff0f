import { removeAt } from "../../setup/reading/setAt.ts";
import type { KeyPath } from "../../setup/types/keyPath.ts";
import { shownOf } from "./madeOf.ts";
import { isAlike, isTypedAlike } from "./sameTruck.ts";
import type { Truck } from "./truck.ts";

/**
 * Whether two trucks stand, move and touch alike but for what is typed at one place of their documents. Trucks of no document are
 * told apart by themselves alone.
 */
export function differInAtMost(path: KeyPath, a: Truck, b: Truck): boolean {
  if (a === b) return true;
  const rest = (truck: Truck) => removeAt(shownOf(truck), path);
  if (a.document === null || b.document === null || a.ask.isAligned !== b.ask.isAligned) return false;
  // A scan stands in the document by its file's name alone.
  return isTypedAlike(rest(a), rest(b)) && isAlike(scansOf(a), scansOf(b));
}

function scansOf({ ask: { setup } }: Truck) {
  return setup.truck.body.filter(({ kind }) => kind === "mesh");
}
