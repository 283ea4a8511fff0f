import type { KnuckleInput } from "../../suspension/inputs.ts";
import { type FittedKnuckle, UNKNOWNS, type Unknown } from "./fitKnuckle.ts";

/** mm and rad. Derivatives are taken over this to either side: far below any reading, far above rounding. */
const STEP = { length: 0.02, angle: 2e-5 } as const;

/** mm and rad. A dimension nobody read that moves a number by less than this over 1 mm or a hundredth rad leaves it told. */
const MOVES = 1e-6;

/** How far a dimension is moved to either side for a slope, mm or rad. */
export function stepOf(unknown: Unknown): number {
  return isAngle(unknown) ? STEP.angle : STEP.length;
}

function isAngle(unknown: Unknown): boolean {
  return unknown === "pinAngle" || unknown === "toe";
}

/**
 * One standard deviation of a number by how well the knuckle's dimensions are told: √(g · C · gᵀ), C their covariance (the
 * propagation of uncertainty by first derivatives, JCGM 100:2008, 5.2.2, from memory). null where a slope is none, or a dimension
 * that was left open moves it. @param slopes of the number over `UNKNOWNS`, in their order
 */
export function propagated(
  fit: Pick<FittedKnuckle, "covariance" | "within">,
  slopes: readonly number[],
): number | null {
  if (!slopes.every(Number.isFinite)) return null;
  const isOpen = UNKNOWNS.some(
    (name, i) => fit.within[name] === null && Math.abs(slopes[i]! * (isAngle(name) ? 0.01 : 1)) > MOVES,
  );
  if (isOpen) return null;
  return Math.sqrt(Math.max(0, covarianceOf(fit, slopes, slopes)));
}

/** Covariance of two numbers by their slopes over `UNKNOWNS`. */
export function covarianceOf(
  { covariance }: Pick<FittedKnuckle, "covariance">,
  a: readonly number[],
  b: readonly number[],
): number {
  return a.reduce((sum, p, i) => sum + b.reduce((row, q, k) => row + p * q * covariance[i]![k]!, 0), 0);
}

/** A knuckle with one dimension more by an amount, mm or rad. Toe built in is in the steering arm's place already: by itself it moves nothing on the truck. */
export function changedKnuckle<K extends KnuckleInput>(whole: K, unknown: Unknown, by: number): K {
  const [x, y, z] = whole.steeringArm;
  switch (unknown) {
    case "toe":
      return whole;
    case "armX":
      return { ...whole, steeringArm: [x + by, y, z] };
    case "armY":
      return { ...whole, steeringArm: [x, y + by, z] };
    case "armZ":
      return { ...whole, steeringArm: [x, y, z + by] };
    default:
      return { ...whole, [unknown]: whole[unknown] + by };
  }
}
