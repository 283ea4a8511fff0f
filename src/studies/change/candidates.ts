import { valueAt } from "../../setup/types/keyPath.ts";
import type { TruckToVary } from "../window/truckOverField.ts";
import type { WindowField } from "../window/windowField.ts";
import { changeField } from "./changeField.ts";
import { EFFORT, SPACER } from "./effort.ts";

/** A field that may be changed, and which way it can help. */
export interface Candidate {
  readonly field: WindowField;
  readonly ways: readonly (1 | -1)[];
}

/** Ways of the fields that help one way alone: less lock, less travel, a smaller tire. */
const WAYS: Readonly<Record<string, Candidate["ways"]>> = {
  "limits.steeringStop.angle": [-1],
  "truck.steering.stroke": [-1],
  "truck.steering.swing": [-1],
  "limits.bumpStop.travel": [-1],
  "travel.bump": [-1],
  "travel.droop": [1],
  "tire.sectionWidth": [-1],
  "tire.diameter": [-1],
  "knuckle.pinHeight": [-1],
  [SPACER]: [1],
};

/** Those of some fields that this truck has, in the order given: of two that say the same the one the file says. */
export function candidatesOf(truck: TruckToVary, keys: readonly string[] = EFFORT): readonly Candidate[] {
  const { document, setup, file } = truck;
  const { limits, truck: built } = setup;
  const hasOffset = valueAt(document, ["wheel", "offset"]) !== undefined;
  const left = new Set([
    hasOffset ? "wheel.backspacing" : "wheel.offset",
    built.steering.type === "rack" ? "truck.steering.swing" : "truck.steering.stroke",
    // A stop cuts the range where there is one; to move the range as well would say the same twice.
    ...(limits?.bumpStop == null ? [] : ["travel.bump"]),
    ...(limits?.steeringStop == null ? [] : ["truck.steering.stroke", "truck.steering.swing"]),
  ]);
  return keys.flatMap((key) => {
    if (left.has(key)) return [];
    const found = changeField(document, setup, key, file);
    return found.ok ? [{ field: found.value, ways: WAYS[key] ?? ([-1, 1] as const) }] : [];
  });
}
