import { GAP_ROW } from "../../src/gaps/partGap.ts";
import type { Model } from "../../src/studies/model/model.ts";
import { pairGapTo } from "../../src/studies/model/pairs.ts";
import type { CheckEntry } from "../../src/studies/reports/check.ts";
import { solvePose } from "../../src/suspension/solvePose.ts";

/** The least gap that sampling finds: never less than the true one. */
export interface SampledWorst {
  readonly gap: number;
  readonly travel: number;
  readonly steer: number;
  /** Poses looked at that the linkage could take. */
  readonly poses: number;
  /** Some steer of some height was out of reach, so the border of reach was looked at too. */
  readonly border: boolean;
}

/** Grid points along travel and along steer. */
export interface Grid {
  readonly travels: number;
  readonly steers: number;
}

/**
 * The worst gap of an entry's part over travel × steer by a grid with its ends, the border of reach where
 * there is one, and a shrinking cross about the best sample: the slow obvious way, with no bound at all.
 */
export function sampledWorst(
  model: Model,
  entry: Pick<CheckEntry, "part" | "side">,
  grid: Grid,
): SampledWorst {
  const pair = model.pairs.find((p) => p.side === entry.side && p.name === entry.part);
  if (pair === undefined) throw new RangeError(`sampledWorst: no part ${entry.part} on the ${entry.side}`);
  const { droop, bump } = model.setup.travel;
  const row = new Float64Array(GAP_ROW);
  const best = { gap: Number.POSITIVE_INFINITY, travel: 0, steer: 0, poses: 0, border: false };
  const look = (travel: number, steer: number): boolean => {
    const pose = solvePose(model.frontEnd, travel, steer);
    if (!pose.ok) {
      if (pose.along !== "steer" || Math.abs(pose.startsAt) === Math.abs(steer)) return false;
      best.border = true;
      return look(travel, pose.startsAt);
    }
    best.poses++;
    // Only a gap below the least so far matters, which a search can tell sooner.
    const gap = pairGapTo(row, 0, pair, pose[entry.side].row, 0, best.gap);
    if (!(gap < best.gap)) return false;
    Object.assign(best, { gap, travel, steer });
    return true;
  };
  for (let i = 0; i < grid.travels; i++) {
    const travel = droop + ((bump - droop) * i) / (grid.travels - 1);
    for (let j = 0; j < grid.steers; j++) look(travel, -1 + (2 * j) / (grid.steers - 1));
  }
  let high = (bump - droop) / (grid.travels - 1);
  let wide = 2 / (grid.steers - 1);
  while (high > 1e-3 || wide > 1e-5) {
    let moved = false;
    const { travel, steer } = best;
    for (let i = -1; i <= 1; i++) {
      for (let j = -1; j <= 1; j++) {
        const to = Math.min(bump, Math.max(droop, travel + i * high));
        if (look(to, Math.min(1, Math.max(-1, steer + j * wide)))) moved = true;
      }
    }
    if (!moved) {
      high *= 0.5;
      wide *= 0.5;
    }
  }
  return best;
}
