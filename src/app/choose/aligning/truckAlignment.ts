import { type AlignmentResult, alignTruck } from "../../../studies/alignment/alignSide.ts";
import type { Model } from "../../../studies/model/model.ts";
import type { Truck } from "../../state/truck.ts";

const known = new WeakMap<Model, AlignmentResult>();

/** How a truck is brought to its targets, whichever way it is shown; worked out once a truck. */
export function truckAlignment({ bolted }: Truck): AlignmentResult {
  const before = known.get(bolted);
  if (before) return before;
  const result = alignTruck(bolted);
  known.set(bolted, result);
  return result;
}
