import { valueAt } from "../../setup/types/keyPath.ts";
import { withReadings } from "../../studies/worksheet/withReadings.ts";

/** What the truck's points and knuckle are worked out of, besides what is typed into them. */
const OF = ["readings", "knuckle", "wheel", "tire"] as const;

/** A document after a change, with what follows from its readings where one of them changed. */
export function followReadings(before: unknown, after: unknown): unknown {
  const isChanged = OF.some((key) => valueAt(before, [key]) !== valueAt(after, [key]));
  return isChanged ? withReadings(after) : after;
}
