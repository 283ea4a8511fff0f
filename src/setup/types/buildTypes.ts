import type { ThreadCallout } from "../../units/threadCallout.ts";

/** A point or direction; written out here because `types.ts` reads this file. */
type Point = readonly [x: number, y: number, z: number];

/** Joints every knuckle has, whether or not its build names more. `pinRoot` stands only with a pin. */
export const BUILT_IN_JOINTS = [
  "lowerBallJoint",
  "upperBallJoint",
  "tieRodOuter",
  "pinRoot",
  "hubFace",
] as const;

/** A material of the setup's own, by its published values, MPa. */
export interface OwnMaterial {
  readonly name: string;
  readonly yield: number;
  readonly ultimate: number;
  /** Where the values are published, as typed; null = not told. */
  readonly source: string | null;
}

/** A stretch of the pin of one diameter. `from`, `to` along the pin from the steering axis, + outboard, as `hubFace`. mm. */
export interface PinStep {
  readonly from: number;
  readonly to: number;
  readonly diameter: number;
  /** Radius where it meets the thicker step inboard of it, or the body; null = not given. */
  readonly fillet: number | null;
}

/** The pin by its steps, from its root outward: contiguous, never thicker farther out. */
export interface PinSetup {
  /** null = as the build's. */
  readonly material: string | null;
  readonly steps: readonly PinStep[];
  /** Where the wheel bearings carry, along the pin as the steps; null = not given. */
  readonly bearings: { readonly inner: number; readonly outer: number } | null;
  /** Hub face it was drawn for, mm: steps and bearings stand where they have come with the knuckle's; null = they stay. */
  readonly forHubFace: number | null;
}

/** A place of the knuckle with a name, knuckle frame, mm. */
export interface BuildJoint {
  readonly name: string;
  readonly at: Point;
}

interface MemberBase {
  readonly name: string;
  /** Names of joints. */
  readonly from: string;
  readonly to: string;
}

/** A round tube, straight from joint to joint. mm. */
export interface TubeMember extends MemberBase {
  readonly kind: "tube";
  readonly diameter: number;
  readonly wall: number;
  /** null = as the build's. */
  readonly material: string | null;
}

/** A solid round bar. mm. */
export interface BarMember extends MemberBase {
  readonly kind: "bar";
  readonly diameter: number;
  readonly material: string | null;
}

/** A stiff connection, such as a plate or a socket: carries load, has no weight of its own. */
export interface LinkMember extends MemberBase {
  readonly kind: "link";
}

export type Member = TubeMember | BarMember | LinkMember;

/** A round hole, its middle in the plate's own axes. mm. */
export interface PlateHole {
  readonly at: readonly [u: number, v: number];
  readonly diameter: number;
}

/**
 * A flat plate: bracket, gusset, steering arm. Its outline lies in its middle plane through `at`: u along `across`, v square
 * to it on the side of `up`, both of unit length, knuckle frame. mm.
 */
export interface PlateSetup {
  readonly name: string;
  readonly thickness: number;
  /** null = as the build's. */
  readonly material: string | null;
  readonly at: Point;
  readonly across: Point;
  readonly up: Point;
  /** Without holes; closed from the last point to the first. */
  readonly outline: readonly (readonly [u: number, v: number])[];
  readonly holes: readonly PlateHole[];
}

/** A fillet weld all round an end of a member. mm. */
export interface WeldSetup {
  /** Name of a tube or bar. */
  readonly member: string;
  readonly end: "from" | "to";
  readonly leg: number;
}

/** A joint whose stud or rod end is looked at. */
export type JointName = "lowerBallJoint" | "upperBallJoint" | "tieRodOuter";

/** The tapered stud of a ball joint or tie rod end, held at the taper's large end. mm. */
export interface StudSetup {
  readonly joint: JointName;
  /** Of the taper at its large end. */
  readonly diameter: number;
  /** From the ball's center to the taper's large end, along the stud. */
  readonly reach: number;
  readonly material: string | null;
}

/** A rod end by the thread of its shank. mm and radians. */
export interface RodEndSetup {
  readonly joint: JointName;
  readonly thread: ThreadCallout;
  /** From the ball's center to where the shank is held, such as its jam nut. */
  readonly reach: number;
  /** How far the shank stands off the line of its load. */
  readonly lean: number;
  readonly material: string | null;
}

/** What a knuckle is made of, in the knuckle frame (origin lower ball joint, z up the steering axis, y outboard, x forward). */
export interface BuildSetup {
  /** Name of a material: of `materials` or of the catalog. */
  readonly material: string;
  readonly materials: readonly OwnMaterial[];
  /** null = not given. */
  readonly pin: PinSetup | null;
  /** Besides the built-in ones. */
  readonly joints: readonly BuildJoint[];
  readonly members: readonly Member[];
  readonly plates: readonly PlateSetup[];
  readonly welds: readonly WeldSetup[];
  readonly studs: readonly StudSetup[];
  readonly rodEnds: readonly RodEndSetup[];
  /** Joint where the caliper holds the knuckle; null = not given. */
  readonly caliperAt: string | null;
}
