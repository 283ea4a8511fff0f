import { solvePose } from "../../suspension/solvePose.ts";
import type { Model } from "../model/model.ts";
import { ownPairs } from "../reports/check.ts";
import { gapsAt } from "../reports/gapsAt.ts";

/**
 * Places in a model's list of the pairs whose gaps are asked for, a mirrored truck's right side left out: what rides together first,
 * since its search costs nothing; then by how near it comes at a few poses.
 */
export function nearestFirst(model: Model): readonly number[] {
  const { droop, bump } = model.setup.travel;
  const least = model.pairs.map(() => Number.POSITIVE_INFINITY);
  for (const travel of [droop, 0, bump])
    for (const steer of [-1, 0, 1]) {
      const pose = solvePose(model.frontEnd, travel, steer);
      if (!pose.ok) continue;
      for (const [i, { gap }] of gapsAt(model, pose).entries()) least[i] = Math.min(least[i]!, gap);
    }
  const rides = (at: number) => (model.pairs[at]!.kind === "together" ? 0 : 1);
  return ownPairs(model)
    .map((pair) => model.pairs.indexOf(pair))
    .sort((a, b) => rides(a) - rides(b) || least[a]! - least[b]!);
}
