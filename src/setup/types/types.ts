import type { ThreadCallout } from "../../units/threadCallout.ts";
import type { AirSpringSetup, MassesSetup } from "./airTypes.ts";
import type { AsBuiltSetup, JigSetup } from "./asBuiltTypes.ts";
import type { BuildSetup } from "./buildTypes.ts";
import type { FloorSetup, MeasuredStance, PoseSetup, RollSetup } from "./floorTypes.ts";
import type { KeyPath } from "./keyPath.ts";
import type { LimitsSetup } from "./limitsTypes.ts";
import type { LoadsSetup } from "./loadsTypes.ts";
import type { OrderSetup } from "./orderTypes.ts";
import type { Reading } from "./readingTypes.ts";
import type { ArmSetup, BodyPart, Point, SteeringSetup } from "./truckTypes.ts";
import type { UnusualCheck } from "./unusualChecks.ts";
import type { NumberWithin, OddsSetup } from "./withinTypes.ts";

/** The unit of bare lengths in a setup file. */
export type LengthUnit = "in" | "mm";

/** The knuckle in its own frame (see `public/docs/definitions.md`): mm, `pinAngle` in radians. */
export interface KnuckleSetup {
  readonly span: number;
  readonly pinHeight: number;
  readonly pinLead: number;
  readonly pinAngle: number;
  readonly hubFace: number;
  readonly steeringArm: Point;
}

/** `offset` + = mounting face outboard of the wheel's center plane. */
export interface WheelSetup {
  readonly rimDiameter: number;
  readonly rimWidth: number;
  readonly offset: number;
  readonly barrelDiameter: number;
  /** Inner surface of the wheel's center, from the hub outward: x from the mounting face, + outboard; r. null = not given. */
  readonly center: readonly ProfilePoint[] | null;
}

/** One point of a tire profile: x from the center plane, + outboard; r from the axis. */
export type ProfilePoint = readonly [x: number, r: number];

interface TireBase {
  /** Wheel center to contact patch, mm; null = take the default from the free radius. */
  readonly loadedRadius: number | null;
}

/** A tire from a size in standard notation, as typed. */
export interface SizedTire extends TireBase {
  readonly kind: "size";
  readonly size: string;
}

/** A tire from its measured main dimensions; `treadWidth` null = default. */
export interface DimensionedTire extends TireBase {
  readonly kind: "dimensions";
  readonly diameter: number;
  readonly sectionWidth: number;
  readonly treadWidth: number | null;
}

/** A tire from a measured profile, inboard bead to outboard bead. */
export interface ProfiledTire extends TireBase {
  readonly kind: "profile";
  readonly profile: readonly ProfilePoint[];
}

export type TireSetup = SizedTire | DimensionedTire | ProfiledTire;

/** A named height: `travel` + = bump. */
export interface StanceSetup {
  readonly name: string;
  readonly travel: number;
}

/** A round thing of the front end by its radius. */
export interface RadiusSetup {
  readonly radius: number;
}

/** A brake disk square to the pin; `inboard` = its outboard face inboard of the hub face, along the pin. */
export interface RotorSetup {
  readonly diameter: number;
  readonly thickness: number;
  readonly inboard: number;
}

/** A box that rides on the knuckle, aligned with the axes of the frame it is given in (`CaliperFrame`). */
export interface CaliperSetup {
  readonly frame: CaliperFrame;
  readonly min: Point;
  readonly max: Point;
}

/**
 * `knuckle`: the knuckle frame. `hub`: origin at the middle of the hub face, x forward as the knuckle's,
 * y outboard along the pin, z up across it.
 */
export type CaliperFrame = "knuckle" | "hub";

