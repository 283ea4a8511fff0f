import type { HardwareSetup } from "../../src/setup/types/types.ts";

/** Moving parts of an invented truck, mm; rotor and caliper too. */
export function hardwareSetup(change: Partial<HardwareSetup> = {}): HardwareSetup {
  return {
    upperArm: { radius: 16 },
    lowerArm: { radius: 19 },
    upperBallJoint: { radius: 25 },
    lowerBallJoint: { radius: 28 },
    steeringArm: { radius: 13 },
    tieRod: { radius: 11 },
    tieRodEnd: { radius: 19 },
    knuckle: { radius: 19 },
    rotor: { diameter: 280, thickness: 25, inboard: 45 },
    caliper: { frame: "hub", min: [-160, -90, -50], max: [-100, -20, 50] },
    ...change,
  };
}
