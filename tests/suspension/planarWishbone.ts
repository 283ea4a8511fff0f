import type { Vec3 } from "../../src/geometry/vec.ts";
import type { FrontEndInput, SteeringInput } from "../../src/suspension/inputs.ts";
import { knuckleFromPoints } from "./trucks.ts";

/** A point of the front view: y, z, mm. */
export type FrontViewPoint = readonly [y: number, z: number];

/** A double wishbone drawn in the front view: every pivot line runs along X, so nothing ever moves along X. */
export interface PlanarWishbone {
  readonly lowerInner: FrontViewPoint;
  readonly lowerOuter: FrontViewPoint;
  readonly upperInner: FrontViewPoint;
  readonly upperOuter: FrontViewPoint;
  readonly wheelCenter: FrontViewPoint;
  /** Inner and outer tie rod end; default: a copy of the lower arm, so that toe cannot change. */
  readonly tieRod?: { readonly inner: FrontViewPoint; readonly outer: FrontViewPoint };
}

/** Level arms of 400 mm, parallel and alike: upright wheels on 360 mm, contact patch at (750, 0). */
export const LEVEL_ARMS: PlanarWishbone = {
  lowerInner: [300, 240],
  lowerOuter: [700, 240],
  upperInner: [300, 480],
  upperOuter: [700, 480],
  wheelCenter: [750, 360],
};

/** Unequal arms, contact patch at (790, 0): the front view of section C of the outside check table. Numbers derived, no source. */
export const UNEQUAL_ARMS: PlanarWishbone = {
  lowerInner: [250, 250],
  lowerOuter: [700, 230],
  upperInner: [330, 500],
  upperOuter: [640, 520],
  wheelCenter: [790, 360],
};

/** X of the tie rod plane; any value gives the same front view. */
export const TIE_ROD_X = -150;

const at = (x: number, [y, z]: FrontViewPoint): Vec3 => [x, y, z];
const arm = (inner: FrontViewPoint, outer: FrontViewPoint, x: number) => ({
  frontPivot: at(x + 130, inner),
  rearPivot: at(x - 90, inner),
  ballJoint: at(x, outer),
});

/** The front view as a front end: no caster, wheel upright and straight ahead, axle line at `x`. */
export function planarFrontEnd(drawn: PlanarWishbone, x = 0): FrontEndInput {
  const { inner, outer } = drawn.tieRod ?? { inner: drawn.lowerInner, outer: drawn.lowerOuter };
  const steering: SteeringInput = { type: "rack", innerEnd: at(x + TIE_ROD_X, inner), stroke: 40 };
  return {
    lowerArm: arm(drawn.lowerInner, drawn.lowerOuter, x),
    upperArm: arm(drawn.upperInner, drawn.upperOuter, x),
    steering,
    knuckle: knuckleFromPoints({
      lowerBallJoint: at(x, drawn.lowerOuter),
      upperBallJoint: at(x, drawn.upperOuter),
      tieRodOuter: at(x + TIE_ROD_X, outer),
      wheelCenter: at(x, drawn.wheelCenter),
      spinAxis: [0, 1, 0],
    }),
    wheelOffset: 0,
    loadedRadius: drawn.wheelCenter[1],
    toe: 0,
  };
}