/** What moves with the front end; `rotor` and `caliper` null = not measured. */
export interface HardwareSetup {
  readonly upperArm: RadiusSetup;
  readonly lowerArm: RadiusSetup;
  readonly upperBallJoint: RadiusSetup;
  readonly lowerBallJoint: RadiusSetup;
  readonly steeringArm: RadiusSetup;
  readonly tieRod: RadiusSetup;
  readonly tieRodEnd: RadiusSetup;
  readonly knuckle: RadiusSetup;
  readonly rotor: RotorSetup | null;
  readonly caliper: CaliperSetup | null;
}

/** What one wheel is to be aligned to, radians; null = not asked for. */
export interface WheelTargets {
  readonly camber: number | null;
  readonly caster: number | null;
  readonly toe: number;
}

/** What an alignment is to end at, steering straight ahead. */
export interface AlignmentTargets {
  /** One of the setup's stances; null = travel 0. */
  readonly stance: string | null;
  readonly left: WheelTargets;
  readonly right: WheelTargets;
}

/** How a truck stands that was aligned before it was put together; no part of a setup as read. */
export interface AlignedStanding {
  /** Both wheels meet their targets but for what whole steps leave over; false = as near as the adjusters go. */
  readonly reached: boolean;
  /** Arms of the right side, in its left-hand frame, where it is set otherwise than the left one; null = alike. */
  readonly rightArms: { readonly upperArm: ArmSetup; readonly lowerArm: ArmSetup } | null;
}

/** Shim stacks at the upper arm's pivots: a shim put in moves its pivot along `direction` (unit, left side). mm. */
export interface ShimsSetup {
  readonly kind: "shims";
  readonly direction: Point;
  /** Stacks as bolted on. */
  readonly front: number;
  readonly rear: number;
  readonly least: number;
  readonly most: number;
  readonly step: number;
}

/** Eccentrics at an arm's pivots: each stands −throw … +throw from its middle along `direction` (unit, left side). mm. */
export interface EccentricSetup {
  readonly kind: "eccentric";
  readonly arm: "upper" | "lower";
  readonly direction: Point;
  readonly throw: number;
  /** As bolted on. */
  readonly front: number;
  readonly rear: number;
}

/** An upper arm whose legs, pivot to ball joint, can be set shorter or longer than measured. mm. */
export interface AdjustableArmSetup {
  readonly kind: "adjustableUpperArm";
  readonly legs: "each" | "together";
  readonly shorter: number;
  readonly longer: number;
  readonly step: number;
}

export type AdjustersSetup = ShimsSetup | EccentricSetup | AdjustableArmSetup;

/** What of a setup is still an example's. */
export interface FromExample {
  /** Name of the example. */
  readonly of: string;
  /** Fields that hold a number of it; a point or a list of points is one. */
  readonly fields: readonly KeyPath[];
  /** Nobody has made any number the truck's own yet. */
  readonly isAsItCame: boolean;
  /** Places that somebody said are the truck's own: typed, not worked out of readings. */
  readonly mine: readonly KeyPath[];
  /** The same without the variant: what a variant tries nobody measured. */
  readonly mineInAll: readonly KeyPath[];
}

/** An unusual value that somebody said is so: of one check, at one key, for this very value. */
export interface Confirmed {
  readonly check: UnusualCheck;
  /** The key, as `keyText` writes it. */
  readonly at: string;
  readonly kind: "length" | "angle" | "number";
  /** mm, radians or a plain number. */
  readonly value: number;
}

/**
 * A whole setup with one variant applied (or none: `variant` null), as the rest of the program sees it: plain data, millimeters
 * and radians, left side, vehicle axes (X forward, Y left, Z up; origin on the floor, center plane, under the front axle
 * line). Reading (`readSetup`) makes one of these from what a person wrote.
 */
