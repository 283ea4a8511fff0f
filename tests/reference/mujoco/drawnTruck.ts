import type { Vec3 } from "../../../src/geometry/vec.ts";

/** A hinged arm of the drawing: its pivot line. */
export interface DrawnArm {
  readonly frontPivot: Vec3;
  readonly rearPivot: Vec3;
}

/** A pitman or idler arm of the drawing. `axis` of any length; its sign is free. */
export interface DrawnTurningArm {
  readonly pivot: Vec3;
  readonly axis: Vec3;
  readonly end: Vec3;
}

export type DrawnSteering =
  | { readonly type: "rack"; readonly innerEnd: Vec3; readonly stroke: number }
  | {
      readonly type: "pitman";
      readonly innerEnd: Vec3;
      readonly innerEndRight: Vec3;
      /** Radians. */
      readonly swing: number;
      readonly pitman: DrawnTurningArm;
      readonly idler: DrawnTurningArm;
    };

/**
 * A front end as points of a drawing at rest, vehicle axes, left side, mm. Nothing here has been through
 * the solver: the mechanism built from it shares no code with the thing it checks.
 */
export interface DrawnTruck {
  readonly name: string;
  readonly upperArm: DrawnArm;
  readonly lowerArm: DrawnArm;
  readonly upperBallJoint: Vec3;
  readonly lowerBallJoint: Vec3;
  readonly tieRodOuter: Vec3;
  readonly wheelCenter: Vec3;
  /** Wheel spin axis, outboard, any length. */
  readonly spinAxis: Vec3;
  /** Steering arm ahead of the steering axis: it decides which way a left turn moves the inner ends. */
  readonly armAhead: boolean;
  readonly steering: DrawnSteering;
}
