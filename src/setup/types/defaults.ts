import { radFromDeg } from "../../units/angle.ts";
import { mmFromInches } from "../../units/lengthUnits.ts";
import type { JigTolerances, ReadingAccuracy } from "./asBuiltTypes.ts";
import type { RearMotion } from "./floorTypes.ts";
import type { ShockMount } from "./limitsTypes.ts";
import type { ArmName, LoadPlace, WheelState } from "./loadsTypes.ts";
import type { OrderedSide } from "./orderTypes.ts";
import type { PartSide, Point } from "./truckTypes.ts";
import type { CaliperFrame } from "./types.ts";

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

/** A coordinate without an uncertainty of its own counts as exact: none is made up. */
export const DEFAULT_POINTS_WITHIN = 0;

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

/**
 * Radii of what moves, for a setup that has a `hardware` block and leaves them out. All are common practice, no
 * source: measure what is on the truck.
 */
export const DEFAULT_RADII = {
  /** Upper arms are mostly 1 1/4 in tube, or a stamping about as deep. */
  upperArm: mmFromInches(0.625),
  /** Lower arms carry the truck: 1 1/2 in tube, or a stamping about as deep. */
  lowerArm: mmFromInches(0.75),
  /** Upper housings are about 2 in across. */
  upperBallJoint: mmFromInches(1),
  /** Lower housings, which carry the load, are about 2 1/4 in across. */
  lowerBallJoint: mmFromInches(1.125),
  /** Steering arms are about 1 in bar. */
  steeringArm: mmFromInches(0.5),
  /** Tie rods are about 7/8 in tube or sleeve. */
  tieRod: mmFromInches(0.4375),
  /** Outer ends are about 1 1/2 in across with their boot. */
  tieRodEnd: mmFromInches(0.75),
  /** The body between the ball joints is about 1 1/2 in thick. */
  knuckle: mmFromInches(0.75),
} as const;

/** A rotor that fits inside a 15 in wheel (common practice, no source). */
export const DEFAULT_ROTOR_DIAMETER = mmFromInches(11);

/** Vented rotors are about an inch thick (common practice, no source). */
export const DEFAULT_ROTOR_THICKNESS = mmFromInches(1);

/** A rotor's hat is about 1 3/4 in deep to the outboard face (common practice, no source). */
export const DEFAULT_ROTOR_INBOARD = mmFromInches(1.75);

/** Knuckles are drawn and measured in their own frame. */
export const DEFAULT_CALIPER_FRAME: CaliperFrame = "knuckle";

/** Most cross shafts stand inboard of their bracket, so a shim between them moves the pivot inboard (common practice, no source). */
export const DEFAULT_SHIM_DIRECTION: Point = [0, -1, 0];

/** The thinnest shim commonly on the shelf is 1/32 in (common practice, no source). */
export const DEFAULT_SHIM_STEP = mmFromInches(1 / 32);

/** Outboard is what adds camber at an upper pivot, so + on the eccentric is + in camber there. */
export const DEFAULT_ECCENTRIC_DIRECTION: Point = [0, 1, 0];

/** Half a turn of a 3/4-16 thread, the least that puts a rod end's bolt hole in line again (common practice, no source). */
export const DEFAULT_ARM_STEP = mmFromInches(1 / 32);

/** Suspension ball joints swing 15 to 25 degrees off the middle (common practice, no source): ask the joint's maker. */
export const DEFAULT_BALL_JOINT_CONE = radFromDeg(20);

/** Tie rod ends swing 20 to 30 degrees off the middle (common practice, no source): ask the maker. */
export const DEFAULT_TIE_ROD_END_MISALIGNMENT = radFromDeg(25);

/** Bags or blocks at the rear bring it down about as far as the front (common practice, no source). */
export const DEFAULT_REAR: RearMotion = "follows";

/** Most shocks stand on the lower arm. */
export const DEFAULT_SHOCK_MOUNT: ShockMount = "lowerArm";

/**
 * Between no change of temperature (1) and no heat lost (1.4, the ratio of specific heats of air): at about one stroke
 * a second almost no heat is lost. 1.38 is what air spring engineers use (SAE HS-1576, from memory).
 */
export const DEFAULT_AIR_EXPONENT = 1.38;

/** MPa absolute: the standard atmosphere at sea level, 101.325 kPa (10th CGPM, 1954). */
export const DEFAULT_ATMOSPHERE = 0.101325;

/** Aircraft-quality 4130 tube as it comes is what most tubular suspension parts are welded of (common practice, no source). */
export const DEFAULT_MATERIAL = "4130 normalized tube";

/** Knuckles are changed on both sides at once: one side alone is a repair. */
export const DEFAULT_ORDERED_SIDE: OrderedSide = "pair";

/** A shop makes them for one truck at a time. */
export const DEFAULT_ORDERED_QUANTITY = 1;

/** The jig where a setup says nothing of it. */
export const DEFAULT_JIG = {
  /** Two-foot straightedges, marked a little inside their ends (common practice, no source). */
  halfLength: mmFromInches(10),
  /** The one height a knuckle has of its own is from its lower ball joint's center. */
  jointHeight: 0,
  /** As far out as most pins are round before their thread (common practice, no source). */
  pinEnd: mmFromInches(3),
  /** A knuckle is mostly built square: toe is set with the tie rods (common practice, no source). */
  toe: 0,
} as const;

/**
 * A sixteenth is what welders hold on a part of this size without machining it; it moves camber by about what one shim
 * does, and a quarter of a degree of pin angle is camber a shim stack takes out (common practice, no source). A shop
 * that machines its faces holds less: set its own.
 */
export const DEFAULT_JIG_TOLERANCES: JigTolerances = {
  tape: mmFromInches(1 / 16),
  /** Over marks 20 in apart a sixteenth is 0.18 degrees of toe, which the tie rod takes out. */
  difference: mmFromInches(1 / 16),
  faceAngle: radFromDeg(0.25),
  height: mmFromInches(1 / 16),
  lead: mmFromInches(1 / 16),
  span: mmFromInches(1 / 16),
  steeringArm: mmFromInches(1 / 16),
};

/**
 * One standard deviation: a tape read to the nearest 1/32 in is within 1/64 either way, 0.009 in for a reading that may
 * lie anywhere in between (half width over root 3, JCGM 100:2008, 4.3.7), and the other end of the tape, the edge and the
 * scribed mark are as much again: about 1/64 in all told. Digital angle finders are sold as good to 0.1 or 0.2 degrees
 * (common practice, no source).
 */
export const DEFAULT_READING_ACCURACY: ReadingAccuracy = {
  tape: mmFromInches(1 / 64),
  angle: radFromDeg(0.1),
  height: mmFromInches(1 / 64),
};
/** The ground pushes on a wheel where it stands on it. */
export const DEFAULT_LOAD_PLACE: LoadPlace = "contactPatch";

/** Only a brake holds a front wheel's own turn. */
export const DEFAULT_WHEEL_STATE: WheelState = "rolls";

/** Most springs of double wishbones stand on the lower arm. */
export const DEFAULT_SPRING_ARM: ArmName = "lowerArm";
