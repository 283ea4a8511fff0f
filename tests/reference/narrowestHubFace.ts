import type { Model } from "../../src/studies/model/model.ts";

/**
 * The narrowest hub face, mm, at which the rotor keeps the allowance from the lower ball joint's housing, all
 * else in the setup as it is: what limits how narrow the truck can get on this brake. Closed form: along the
 * pin the ball joint stands at H sin a outboard of the steering axis, H pin height, a pin angle, and
 * √(H² cos² a + lead²) from the pin's axis; the rotor's inboard face is at hub face − inboard − thickness.
 * Over the disk's face the ball needs its radius and the allowance along the pin; past its edge, by e, only
 * √(need² − e²).
 * @returns null when the setup has no rotor; −Infinity when the rotor passes the ball joint at any hub face.
 */
export function narrowestHubFace({ setup }: Pick<Model, "setup">): number | null {
  const { hardware, knuckle, allowance } = setup;
  if (hardware === null || hardware.rotor === null) return null;
  const { diameter, thickness, inboard } = hardware.rotor;
  const { pinHeight, pinAngle, pinLead } = knuckle;
  const need = hardware.lowerBallJoint.radius + allowance;
  const fromPin = Math.sqrt((pinHeight * Math.cos(pinAngle)) ** 2 + pinLead ** 2);
  const pastEdge = Math.max(0, fromPin - diameter / 2);
  if (pastEdge >= need && pastEdge > 0) return Number.NEGATIVE_INFINITY;
  const beside = Math.sqrt(need ** 2 - pastEdge ** 2);
  return pinHeight * Math.sin(pinAngle) + inboard + thickness + beside;
}
