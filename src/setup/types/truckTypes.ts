/** A point in vehicle axes, mm. */
export type Point = readonly [x: number, y: number, z: number];

/** The unit of the numbers in a mesh file. */
export type MeshUnit = "in" | "mm" | "cm" | "m" | "ft";

/** A control arm as measured: it turns about the line through its two pivots. */
export interface ArmSetup {
  readonly frontPivot: Point;
  readonly rearPivot: Point;
  readonly ballJoint: Point;
}

/** Rack: the inner tie rod ends slide along Y by `stroke` at full lock. */
export interface RackSetup {
  readonly type: "rack";
  readonly innerEnd: Point;
  readonly stroke: number;
}

/** A pitman or idler arm: turns about `axis` (unit length) through `pivot`. */
export interface TurningArmSetup {
  readonly pivot: Point;
  readonly axis: Point;
  readonly end: Point;
}

/** Pitman-arm steering; `swing` in radians at full lock. Points are where they are, not mirrored. */
export interface PitmanSetup {
  readonly type: "pitman";
  readonly innerEnd: Point;
  readonly innerEndRight: Point;
  readonly swing: number;
  readonly pitman: TurningArmSetup;
  readonly idler: TurningArmSetup;
}

export type SteeringSetup = RackSetup | PitmanSetup;

export type PartSide = "both" | "left" | "right";

interface BodyPartBase {
  readonly name: string;
  readonly side: PartSide;
}

/** A polyline with a radius: a lip, a hose, a brake line. */
export interface PathPart extends BodyPartBase {
  readonly kind: "path";
  readonly radius: number;
  readonly points: readonly Point[];
}

/** A solid box aligned with the vehicle axes. */
export interface BoxPart extends BodyPartBase {
  readonly kind: "box";
  readonly min: Point;
  readonly max: Point;
}

/** A surface of triangles, as flat rows: a scan has hundreds of thousands of them. */
export interface MeshPart extends BodyPartBase {
  readonly kind: "mesh";
  /** x, y, z of each vertex. */
  readonly positions: Float64Array;
  /** Three vertex numbers a triangle. */
  readonly triangles: Uint32Array;
}

export type BodyPart = PathPart | BoxPart | MeshPart;
