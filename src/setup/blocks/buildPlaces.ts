import { choiceField } from "../fields/fields.ts";
import { pointOnPin } from "../types/jointPlaces.ts";
import type { Point } from "../types/truckTypes.ts";
import type { KnuckleSetup } from "../types/types.ts";

/** What a place of the build may hang on besides the lower ball joint. */
const CARRIERS = ["upperBallJoint", "pin", "hubFace", "tieRodOuter"] as const;
type BuildCarrier = (typeof CARRIERS)[number];

export const onField = choiceField(
  "what it is measured from, and moves along with when the knuckle's dimensions change: upperBallJoint and tieRodOuter in the knuckle's own directions; pin (from where its axis crosses the steering axis) and hubFace (from the face's middle) with y outboard along the pin and z square to it; left out: the lower ball joint",
  [...CARRIERS],
).optional();

/** A place or a direction of the build as typed, in the knuckle frame. */
interface Carried {
  readonly place: (typed: Point) => Point;
  readonly direction: (typed: Point) => Point;
}

/** Where what hangs on a part of the knuckle is. @param knuckle mm; null = it is wrong already, and nothing moves */
export function carriedBy(on: BuildCarrier | undefined, knuckle: KnuckleSetup | null): Carried {
  const [origin, isTurned] = knuckle === null ? ([[0, 0, 0], false] as const) : startOf(on, knuckle);
  const [cos, sin] = isTurned ? [Math.cos(knuckle!.pinAngle), Math.sin(knuckle!.pinAngle)] : [1, 0];
  const direction = ([x, y, z]: Point): Point => [x, y * cos + z * sin, z * cos - y * sin];
  const place = (typed: Point): Point => {
    const [x, y, z] = direction(typed);
    return [origin[0] + x, origin[1] + y, origin[2] + z];
  };
  return { place, direction };
}

function startOf(
  on: BuildCarrier | undefined,
  knuckle: KnuckleSetup,
): readonly [origin: Point, isTurned: boolean] {
  switch (on) {
    case undefined:
      return [[0, 0, 0], false];
    case "upperBallJoint":
      return [[0, 0, knuckle.span], false];
    case "tieRodOuter":
      return [knuckle.steeringArm, false];
    case "pin":
      return [pointOnPin(knuckle, 0), true];
    case "hubFace":
      return [pointOnPin(knuckle, knuckle.hubFace), true];
  }
}
