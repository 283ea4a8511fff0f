import type { Vec3 } from "../geometry/vec.ts";

/**
 * What the solver needs to know of a truck, in vehicle axes, left side, mm and radians. A setup read
 * from a file has this shape; so does anything a program makes up.
 */
export interface ArmInput {
  readonly frontPivot: Vec3;
  readonly rearPivot: Vec3;
  readonly ballJoint: Vec3;
}

export interface TurningArmInput {
  readonly pivot: Vec3;
  /** Unit length. */
  readonly axis: Vec3;
  readonly end: Vec3;
}

export type SteeringInput =
  | { readonly type: "rack"; readonly innerEnd: Vec3; readonly stroke: number }
  | {
      readonly type: "pitman";
      readonly innerEnd: Vec3;
      readonly innerEndRight: Vec3;
      readonly swing: number;
      readonly pitman: TurningArmInput;
      readonly idler: TurningArmInput;
    };

export interface KnuckleInput {
  readonly span: number;
  readonly pinHeight: number;
  readonly pinLead: number;
  readonly pinAngle: number;
  readonly hubFace: number;
  readonly steeringArm: Vec3;
}

export interface FrontEndInput {
  readonly upperArm: ArmInput;
  readonly lowerArm: ArmInput;
  readonly steering: SteeringInput;
  readonly knuckle: KnuckleInput;
  /** + = mounting face outboard of the wheel's center plane. */
  readonly wheelOffset: number;
  readonly loadedRadius: number;
  /** Per wheel, at travel 0 and steer 0, + = toe-in. */
  readonly toe: number;
}
