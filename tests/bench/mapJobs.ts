import { type ClearanceMap, MAP_CELLS, mapOf } from "../../src/studies/map/clearanceMap.ts";
import { lowestTravels } from "../../src/studies/map/lowestTravels.ts";
import { steerLimits } from "../../src/studies/map/steerLimits.ts";
import type { Model } from "../../src/studies/model/model.ts";
import type { Job } from "./job.ts";

/** The full map of both sides, and both curves at its rows and columns. */
export function mapJobs(model: Model): Job[] {
  const { travels, steers } = mapped(model);
  return [
    {
      name: `mapOf ${MAP_CELLS} × ${MAP_CELLS}, both sides`,
      each: `map (${model.pairs.length} pairs)`,
      size: 1,
      repeats: 30,
      aimMs: 1000 / 60,
      run: () => sumOf(mapped(model)),
    },
    {
      name: "how far it steers at each height, proven",
      each: "height (both turns, both wheels)",
      size: travels.length,
      repeats: 5,
      run() {
        let sum = 0;
        for (const row of steerLimits(model, travels) ?? []) {
          if (!row.ok) continue;
          for (const { touch, allowance } of [row.leftTurn, row.rightTurn]) {
            sum += Math.abs(touch.left.at) + Math.abs(touch.right.at) + Math.abs(allowance.either.at);
          }
        }
        return sum;
      },
    },
    {
      name: "how low it goes at each steering input, proven",
      each: "steering input (both wheels)",
      size: steers.length,
      repeats: 5,
      run() {
        let sum = 0;
        for (const row of lowestTravels(model, steers) ?? []) {
          if (row.ok) sum += row.touch.left.at + row.touch.right.at + row.allowance.either.at;
        }
        return sum;
      },
    },
  ];
}

function mapped(model: Model): ClearanceMap {
  const map = mapOf(model);
  if (map === null) throw new Error("mapOf: stopped without being asked to");
  return map;
}

/** Gaps in reach and their points: what a wrong pair or a skipped cell would change. */
function sumOf({ left, right }: ClearanceMap): number {
  let sum = 0;
  for (const { gap, pair, point } of [left, right]) {
    for (let cell = 0; cell < gap.length; cell++) {
      if (pair[cell]! >= 0) sum += gap[cell]! + 1e-3 * point[3 * cell + 2]!;
    }
  }
  return sum;
}
