import { assembleFrontEnd, type FrontEnd, type Side } from "../../suspension/frontEnd.ts";
import type { TravelRange } from "../geometry/bumpSteer.ts";
import { type FittedKnuckle, UNKNOWNS, type Unknown } from "./fitKnuckle.ts";
import { changedKnuckle, propagated, stepOf } from "./propagated.ts";
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

/**
 * Linear propagation of the fitted knuckle's covariance to each number (`propagated`), slopes by central differences.
 * @param frontEnd the truck on that knuckle
 * @param rodAsOrdered length of the tie rod of the knuckle as ordered
 */
export function wheelWithin(
  frontEnd: FrontEnd,
  side: Side,
  fit: FittedKnuckle,
  range: TravelRange,
  rodAsOrdered: number,
): WheelWithin {
  const slopes = UNKNOWNS.map((unknown) => {
    const step = stepOf(unknown);
    const at = (by: number) => numbersWith(frontEnd, side, unknown, by, range, rodAsOrdered);
    const [more, less] = [at(step), at(-step)];
    return (key: keyof WheelWithin) => (more[key] - less[key]) / (2 * step);
  });
  const one = (key: keyof WheelWithin): number | null =>
    propagated(
      fit,
      slopes.map((slope) => slope(key)),
    );
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
  const made = assembleFrontEnd({ ...input, knuckle: changedKnuckle(input.knuckle, unknown, by) });
  const { bumpSteer, ...numbers } = made.ok ? wheelNumbers(made.frontEnd, side, range) : NOTHING;
  return {
    ...numbers,
    toeAsBolted: (made.ok ? toeOnRod(made.frontEnd, side, rodAsOrdered) : null) ?? Number.NaN,
    bumpSteerMost: bumpSteer?.most.toeChange ?? Number.NaN,
    bumpSteerRms: bumpSteer?.rms ?? Number.NaN,
  };
}

const NOTHING = {
  camber: Number.NaN,
  caster: Number.NaN,
  kingpinInclination: Number.NaN,
  scrubRadius: Number.NaN,
  halfTrack: Number.NaN,
  tieRod: Number.NaN,
  bumpSteer: null,
};
