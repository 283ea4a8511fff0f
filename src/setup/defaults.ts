import { mmFromInches } from "../units/lengthUnits.ts";
import type { PartSide, Point } from "./types.ts";

/** Every value a setup may leave out, in one place, with the reason it is a fair guess. mm and radians. */

/** A setup without a name still has to be called something in a list. */
export const DEFAULT_NAME = "Untitled setup";

/** Only the turning circle needs the wheelbase, so it is not asked for: null. */
export const DEFAULT_WHEELBASE = null;

/** Most knuckles carry the pin in the plane of the ball joints (common practice, no source). */
export const DEFAULT_PIN_LEAD = 0;

/** A setup is usually measured with the toe set; toe-in of a fraction of a degree moves the tire by less than a tape reads. */
export const DEFAULT_TOE = 0;

/** A shop keeps about a quarter inch between tire and sheet metal (common practice, no source). */
export const DEFAULT_ALLOWANCE = mmFromInches(0.25);

/** Fenders, rails and brackets come in pairs. */
export const DEFAULT_SIDE: PartSide = "both";

/** Pitman and idler shafts stand about upright (common practice, no source). */
export const DEFAULT_TURNING_AXIS: Point = [0, 0, 1];

/**
 * The barrel is where the rim is hollow inside; a drop-center rim is about 5/8 in under its bead seat all
 * round the widest part of the brake side (common practice, no source).
 */
export function defaultBarrelDiameter(rimDiameter: number): number {
  return rimDiameter - mmFromInches(1.25);
}

/** A steering linkage is symmetric straight ahead: the right inner end mirrors the left. */
export function defaultInnerEndRight(innerEnd: Point): Point {
  return [innerEnd[0], -innerEnd[1], innerEnd[2]];
}
