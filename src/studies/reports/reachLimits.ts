import { armAngleFor } from "../../suspension/armAngle.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { POSE_ROW, poseRowTo } from "../../suspension/poseRow.ts";
import { jointOf, PoseStatus } from "../../suspension/poseStatus.ts";
import { INNER_ENDS_ROW } from "../../suspension/steering.ts";
import type { Model } from "../model/model.ts";

/** A joint that cannot follow somewhere within the travel and steer a setup asks for. */
export interface ReachLimit {
  readonly side: Side;
  readonly joint: string;
  readonly along: "travel" | "steer";
  /** The last value that closes: travel in mm, or steer −1 … +1. */
  readonly startsAt: number;
  /** For a limit along the steering: the travel, mm, at which it is tightest. */
  readonly travel: number;
}

/** Heights at which the steering's reach is looked at between full droop and full bump. */
const HEIGHTS = 33;

/**
 * Where the linkage cannot follow: ends of travel with the steering straight ahead, and for each lock the
 * least steer reached at the heights looked at (a table of 33 heights, each border bisected).
 */
export function reachLimits(model: Model): ReachLimit[] {
  const limits: ReachLimit[] = [];
  const { droop, bump } = model.setup.travel;
  for (const side of ["left", "right"] as const) {
    const { reach } = model.frontEnd[side];
    for (const [asked, end] of [
      [droop, reach.droop],
      [bump, reach.bump],
    ] as const) {
      if (Math.abs(asked) > Math.abs(end.travel)) {
        limits.push({
          side,
          joint: jointOf(end.status),
          along: "travel",
          startsAt: end.travel,
          travel: end.travel,
        });
      }
    }
    for (const lock of [-1, 1]) {
      const limit = tightestSteer(model, side, lock);
      if (limit !== null) limits.push(limit);
    }
  }
  return limits;
}

function tightestSteer(model: Model, side: Side, lock: number): ReachLimit | null {
  const sideModel = model.frontEnd[side];
  const { steering } = model.frontEnd;
  const at = side === "left" ? 0 : 3;
  const ends = new Float64Array(INNER_ENDS_ROW);
  const pose = new Float64Array(POSE_ROW);
  const low = Math.max(model.setup.travel.droop, sideModel.reach.droop.travel);
  const high = Math.min(model.setup.travel.bump, sideModel.reach.bump.travel);
  let tightest: ReachLimit | null = null;
  for (let i = 0; i < HEIGHTS; i++) {
    const travel = low + ((high - low) * i) / (HEIGHTS - 1);
    const angle = armAngleFor(sideModel, travel);
    const status = (steer: number) => {
      const ended = steering.innerEndsTo(ends, steer);
      if (ended !== PoseStatus.Ok) return ended;
      return poseRowTo(
        pose,
        0,
        sideModel.row,
        Math.cos(angle),
        Math.sin(angle),
        ends[at]!,
        ends[at + 1]!,
        ends[at + 2]!,
      );
    };
    const stopped = status(lock);
    if (stopped === PoseStatus.Ok) continue;
    let good = 0;
    let bad = lock;
    while (Math.abs(bad - good) > 1e-9) {
      const middle = 0.5 * (good + bad);
      if (status(middle) === PoseStatus.Ok) good = middle;
      else bad = middle;
    }
    if (tightest === null || Math.abs(good) < Math.abs(tightest.startsAt)) {
      tightest = { side, joint: jointOf(stopped), along: "steer", startsAt: good, travel };
    }
  }
  return tightest;
}
