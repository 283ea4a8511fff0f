import {
  type AlignmentResult,
  alignTruck,
  type TruckAlignment,
} from "../../../studies/alignment/alignSide.ts";
import type { Model } from "../../../studies/model/model.ts";
import type { Truck } from "../../state/truck.ts";

/** rad, mm. Far below what is shown. */
const SAME = 1e-9;

/** Whether both wheels are asked for, read and set the same. */
export function isAlike({ left, right }: TruckAlignment): boolean {
  const near = (a: number | null, b: number | null) =>
    a === b || (a !== null && b !== null && Math.abs(a - b) < SAME);
  return (["camber", "caster", "toe"] as const).every(
    (key) =>
      near(left.targets[key], right.targets[key]) &&
      near(left.asBolted[key], right.asBolted[key]) &&
      near(left.aligned[key], right.aligned[key]),
  );
}

const known = new WeakMap<Model, AlignmentResult>();

/** How a truck is brought to its targets, whichever way it is shown; worked out once a truck. */
export function truckAlignment({ bolted }: Truck): AlignmentResult {
  const before = known.get(bolted);
  if (before) return before;
  const result = alignTruck(bolted);
  known.set(bolted, result);
  return result;
}
