import { cross, dot, length, normalize, sub, type Vec3 } from "../../src/geometry/vec.ts";
import { assembleFrontEnd, type FrontEnd } from "../../src/suspension/frontEnd.ts";
import type { FrontEndInput } from "../../src/suspension/inputs.ts";

/** Points of a front end as a drawing gives them, in vehicle axes, left side, mm. */
export interface DrawnFrontEnd {
  readonly upperBallJoint: Vec3;
  readonly lowerBallJoint: Vec3;
  readonly tieRodOuter: Vec3;
  readonly wheelCenter: Vec3;
  readonly spinAxis: Vec3;
}

/** Turns drawn points into the knuckle's own dimensions (offset 0: mounting face at the wheel's center plane). */
export function knuckleFromPoints(p: DrawnFrontEnd) {
  const z = normalize(sub(p.upperBallJoint, p.lowerBallJoint));
  const n = normalize(p.spinAxis);
  const along = dot(n, z);
  const y = normalize([n[0] - along * z[0], n[1] - along * z[1], n[2] - along * z[2]]);
  const x = cross(y, z);
  const inFrame = (point: Vec3): Vec3 => {
    const d = sub(point, p.lowerBallJoint);
    return [dot(d, x), dot(d, y), dot(d, z)];
  };
  const pinAngle = Math.asin(-along);
  const center = inFrame(p.wheelCenter);
  return {
    span: length(sub(p.upperBallJoint, p.lowerBallJoint)),
    pinAngle,
    pinLead: center[0],
    hubFace: center[1] / Math.cos(pinAngle),
    pinHeight: center[2] + center[1] * Math.tan(pinAngle),
    steeringArm: inFrame(p.tieRodOuter),
  };
}

/** The spatial double wishbone of the outside check table (section D), mm. */
export const wishbonePoints: DrawnFrontEnd = {
  upperBallJoint: [-20, 640, 520],
  lowerBallJoint: [10, 700, 230],
  tieRodOuter: [-150, 680, 262],
  wheelCenter: [0, 790, 360],
  spinAxis: [0, 1, 0],
};

export const wishbone: FrontEndInput = {
  lowerArm: { frontPivot: [150, 250, 250], rearPivot: [-150, 260, 240], ballJoint: [10, 700, 230] },
  upperArm: { frontPivot: [110, 340, 505], rearPivot: [-130, 330, 490], ballJoint: [-20, 640, 520] },
  steering: { type: "rack", innerEnd: [-140, 270, 275], stroke: 60 },
  knuckle: knuckleFromPoints(wishbonePoints),
  wheelOffset: 0,
  loadedRadius: 360,
  toe: 0,
};

/** Assembles or fails the test with the reason. */
export function assembled(input: FrontEndInput): FrontEnd {
  const result = assembleFrontEnd(input);
  if (!result.ok) throw new Error(`${result.issue.key}: ${result.issue.mend}`);
  return result.frontEnd;
}
