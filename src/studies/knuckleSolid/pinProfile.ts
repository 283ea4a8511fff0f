import { sub, type Vec3 } from "../../geometry/vec.ts";
import type { BuildSetup, PinStep } from "../../setup/types/buildTypes.ts";
import { pointOnPin } from "../../setup/types/jointPlaces.ts";
import type { KnuckleSetup } from "../../setup/types/types.ts";

/** The pin as a body that turns about its axis. Knuckle frame, mm; steps are measured from `origin` along `axis`. */
export interface PinAxis {
  /** Where its axis passes the steering axis. */
  readonly origin: Vec3;
  /** Outboard, of unit length. */
  readonly axis: Vec3;
  readonly steps: readonly PinStep[];
}

/** null = the build gives no pin. */
export function pinAxis({ pin }: BuildSetup, knuckle: KnuckleSetup): PinAxis | null {
  if (pin === null) return null;
  const origin = pointOnPin(knuckle, 0);
  return { origin, axis: sub(pointOnPin(knuckle, 1), origin), steps: pin.steps };
}

/** Straight pieces a fillet is drawn with. */
const ARC_PIECES = 8;

/**
 * The outline of a pin over its axis, from the axis at its root round to the axis at its end: [along, radius] as the steps are
 * measured, mm. A shoulder's fillet is an arc of its radius, cut off where the thicker step ends first.
 */
export function pinProfile(steps: readonly PinStep[]): readonly (readonly [along: number, radius: number])[] {
  const points: [number, number][] = [];
  steps.forEach(({ from, to, diameter, fillet }, i) => {
    const radius = diameter / 2;
    const thicker = i === 0 ? radius : steps[i - 1]!.diameter / 2;
    if (i === 0) points.push([from, 0], [from, radius]);
    else if (thicker > radius && fillet !== null && fillet > 0)
      points.push(...filletArc(from, radius, thicker, fillet));
    else if (thicker !== radius) points.push([from, radius]);
    if (to > points.at(-1)![0]) points.push([to, radius]);
  });
  const end = points.at(-1);
  if (end) points.push([end[0], 0]);
  return points;
}

/** From the shoulder's face down to the thinner step. */
function filletArc(from: number, radius: number, thicker: number, fillet: number): [number, number][] {
  const rise = Math.min(1, (thicker - radius) / fillet);
  // From the angle where the arc meets the face, or the thicker step's edge, to where it runs out on the thinner one.
  const start = Math.acos(1 - rise);
  return Array.from({ length: ARC_PIECES + 1 }, (_, i): [number, number] => {
    const angle = start * (1 - i / ARC_PIECES);
    return [from + fillet * (1 - Math.sin(angle)), radius + fillet * (1 - Math.cos(angle))];
  });
}
