import { assembleFrontEnd, type FrontEnd, type Side } from "../../suspension/frontEnd.ts";
import type { KnuckleInput } from "../../suspension/inputs.ts";
import type { TravelRange } from "../geometry/bumpSteer.ts";
import { type FittedKnuckle, UNKNOWNS, type Unknown } from "./fitKnuckle.ts";
import { toeOnRod, wheelNumbers } from "./wheelNumbers.ts";

/** How well the readings tell one wheel's numbers on the truck: one standard deviation, mm and rad; null = not at all. */
export interface WheelWithin {
  readonly camber: number | null;
  readonly caster: number | null;
  readonly kingpinInclination: number | null;
  readonly scrubRadius: number | null;
  readonly halfTrack: number | null;
  readonly tieRod: number | null;
  readonly toeAsBolted: number | null;
  readonly bumpSteerMost: number | null;
  readonly bumpSteerRms: number | null;
}

/** The numbers of one wheel in the order of a `WheelWithin`; NaN = there is none. */
type Numbers = Readonly<Record<keyof WheelWithin, number>>;

/** mm, rad. Derivatives are taken over this to either side: far below any reading, far above rounding. */
const STEP = { length: 0.02, angle: 2e-5 } as const;

/** mm and rad. A dimension nobody read that moves a number by less than this over 1 mm or a hundredth rad leaves it told. */
const MOVES = 1e-6;

/**
 * Linear propagation of the fitted knuckle's covariance: g · C · gᵀ with g the slopes of each number, by central differences.
 * A number that a dimension left open moves is not told. @param frontEnd the truck on that knuckle
 * @param rodAsOrdered length of the tie rod of the knuckle as ordered
 */
export function wheelWithin(
  frontEnd: FrontEnd,
  side: Side,
  { covariance, within }: FittedKnuckle,
  range: TravelRange,
  rodAsOrdered: number,
): WheelWithin {
  const slopes = UNKNOWNS.map((unknown) => {
    const step = unknown === "pinAngle" || unknown === "toe" ? STEP.angle : STEP.length;
    const at = (by: number) => numbersWith(frontEnd, side, unknown, by, range, rodAsOrdered);
    const [more, less] = [at(step), at(-step)];
    return (key: keyof WheelWithin) => (more[key] - less[key]) / (2 * step);
  });
  const one = (key: keyof WheelWithin): number | null => {
    const g = slopes.map((slope) => slope(key));
    if (!g.every(Number.isFinite)) return null;
    const isOpen = UNKNOWNS.some((name, i) => {
      const scale = name === "pinAngle" || name === "toe" ? 0.01 : 1;
      return within[name] === null && Math.abs(g[i]! * scale) > MOVES;
    });
    if (isOpen) return null;
    const variance = g.reduce(
      (sum, a, i) => sum + g.reduce((row, b, j) => row + a * b * covariance[i]![j]!, 0),
      0,
    );
    return Math.sqrt(Math.max(0, variance));
  };
  return {
    camber: one("camber"),
    caster: one("caster"),
    kingpinInclination: one("kingpinInclination"),
    scrubRadius: one("scrubRadius"),
    halfTrack: one("halfTrack"),
    tieRod: one("tieRod"),
    toeAsBolted: one("toeAsBolted"),
    bumpSteerMost: one("bumpSteerMost"),
    bumpSteerRms: one("bumpSteerRms"),
  };
}

/** The numbers with one dimension of the knuckle off by a little; NaN throughout where it then does not go together. */
function numbersWith(
  { input }: FrontEnd,
  side: Side,
  unknown: Unknown,
  by: number,
  range: TravelRange,
  rodAsOrdered: number,
): Numbers {
  const made = assembleFrontEnd({ ...input, knuckle: changed(input.knuckle, unknown, by) });
  const { bumpSteer, ...numbers } = made.ok ? wheelNumbers(made.frontEnd, side, range) : NOTHING;
  return {
    ...numbers,
    toeAsBolted: (made.ok ? toeOnRod(made.frontEnd, side, rodAsOrdered) : null) ?? Number.NaN,
    bumpSteerMost: bumpSteer?.most.toeChange ?? Number.NaN,
    bumpSteerRms: bumpSteer?.rms ?? Number.NaN,
  };
}

const NOTHING = {
  ...{ camber: Number.NaN, caster: Number.NaN, kingpinInclination: Number.NaN },
  ...{ scrubRadius: Number.NaN, halfTrack: Number.NaN, tieRod: Number.NaN, bumpSteer: null },
};

/** Toe built in is in the steering arm's place already: by itself it moves nothing on the truck. */
function changed(whole: KnuckleInput, unknown: Unknown, by: number): KnuckleInput {
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
