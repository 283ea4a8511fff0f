import type { BoltPattern } from "../../units/boltPattern.ts";
import type { ThreadCallout } from "../../units/threadCallout.ts";

/** A point; written out here because `types.ts` reads this file. */
type Point = readonly [x: number, y: number, z: number];

/** Which sides are made: one, or the left and its mirror image. */
export type OrderedSide = "left" | "right" | "pair";

/** The knuckle an order starts from, in its own frame; mm and radians, null = not given. */
export interface BaseKnuckle {
  readonly name: string | null;
  readonly span: number | null;
  readonly pinHeight: number | null;
  readonly pinAngle: number | null;
  readonly pinLead: number | null;
  readonly hubFace: number | null;
  readonly steeringArm: Point | null;
}

/** A ball joint: mm, tapers as included angles in radians, null = not given. */
export interface OrderedJoint {
  /** Taper of its stud. */
  readonly taper: number | null;
  /** From the large end of the taper to the end of the thread. */
  readonly studLength: number | null;
  readonly housingDiameter: number | null;
  readonly housingHeight: number | null;
}

/** A brake: mm, null = not given. Its points are in seat axes: origin at the middle of the rotor's seat on the hub, x forward, y outboard along the pin, z up across it. */
export interface OrderedBrake {
  readonly rotorDiameter: number | null;
  readonly rotorThickness: number | null;
  /** From the hat's seat inboard to the rotor's outboard face. */
  readonly hatOffset: number | null;
  /** Bore of the hat that centers the rotor on the hub. */
  readonly hatRegister: number | null;
  readonly boltPattern: BoltPattern | null;
  readonly caliper: { readonly min: Point; readonly max: Point } | null;
  readonly bracketHoles: readonly Point[] | null;
  readonly bracketThread: ThreadCallout | null;
  /** Least rim diameter it is made for. */
  readonly leastRim: number | null;
}

/** A bearing on the pin, mm. */
export interface OrderedBearing {
  readonly number: string | null;
  readonly bore: number | null;
  readonly width: number | null;
}

/** Hub and bearings, which fix the pin's steps; mm, distances inboard of the hub face unless said, null = not given. */
export interface OrderedHub {
  readonly boltPattern: BoltPattern | null;
  /** Diameter that centers the wheel. */
  readonly pilot: number | null;
  /** Diameter that centers the rotor. */
  readonly register: number | null;
  /** From the hub face inboard to the face that the rotor's hat sits on. */
  readonly rotorSeat: number | null;
  /** From the hub face inboard to the shoulder that the inner bearing sits against. */
  readonly shoulder: number | null;
  /** Diameter of the pin inboard of the shoulder, where the seal runs. */
  readonly sealDiameter: number | null;
  readonly innerBearing: OrderedBearing;
  readonly outerBearing: OrderedBearing;
  /** From the hub face inboard to the inboard end of the outer bearing. */
  readonly outerSeat: number | null;
  readonly nutThread: ThreadCallout | null;
  /** From the hub face OUTBOARD to the end of the pin; less than 0 = inboard of the face. */
  readonly pinEnd: number | null;
}

/** The wheel the knuckle is made for; mm, null = not given. */
export interface OrderedWheel {
  readonly rimDiameter: number | null;
  readonly rimWidth: number | null;
  readonly backspacing: number | null;
  readonly offset: number | null;
  readonly barrelDiameter: number | null;
  readonly boltPattern: BoltPattern | null;
  /** Diameter of its center bore. */
  readonly centerBore: number | null;
}

/** Steering arm and the rod end screwed into it; mm, knuckle frame, null = not given. */
export interface OrderedArm {
  /** Center of the outer tie rod end. */
  readonly tieRodEnd: Point | null;
  readonly thread: ThreadCallout | null;
  readonly rodEndThread: ThreadCallout | null;
  readonly engagement: number | null;
  readonly jamNut: number | null;
  readonly shank: number | null;
}

/** A part named out of a catalog, with numbers of its own, which go before the catalog's. */
export type Chosen<Part> = Part & { readonly item: string | null };

/** An order of a drop knuckle as read; mm and radians, null = not given. */
export interface OrderSetup {
  readonly number: string | null;
  readonly customer: string | null;
  /** The height it is made for: one of the setup's stances. */
  readonly stance: string | null;
  readonly base: BaseKnuckle;
  /** How far the pin is carried higher than on the base knuckle, along the steering axis. */
  readonly drop: number | null;
  readonly hubFace: number | null;
  /** null = as the base knuckle's. */
  readonly pinAngle: number | null;
  readonly pinLead: number | null;
  /** `seat` is the taper reamed into the knuckle; null = as the stud's. */
  readonly upperBallJoint: Chosen<OrderedJoint> & { readonly seat: number | null };
  readonly lowerBallJoint: Chosen<OrderedJoint> & { readonly seat: number | null };
  readonly brake: Chosen<OrderedBrake>;
  readonly hub: Chosen<OrderedHub>;
  readonly wheel: OrderedWheel;
  readonly steeringArm: OrderedArm;
  readonly finish: string | null;
  readonly notes: string | null;
  readonly side: OrderedSide;
  readonly quantity: number;
}
