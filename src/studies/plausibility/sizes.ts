import type { KeyPath } from "../../setup/types/keyPath.ts";
import type { Setup } from "../../setup/types/types.ts";
import { degrees, inches, ofPlace, outOf } from "./ranges.ts";
import type { Unusual, UsualRange } from "./unusual.ts";

/** What a hub face measures, from the steering axis along the pin. Common practice, no source. */
const HUB_FACE_RANGE = inches(3, 10);

/**
 * Sizes that stand on their own, and what pickups and vans have there. Common practice, no source; wide enough for drop
 * knuckles, narrowed clips and one-ton trucks.
 */
const SIZES: readonly (readonly [KeyPath, UsualRange])[] = [
  [["knuckle", "span"], inches(6, 20)],
  [["knuckle", "pinHeight"], inches(-1, 13)],
  [["knuckle", "pinAngle"], degrees(0, 20)],
  [["knuckle", "pinLead"], inches(-1.5, 1.5)],
  [["truck", "wheelbase"], inches(70, 220)],
  [["truck", "steering", "stroke"], inches(0.75, 4.5)],
  [["truck", "steering", "swing"], degrees(10, 55)],
  [["wheel", "rimWidth"], inches(4, 16)],
  [["alignment", "toe"], degrees(-3, 3)],
  [["travel", "bump"], inches(0, 12)],
  [["travel", "droop"], inches(-12, 0)],
  [["allowance"], inches(0, 3)],
  [["hardware", "rotor", "diameter"], inches(8, 18)],
  [["hardware", "rotor", "thickness"], inches(0.25, 2)],
];

/** Sizes out of the usual, one by one. */
export function unusualSizes(setup: Setup): readonly Unusual[] {
  return SIZES.flatMap(([path, range]) => ofPlace("size", path, range, setup));
}

/** The hub face, out of the usual. */
export function unusualHubFace(setup: Setup): readonly Unusual[] {
  return outOf("hubFace", ["knuckle", "hubFace"], setup.knuckle.hubFace, HUB_FACE_RANGE, setup);
}
