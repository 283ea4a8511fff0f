/** Readings of a truck with tape, plumb bob and angle finder, as the rest of the program sees them: mm and radians. */

/**
 * A point that readings go to, in one spelling whatever was typed: a place of the truck without its `truck.`
 * (`lowerArm.ballJoint`, `body["fender lip"].points[3]`), a point of the wheel or the knuckle (`WHEEL_POINTS`), or the name
 * of a mark.
 */
export type PointName = string;

/**
 * Which side was read. `across`: the first point on the left, the second on the right; a height, an offset or an arm
 * is never across.
 */
export type ReadingSide = "left" | "right" | "across";

/** What of the wheel and the knuckle readings may go to besides the places of the truck. */
export const WHEEL_POINTS = [
  "wheelCenter",
  /** On the floor under the wheel center; camber is left out. */
  "contactPatch",
  /** The outboard edge of the rim: highest, lowest, foremost and rearmost; camber and toe are left out. */
  "rimTop",
  "rimBottom",
  "rimFront",
  "rimRear",
  "tieRodOuter",
] as const;

/** Sizes that are read as one number, by their words in the file. */
export const READING_SIZES = [
  "wheelbase",
  /** Left tread center to right tread center, on the floor. */
  "track",
  /** The frame's outer faces, side to side, at the front axle. */
  "frameWidth",
  "tire.diameter",
  "tire.sectionWidth",
  "tire.treadWidth",
  /** How far the tread's edge lies below its crown. */
  "tire.shoulderDrop",
  "wheel.backspacing",
  /** Over the rim's lips, outside to outside. */
  "wheel.lipToLip",
] as const;

export type ReadingSize = (typeof READING_SIZES)[number];

interface ReadingBase {
  /** Where it stands in the file's list, from 0. */
  readonly index: number;
  /** One standard deviation; mm, or radians of an angle. */
  readonly within: number;
  readonly side: ReadingSide;
}

/** Tape between two points. */
export interface BetweenReading extends ReadingBase {
  readonly kind: "between";
  readonly points: readonly [PointName, PointName];
  readonly is: number;
}

/**
 * One coordinate: `height` above the floor; `offset` outboard from the centerline, or from the frame's outer face; `ahead`
 * of the axle line.
 */
export interface PlaceReading extends ReadingBase {
  readonly kind: "height" | "offset" | "ahead";
  readonly point: PointName;
  readonly from: "centerline" | "frame";
  readonly is: number;
}

/** An arm in the front view: from the foot of the ball joint on the pivot axis, + = ball joint lower than the pivots. */
export interface AngleReading extends ReadingBase {
  readonly kind: "angle";
  readonly arm: "lowerArm" | "upperArm";
  readonly is: number;
}

/** One size of the truck, tire or wheel. */
export interface SizeReading extends ReadingBase {
  readonly kind: "size";
  readonly of: ReadingSize;
  readonly is: number;
}

/** A plumb bob dropped from a point, and the mark made where it met the floor. */
export interface PlumbReading extends ReadingBase {
  readonly kind: "plumb";
  readonly point: PointName;
  readonly mark: PointName;
}

/** One station along the stick: ahead of the axle line, up from the stick, inboard of it. */
export type Station = readonly [ahead: number, height: number, inset: number];

/** A lip read at stations along a level stick that lies along the truck. */
export interface StationsReading extends ReadingBase {
  readonly kind: "stations";
  /** Name of the body part whose points these are, in order. */
  readonly part: string;
  /** Where the stick lies: outboard of the centerline and above the floor. */
  readonly stick: { readonly offset: number; readonly height: number };
  /** The points of the part in order; null = not read yet. */
  readonly stations: readonly (Station | null)[];
}

export type Reading =
  | BetweenReading
  | PlaceReading
  | AngleReading
  | SizeReading
  | PlumbReading
  | StationsReading;

/** What tells the kind of a reading in the file: the key that names what was read. */
export const READING_KINDS = [
  "between",
  "height",
  "offset",
  "ahead",
  "angle",
  "size",
  "plumb",
  "stations",
] as const;

export type ReadingKind = (typeof READING_KINDS)[number];
