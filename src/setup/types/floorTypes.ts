/** A point; written out here because `types.ts` reads this file. */
type Point = readonly [x: number, y: number, z: number];

/** What the body does over its two front wheels, to be checked. Radians and mm. */
export interface RollSetup {
  /** Body roll each way. */
  readonly most: number;
  /** How far one wheel alone is lifted above the stance; null = not checked. */
  readonly curb: number | null;
}

/**
 * `follows`: the rear goes up and down as the front does, so the floor stays level lengthwise. `stays`: the rear keeps
 * the height it was measured at, so the truck pitches about the rear axle's contact patches.
 */
export type RearMotion = "follows" | "stays";

/** A point of the truck that may drag; vehicle axes as measured, mm, left side. */
export interface FloorPointSetup {
  readonly name: string;
  readonly at: Point;
  readonly side: "both" | "left" | "right";
}

/** Where the truck is measured to the floor; vehicle axes as measured, mm, left side. null = not given. */
export interface FloorSetup {
  readonly rear: RearMotion;
  /** Where a tape reads floor to fender lip. */
  readonly lip: Point | null;
  /** Where a tape reads floor to frame. */
  readonly frame: Point | null;
  /** What may drag. */
  readonly points: readonly FloorPointSetup[];
}

/** What a shop can read a stance by. Lengths mm, `lowerArmAngle` radians; see `floor.md` for how each is measured. */
export type StanceMeasure = "travel" | "lowerArmAngle" | "airSpringHeight" | "lipHeight" | "frameHeight";

/** A pose with a name, each wheel at its own travel: mm, + = bump; steer −1 … +1, + = left. */
export interface PoseSetup {
  readonly name: string;
  readonly travels: { readonly left: number; readonly right: number };
  readonly steer: number;
}

/** A stance typed by another measure than travel: which travel that is only the assembled truck knows. */
export interface MeasuredStance {
  readonly name: string;
  /** Its place in the file's list of stances. */
  readonly index: number;
  readonly measure: Exclude<StanceMeasure, "travel">;
  /** mm or radians. */
  readonly value: number;
  /** As typed, for issues. */
  readonly typed: string | number;
}
