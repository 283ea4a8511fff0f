/** A point or direction; written out here because `types.ts` reads this file. */
type Point = readonly [x: number, y: number, z: number];

/** How far a ball joint may lean, radians. Directions null = the default, see `definitions.md`. */
export interface BallJointLimit {
  /** Half angle of the cone the stud may lean in, off the housing's axis. */
  readonly cone: number;
  /** Half angles seen along and across the arm's pivot line; null = not checked apart from the cone. */
  readonly inOut: number | null;
  readonly foreAft: number | null;
  /** Stud in the knuckle frame, unit length; null = along the steering axis. */
  readonly stud: Point | null;
  /** Housing's axis, vehicle axes, left side, the arm as measured, unit length; null = centered at travel 0, straight ahead. */
  readonly housing: Point | null;
}

/** How far a tie rod end may lean, radians. */
export interface RodEndLimit {
  readonly misalignment: number;
  /** Outer: stud in the knuckle frame; inner: vehicle axes, left side, straight ahead. Unit length; null = the default. */
  readonly stud: Point | null;
}

/** A shock by its mounts, mm: center to center, left side, vehicle axes as measured. */
export interface ShockLimit {
  readonly bodyMount: Point;
  /** On the lower arm: vehicle axes as measured; on the knuckle: the knuckle frame. */
  readonly lowerMount: Point;
  readonly on: ShockMount;
  readonly compressed: number;
  readonly extended: number;
  /** mm, at its widest; null = not measured as a moving part. */
  readonly diameter: number | null;
}

export type ShockMount = "lowerArm" | "knuckle";

/** What the truck's joints, stops and shocks allow; null = not checked. */
export interface LimitsSetup {
  readonly upperBallJoint: BallJointLimit | null;
  readonly lowerBallJoint: BallJointLimit | null;
  readonly outerTieRodEnd: RodEndLimit | null;
  readonly innerTieRodEnd: RodEndLimit | null;
  /** Travel, mm, at which the bump stop is met; at which the droop strap is tight. */
  readonly bumpStop: number | null;
  readonly droopStrap: number | null;
  readonly shock: ShockLimit | null;
  /** Steer angle of a wheel, either way, at which its stop is met, radians. */
  readonly steeringStop: number | null;
  /** mm each way of a rack, or radians each way of a pitman arm: whichever the truck has. */
  readonly steeringStroke: number | null;
}
