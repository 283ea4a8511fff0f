import { type KeyPath, valueAt } from "../../setup/types/keyPath.ts";
import type { Result, Setup } from "../../setup/types/types.ts";
import type { TruckToVary } from "../window/truckOverField.ts";
import { type WindowField, windowField } from "../window/windowField.ts";

/** Names a trimmed body part among the fields. */
export const TRIM = "trim";

/** Names a wheel spacer among the fields. */
export const SPACER = "spacer";

/**
 * What may be changed, least effort first: a bump stop is set, a spacer or another tire or wheel is put on, steering is taken away, a
 * panel is cut, a knuckle is made anew. A steering stop is set in minutes, but the driver pays for it at every corner: so it comes
 * after what is bolted on once. Common practice, no source; whoever asks may give another order.
 */
export const EFFORT: readonly string[] = [
  "limits.bumpStop.travel",
  "travel.bump",
  "travel.droop",
  SPACER,
  "wheel.backspacing",
  "wheel.offset",
  "tire.sectionWidth",
  "tire.diameter",
  "limits.steeringStop.angle",
  "truck.steering.stroke",
  "truck.steering.swing",
  TRIM,
  "knuckle.hubFace",
  "knuckle.pinHeight",
  "knuckle.pinAngle",
];

/** mm. Thicker spacers are no common practice: two inches. */
const THICKEST = 50.8;

/** mm. What counts as none: a field's ends may not be allowed themselves. */
const NONE = 1e-6;

/**
 * The field that may be changed at a key: as a window has it, or a wheel spacer, whose thickness stands the wheel farther out by
 * as much, whichever way the file tells where its face is.
 */
export function changeField(document: unknown, setup: Setup, key: string, file: string): Result<WindowField> {
  if (key !== SPACER) return windowField(document, setup, key, file);
  const hasOffset = valueAt(document, ["wheel", "offset"]) !== undefined;
  const found = windowField(document, setup, hasOffset ? "wheel.offset" : "wheel.backspacing", file);
  if (!found.ok) return found;
  const { path, units, now, least, put } = found.value;
  return {
    ok: true,
    value: {
      path: path satisfies KeyPath,
      key,
      kind: "length",
      units,
      now: 0,
      least: -NONE,
      most: Math.min(THICKEST, now - least),
      put: (typed, thick) => put(typed, now - thick),
    },
  };
}

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
