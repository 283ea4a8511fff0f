import { GAP, GAP_ROW } from "../../gaps/partGap.ts";
import type { Vec3 } from "../../geometry/vec.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import type { LimitBorder } from "../limits/limitBorders.ts";
import type { Model } from "../model/model.ts";
import { pairGapTo } from "../model/pairs.ts";
import { onTruck } from "../reports/gapsAt.ts";
import { leastTogether } from "./pairTrack.ts";
import type { PoseCell } from "./poseCell.ts";

/**
 * How far one input of the pose (travel, mm, or steer) goes before something stops it. All from the start to `at` is
 * proven to keep the level asked for. mm, vehicle axes.
 */
export type Stop =
  | {
      /** A pair comes below the level, or so near it that the resolution cannot tell. */
      readonly stop: "touch";
      readonly at: number;
      readonly side: Side;
      /** The pair's name. */
      readonly part: string;
      /** Its gap just past `at`; not below the level when it only comes near: a near miss. */
      readonly gap: number;
      /** On the part, there. */
      readonly point: Vec3;
      /** It rides with the wheel: as near at every pose, so nothing of the way can be gone. */
      readonly together?: true;
    }
  /** A joint, stop, shock or air spring of either wheel meets its limit: `name`. */
  | { readonly stop: "limit"; readonly at: number; readonly side: Side; readonly name: string }
  /** The end of the range asked for: lock, or full bump. */
  | { readonly stop: "end"; readonly at: number }
  /** A joint cannot follow any farther. */
  | { readonly stop: "reach"; readonly at: number; readonly side: Side; readonly joint: string }
  /** Right at the end of an arm's reach nothing is proven: what lies past `at` is not known. */
  | { readonly stop: "unproven"; readonly at: number };

type Touch = Extract<Stop, { stop: "touch" }>;

/** The stop of each wheel, and of the truck: whichever comes first. */
export interface WheelStops {
  readonly either: Stop;
  readonly left: Stop;
  readonly right: Stop;
}

/**
 * Stops of both wheels; of two alike a touch tells more, then the left wheel's.
 * @param way +1 when farther is more, −1 when farther is less.
 */
export function wheelStops(left: Stop, right: Stop, way: 1 | -1): WheelStops {
  const leftFirst =
    left.at === right.at ? left.stop === "touch" || right.stop !== "touch" : way * left.at < way * right.at;
  return { either: leftFirst ? left : right, left, right };
}

/**
 * Where a way ends that both its end and the limits of both wheels stop: whichever comes first.
 * @param way +1 when farther is more, −1 when farther is less. @param near this near the end nothing is told of limits
 * that cannot be proven: the end is told.
 */
export function limitedEnd(end: Stop, border: LimitBorder, way: 1 | -1, near: number): Stop {
  const before = way * (end.at - border.at);
  if (border.stop === "limit") return before > 0 ? border : end;
  return border.stop === "unproven" && before > near ? { stop: "unproven", at: border.at } : end;
}

/** Share of the range within which a touch is expected to go on below its level, else it is a near miss. */
const PAST_SHARE = 0.01;

/**
 * Tells of the pair that stops a march: its gap where it first passes the level within `PAST_SHARE` of the range,
 * else at the end of the stretch that could not be proven.
 * @param k the pair's place in the cell's track. @param place puts `cell` at an input; false where it has no pose.
 */
export function touchOf(
  model: Model,
  side: Side,
  cell: PoseCell,
  k: number,
  stretch: { readonly clearTo: number; readonly next: number; readonly to: number },
  level: number,
  place: (input: number) => boolean,
): Omit<Touch, "at"> {
  const pair = model.pairs[cell.track.numbers[k]!]!;
  const row = new Float64Array(GAP_ROW);
  const { clearTo, next, to } = stretch;
  const most = Math.abs(to - clearTo) * PAST_SHARE;
  place(next);
  let gap = pairGapTo(row, 0, pair, cell.pose, 0);
  for (let off = 2 * (next - clearTo); gap >= level && Math.abs(off) <= most; off *= 2) {
    if (!place(clearTo + off)) break;
    if (pairGapTo(row, 0, pair, cell.pose, 0, level) < level) gap = row[GAP.gap]!;
  }
  return { stop: "touch", side, part: pair.name, gap, point: onTruck(row, GAP.point, side) };
}

/** What rides together below a level, told where `cell` stands; null where nothing does. */
export function togetherTouch(
  model: Model,
  side: Side,
  cell: PoseCell,
  level: number,
): Omit<Touch, "at"> | null {
  const { pair: place, gap } = leastTogether(model, side);
  if (!(gap < level)) return null;
  const pair = model.pairs[place]!;
  const row = new Float64Array(GAP_ROW);
  pairGapTo(row, 0, pair, cell.pose, 0);
  return { stop: "touch", side, part: pair.name, gap, point: onTruck(row, GAP.point, side), together: true };
}
