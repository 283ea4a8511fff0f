import type { Side } from "../../suspension/frontEnd.ts";
import { type SolvedPose, solvePose } from "../../suspension/solvePose.ts";
import { canStand } from "../limits/heightWay.ts";
import type { NoLimits, SteerLimits } from "../map/steerLimits.ts";
import type { Model } from "../model/model.ts";
import { type GapEntry, gapsAt } from "../reports/gapsAt.ts";
import { partWords } from "./nearestSurface.ts";
import { firstStop, type SteerStop, steerStop } from "./stopFacts.ts";

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

/** What is marked on the picture of one wheel. */
export interface PictureMark {
  readonly entry: GapEntry;
  /** What a sentence calls the part. */
  readonly part: string;
}

/** What a picture tells of one truck's wheel, before it is drawn. */
export interface PictureFacts {
  /** The truck can come to the pose drawn: reach and limits let it. */
  readonly stands: boolean;
  /** null where nothing is marked: no gap on that side, or a pose it cannot come to. */
  readonly mark: PictureMark | null;
}

/**
 * What rides with the wheel and rubs is marked before all else, then the pair named, else the nearest body part; nothing
 * at a pose the truck cannot come to. @param named the pair whose gap is asked for; null = none
 */
export function pictureFacts(model: Model, pose: SolvedPose, side: Side, named: string | null): PictureFacts {
  const stands = canStand(model, pose.travel, pose.steer);
  const entry = stands ? markedGap(model, pose, side, named) : null;
  return { stands, mark: entry && { entry, part: partWords(model, side, entry.part) } };
}

function markedGap(model: Model, pose: SolvedPose, side: Side, named: string | null): GapEntry | null {
  const gaps = gapsAt(model, pose).filter((entry) => entry.side === side);
  const always = gaps.filter(({ together, gap }) => together && gap < 0).sort((a, b) => a.gap - b.gap);
  return always[0] ?? gaps.find((entry) => entry.part === named) ?? nearestBodyGap(model, pose, side);
}
