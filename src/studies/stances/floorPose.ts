import type { Vec3 } from "../../geometry/vec.ts";
import type { Setup } from "../../setup/types/types.ts";
import type { FrontEnd, Side } from "../../suspension/frontEnd.ts";
import type { RollCenter, WheelTravels } from "../../suspension/rollCenter.ts";

/** What the floor's studies need of a model; a `Model` has it. */
export interface StandingTruck {
  readonly setup: Setup;
  readonly frontEnd: FrontEnd;
}

/** The floor as a plane in vehicle axes, mm: every point p of it has normal · p = offset. */
export interface FloorPlane {
  /** Unit, upward. */
  readonly normal: Vec3;
  readonly offset: number;
}

/** One front wheel as it stands on the floor; vehicle axes, mm, radians. */
export interface FloorWheel {
  readonly travel: number;
  /**
   * The place of the tire that is lowest toward this floor: in the wheel plane, loaded radius from the wheel center.
   * For a flat tire (`scrubLine`) the rim flange's.
   */
  readonly contactPatch: Vec3;
  /** Lean off square to this floor, + = top leans outward. */
  readonly camber: number;
}

/** A point of the truck over the floor; vehicle axes (right side y < 0), mm. */
export interface FloorClearance {
  readonly name: string;
  readonly side: Side;
  readonly at: Vec3;
  /** Square to the floor; negative = below it. */
  readonly clearance: number;
}

/**
 * The truck on its floor. The body is held still in vehicle axes and the floor lies where the tires are. mm, radians.
 */
export interface FloorPose {
  readonly travels: WheelTravels;
  readonly steer: number;
  readonly plane: FloorPlane;
  /** Body roll over this floor, + = left side up (about +X, ISO 8855). */
  readonly roll: number;
  /** Body pitch over this floor, + = nose down (about +Y, ISO 8855). */
  readonly pitch: number;
  readonly left: FloorWheel;
  readonly right: FloorWheel;
  /** Between the contact patches, across the truck along the floor. */
  readonly track: number;
  /** Each named point of the setup's `floor` block on each side it has, left side first, in the setup's order. */
  readonly clearances: readonly FloorClearance[];
  /** Floor to fender lip; null = the setup does not say where. */
  readonly lip: Readonly<Record<Side, number>> | null;
  /** Floor to frame; null = the setup does not say where. */
  readonly frame: Readonly<Record<Side, number>> | null;
  /** Kinematic roll center in vehicle axes; null where the force lines do not cross. */
  readonly rollCenter: RollCenter | null;
}
