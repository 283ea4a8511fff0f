import type { StanceMeasure } from "../../setup/types/floorTypes.ts";
import { evenly } from "../numeric/evenly.ts";
import { rootBetween } from "../numeric/rootsOver.ts";
import type { StandingTruck } from "./floorPose.ts";
import { measureAt } from "./stanceMeasures.ts";

/** The travel at which a measure reads a value, or the least and most it reads within reach (null = nowhere). */
export type TravelFound =
  | { readonly ok: true; readonly travel: number }
  | { readonly ok: false; readonly least: number | null; readonly most: number | null };

/**
 * Heights looked at over all the travel both wheels can reach. A measure is as good as straight over one fortieth of it;
 * a value read twice between two of them would be missed, one read twice farther apart is told at the travel nearer 0.
 */
const HEIGHTS = 41;

/**
 * The travel (mm, both wheels, straight ahead) at which a measure reads `value` (mm or radians): bisected to rounding.
 * Looks at all travel in reach, the setup's own range or not. Measures that the setup lacks are found nowhere.
 */
export function travelForMeasure(truck: StandingTruck, measure: StanceMeasure, value: number): TravelFound {
  const { left, right } = truck.frontEnd;
  const low = Math.max(left.reach.droop.travel, right.reach.droop.travel);
  const high = Math.min(left.reach.bump.travel, right.reach.bump.travel);
  const excess = (travel: number) => (measureAt(truck, measure, travel) ?? Number.NaN) - value;
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  let found = Number.NaN;
  let [before, beforeExcess] = [Number.NaN, Number.NaN];
  for (const travel of evenly(low, high, HEIGHTS)) {
    const now = excess(travel);
    if (!Number.isFinite(now)) continue;
    [least, most] = [Math.min(least, now + value), Math.max(most, now + value)];
    const isCrossed = now === 0 || now < 0 !== beforeExcess < 0;
    if (isCrossed && (now === 0 || Number.isFinite(before))) {
      const root = now === 0 ? travel : rootBetween(excess, before, travel);
      if (!(Math.abs(root) >= Math.abs(found))) found = root;
    }
    [before, beforeExcess] = [travel, now];
  }
  if (Number.isFinite(found)) return { ok: true, travel: found };
  return least <= most ? { ok: false, least, most } : { ok: false, least: null, most: null };
}
