import type { Model } from "../../../studies/model/model.ts";
import { type GapEntry, gapsAt } from "../../../studies/reports/gapsAt.ts";
import type { Side } from "../../../suspension/frontEnd.ts";
import type { SolvedPose } from "../../../suspension/solvePose.ts";

/** The least gap to a body part on one side at a pose: what a picture of wheel and body can show. null without any. */
export function nearestBodyGap(model: Model, pose: SolvedPose, side: Side): GapEntry | null {
  const body = new Set(model.setup.truck.body.map(({ name }) => name));
  return gapsAt(model, pose).reduce<GapEntry | null>(
    (nearest, entry) =>
      entry.side === side && body.has(entry.part) && (nearest === null || entry.gap < nearest.gap)
        ? entry
        : nearest,
    null,
  );
}
