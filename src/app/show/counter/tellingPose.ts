import type { NoLimits, SteerLimits } from "../../../studies/map/steerLimits.ts";
import type { Model } from "../../../studies/model/model.ts";
import { firstStop } from "../../../studies/wording/firstStop.ts";
import { type SteerStop, steerStop } from "../../../studies/wording/stopFacts.ts";
import type { Side } from "../../../suspension/frontEnd.ts";
import { solvePose } from "../../../suspension/solvePose.ts";
import { nearestBodyGap } from "./nearestBodyGap.ts";

/** The steer worth a picture at a height, and the wheel to look at there. */
export interface TellingPose {
  readonly side: Side;
  /** −1 … +1. */
  readonly steer: number;
  /** The touch met there first, as it is told; null = none is, and it is the lock where the left wheel is nearest. */
  readonly touches: SteerStop | null;
}

/** One truck and how far it steers at the height, null = not known yet. */
export interface Steered {
  readonly model: Model;
  readonly steering: SteerLimits | NoLimits | null;
}

/** Just inside a border, so that it can still be solved. */
const INSIDE = 1 - 1e-6;

/** Where the first of the trucks touches first; where none does, the lock at which a left wheel is nearest. @param travel mm */
export function tellingPose(trucks: readonly Steered[], travel: number): TellingPose {
  let first: TellingPose | null = null;
  for (const { model, steering } of trucks) {
    if (!steering?.ok) continue;
    const stop = firstStop(steering);
    // What rides with the wheel and rubs is marked at any steer.
    if (stop.stop !== "touch" || stop.together) continue;
    if (first === null || Math.abs(stop.at) < Math.abs(first.steer)) {
      const touches = steerStop(stop, travel, model);
      first = { side: stop.side, steer: stop.at * INSIDE, touches };
    }
  }
  return first ?? nearestLock(trucks, travel);
}

function nearestLock(trucks: readonly Steered[], travel: number): TellingPose {
  let nearest: TellingPose = { side: "left", steer: 0, touches: null };
  let least = Infinity;
  for (const way of [1, -1]) {
    const ends = trucks.map(({ steering }) =>
      steering?.ok ? Math.abs(steering[way > 0 ? "leftTurn" : "rightTurn"].touch.either.at) : 1,
    );
    const end = Math.min(...ends);
    const steer = way * (end < 1 ? end * INSIDE : 1);
    for (const { model } of trucks) {
      const pose = solvePose(model.frontEnd, travel, steer);
      if (!pose.ok) continue;
      const gap = nearestBodyGap(model, pose, "left")?.gap ?? Infinity;
      if (gap >= least) continue;
      least = gap;
      nearest = { side: "left", steer, touches: null };
    }
  }
  return nearest;
}
