/** A point; written out here because `types.ts` reads this file. */
type Point = readonly [x: number, y: number, z: number];

/** Where a case's force meets the wheel: the contact patch on the ground, or the wheel center. */
export type LoadPlace = "contactPatch" | "wheelCenter";

/** `braked`: the wheel is held to the knuckle through the caliper; `rolls`: nothing holds its own turn. */
export type WheelState = "rolls" | "braked";

/** What presses on one wheel, for the left one; mirrored for the right. */
export interface LoadCase {
  readonly name: string;
  /** `multiples`: of the corner's weight, plain numbers; `force`: N. + = forward, outboard, up on the wheel. */
  readonly kind: "multiples" | "force";
  readonly forward: number;
  readonly outboard: number;
  readonly up: number;
  readonly at: LoadPlace;
  readonly wheel: WheelState;
  /** The only travel, mm, and steer it happens at; null = over all of it. */
  readonly travel: number | null;
  readonly steer: number | null;
}

export type ArmName = "lowerArm" | "upperArm";

/** What pushes an arm away from the body along the line between its mounts, left side, vehicle axes as measured, mm. */
export interface PusherSetup {
  readonly on: ArmName;
  readonly bodyMount: Point;
  readonly armMount: Point;
}

/** The bump stop as something that carries: from a travel on it takes what the spring does not. */
export interface BumpStopSetup extends PusherSetup {
  /** mm of travel at which it is met. */
  readonly from: number;
  /** What the spring carries while the stop is met, N; null = what carries the corner standing there. */
  readonly springLoad: number | null;
}

/** What the front end has to carry. */
export interface LoadsSetup {
  readonly cases: readonly LoadCase[];
  /** null = the air spring's mounts, if there is one. */
  readonly spring: PusherSetup | null;
  /** null = the spring takes it all. */
  readonly bumpStop: BumpStopSetup | null;
}