export interface Setup {
  readonly name: string;
  readonly units: LengthUnit;
  readonly variant: string | null;
  readonly variantNames: readonly string[];
  readonly truck: {
    /** null = not given; the turning circle needs it, and a floor whose rear stays. */
    readonly wheelbase: number | null;
    readonly upperArm: ArmSetup;
    readonly lowerArm: ArmSetup;
    readonly steering: SteeringSetup;
    readonly body: readonly BodyPart[];
  };
  readonly knuckle: KnuckleSetup;
  /** What the knuckle is made of; null = not told. */
  readonly build: BuildSetup | null;
  readonly wheel: WheelSetup;
  readonly tire: TireSetup;
  /** null = moving parts are not measured. */
  readonly hardware: HardwareSetup | null;
  readonly alignment: {
    /** Static toe per wheel as bolted on, radians, + = toe-in. */
    readonly toe: number;
    /** null = none given. */
    readonly targets: AlignmentTargets | null;
    /** Of the tie rods' adjusting sleeves, one end left-hand; left out = not given. */
    readonly sleeveThread?: ThreadCallout;
    /** Left out = as bolted on; `alignedModel` puts it on the setup of the truck it makes. */
    readonly standing?: AlignedStanding;
  };
  /** What camber and caster are set with; null = the tie rods alone can be set. */
  readonly adjusters: AdjustersSetup | null;
  /** null = no joint, stop or shock is checked. */
  readonly limits: LimitsSetup | null;
  /** null = none given. */
  readonly airSpring: AirSpringSetup | null;
  readonly masses: MassesSetup | null;
  /** null = the usual cases, carried by the air spring. */
  readonly loads: LoadsSetup | null;
  /** Range of travel: droop ≤ 0 ≤ bump. */
  readonly travel: { readonly droop: number; readonly bump: number };
  /**
   * In the file's order. Of a setup as read, those typed by travel; of a model's, all of them: `modelOf` works out the
   * travel of the others.
   */
  readonly stances: readonly StanceSetup[];
  /** Stances typed by another measure than travel. */
  readonly measuredStances: readonly MeasuredStance[];
  /** Poses with a name, each wheel at its own travel; no study of both wheels at one travel asks about them. */
  readonly poses: readonly PoseSetup[];
  /** null = body roll is not checked. */
  readonly roll: RollSetup | null;
  /** null = the floor lies level under the contact patches, and nothing is measured to it. */
  readonly floor: FloorSetup | null;
  /** null = no order is filled in. */
  readonly order: OrderSetup | null;
  /** The gap a shop wants to keep; less is "close". */
  readonly allowance: number;
  /** How the jig is laid out; defaults where the file says nothing. */
  readonly jig: JigSetup;
  /** null = nothing was read off the jig. */
  readonly asBuilt: AsBuiltSetup | null;
  /** What was read on the truck with tape, plumb bob and angle finder. */
  readonly readings: readonly Reading[];
  /** Readings that no truck can have, alone or with the others, each with its mend: they are left out. */
  readonly readingsLeftOut: readonly SetupIssue[];
  /** null = every number is the truck's own. */
  readonly fromExample: FromExample | null;
  /** What is unusual and so all the same. */
  readonly confirmed: readonly Confirmed[];
  /** How far off numbers may be of which it was not typed. */
  readonly odds: OddsSetup;
  /** How well numbers are known, of those of which it was typed; in the document's order. */
  readonly within: readonly NumberWithin[];
}

/** A user's mistake: where, what was there, and how to mend it. */
export interface SetupIssue {
  /** The file as the user named it. */
  readonly file: string;
  /** The key as a dotted path, e.g. `knuckle.hubFace` or `truck.body[1].points[0]`; "" for the whole file. */
  readonly key: string;
  /** What was found there, written the way the file writes it, shortened. */
  readonly value: string;
  /** What is wrong and what would be right, one sentence without a full stop. */
  readonly mend: string;
  /** Where it is known: the ends, mm, between which a length at the key goes together with the rest; not themselves. */
  readonly range?: { readonly least: number; readonly most: number };
}

/** A result that carries its value or every issue found. */
export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly issues: readonly SetupIssue[] };
