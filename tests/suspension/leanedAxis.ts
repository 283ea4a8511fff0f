import type { Vec3 } from "../../src/geometry/vec.ts";
import type { FrontEndInput } from "../../src/suspension/inputs.ts";
import { knuckleFromPoints } from "./trucks.ts";

/** What a check table says of a steering axis; radians and mm. */
export interface LeanedAxis {
  readonly caster: number;
  readonly inclination: number;
  readonly camber?: number;
  /** Wheel center outboard of the steering axis at its own height. */
  readonly hubOutboard?: number;
  /** Wheel center ahead of the steering axis at its own height. */
  readonly hubAhead?: number;
  readonly wheelRadius?: number;
}

const LOWER: Vec3 = [0, 700, 210];

/** A front end whose steering axis leans as given, wheel straight ahead, center `wheelRadius` above the floor. */
export function leanedAxisFrontEnd(axis: LeanedAxis): FrontEndInput {
  const { caster, inclination, camber = 0, hubOutboard = 100, hubAhead = 0, wheelRadius = 350 } = axis;
  const onAxis = (z: number): Vec3 => [
    LOWER[0] - (z - LOWER[2]) * Math.tan(caster),
    LOWER[1] - (z - LOWER[2]) * Math.tan(inclination),
    z,
  ];
  const upper = onAxis(500);
  const atHub = onAxis(wheelRadius);
  const outer: Vec3 = [LOWER[0] - 150, LOWER[1] - 15, LOWER[2] + 30];
  return {
    lowerArm: { frontPivot: [160, 290, 235], rearPivot: [-160, 285, 228], ballJoint: LOWER },
    upperArm: { frontPivot: [90, 390, 492], rearPivot: [-140, 385, 480], ballJoint: upper },
    steering: { type: "rack", innerEnd: [outer[0], 285, outer[2] + 5], stroke: 100 },
    knuckle: knuckleFromPoints({
      lowerBallJoint: LOWER,
      upperBallJoint: upper,
      tieRodOuter: outer,
      wheelCenter: [atHub[0] + hubAhead, atHub[1] + hubOutboard, wheelRadius],
      spinAxis: [0, Math.cos(camber), -Math.sin(camber)],
    }),
    wheelOffset: 0,
    loadedRadius: wheelRadius,
    toe: 0,
  };
}
