import { requireFinite } from "../../geometry/requireFinite.ts";
import type { Vec3 } from "../../geometry/vec.ts";
import { armAngleFor } from "../../suspension/armAngle.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { POSE, POSE_ROW, poseRowTo } from "../../suspension/poseRow.ts";
import { PoseStatus } from "../../suspension/poseStatus.ts";
import { INNER_ENDS_ROW } from "../../suspension/steering.ts";
import type { Model } from "../model/model.ts";
import { type EnvelopeRange, reachableTravel } from "./envelopeRange.ts";

/** Wheel center and unit axis of one pose. */
export const WHEEL_ROW = 6;

/**
 * Wheels of one side over a range of poses, a grid of `rows` heights × `columns` steers. Each row spans the
 * steer that is in reach at its height. Left-hand frame of the side, mm.
 */
export interface WheelTable {
  readonly rows: number;
  readonly columns: number;
  /** `WHEEL_ROW` numbers a pose, row by row. */
  readonly wheels: Float64Array;
  /** Lower arm angle of each row, rad. */
  readonly arms: Float64Array;
  /** Steer of each pose. */
  readonly steers: Float64Array;
  /** mm. No point of the ring moves farther than about this from one pose to the next. */
  readonly spacing: number;
}

/** Heights and steers tried to see how far the wheel moves. */
const PROBES = 9;
/** No more poses a row or a column than this: the wheel would have to move meters. */
const MOST = 400;
/** Steer to which the border of reach is bisected. */
const BORDER_STEER = 1e-9;

const ends = new Float64Array(INNER_ENDS_ROW);
const pose = new Float64Array(POSE_ROW);

/**
 * Solves a grid of poses so that the ring moves about `spacing` mm from each to the next. A steer counts as
 * in reach when both wheels can take it all the way from straight ahead.
 * @returns null when no pose of the range is in reach.
 */
export function wheelTableOf(
  model: Model,
  side: Side,
  range: EnvelopeRange,
  spacing: number,
): WheelTable | null {
  const travel = reachableTravel(model, range);
  if (travel === null) return null;
  const coarse = tableOf(model, side, range, travel, travel.low < travel.high ? PROBES : 1, steps(range));
  if (coarse === null) return null;
  const radius = model.ring.ballRadius;
  const rows = countFor(coarse, radius, spacing, true);
  const columns = countFor(coarse, radius, spacing, false);
  const table = tableOf(model, side, range, travel, rows, columns);
  return table === null ? null : { ...table, spacing };
}

function steps(range: EnvelopeRange): number {
  return range.steerLow < range.steerHigh ? 2 * PROBES + 1 : 1;
}

/** Poses needed down a column (`down`) or along a row so that no step is larger than `spacing`. */
function countFor(table: WheelTable, radius: number, spacing: number, down: boolean): number {
  const { rows, columns, wheels } = table;
  const [lines, count] = down ? [columns, rows] : [rows, columns];
  if (count === 1) return 1;
  let most = 0;
  for (let line = 0; line < lines; line++) {
    for (let i = 1; i < count; i++) {
      const b = (down ? i * columns + line : line * columns + i) * WHEEL_ROW;
      const a = b - (down ? columns : 1) * WHEEL_ROW;
      let slide = 0;
      let turn = 0;
      for (let k = 0; k < 3; k++) {
        slide += (wheels[b + k]! - wheels[a + k]!) ** 2;
        turn += (wheels[b + 3 + k]! - wheels[a + 3 + k]!) ** 2;
      }
      most = Math.max(most, Math.sqrt(slide) + radius * Math.sqrt(turn));
    }
  }
  const needed = Math.ceil(((count - 1) * most) / spacing) + 1;
  return Math.min(MOST, Math.max(2, needed));
}

function tableOf(
  model: Model,
  side: Side,
  range: EnvelopeRange,
  travel: { readonly low: number; readonly high: number },
  rows: number,
  columns: number,
): WheelTable | null {
  const wheels = new Float64Array(rows * columns * WHEEL_ROW);
  const arms = new Float64Array(rows);
  const steers = new Float64Array(rows * columns);
  const low = steerEnds(model, travel, range.steerLow, range, rows);
  const high = steerEnds(model, travel, range.steerHigh, range, rows);
  if (low === null || high === null) return null;
  for (let i = 0; i < rows; i++) {
    const arm = armAngleFor(model.frontEnd[side], heightAt(travel, i, rows));
    arms[i] = arm;
    for (let j = 0; j < columns; j++) {
      const k = i * columns + j;
      const share = columns === 1 ? 0 : j / (columns - 1);
      // Where the border of reach ends a row the knuckle turns like a square root there: cosine steps.
      const cut = low[i]! > range.steerLow || high[i]! < range.steerHigh;
      const eased = cut ? 0.5 - 0.5 * Math.cos(Math.PI * share) : share;
      const steer = low[i]! + (high[i]! - low[i]!) * eased;
      steers[k] = steer;
      if (!wheelAt(model, side, arm, steer)) return null;
      for (let axis = 0; axis < WHEEL_ROW; axis++)
        wheels[k * WHEEL_ROW + axis] = pose[POSE.wheelCenter + axis]!;
    }
  }
  return { rows, columns, wheels, arms, steers, spacing: 0 };
}

function heightAt(travel: { low: number; high: number }, row: number, rows: number): number {
  return rows === 1 ? travel.low : travel.low + ((travel.high - travel.low) * row) / (rows - 1);
}

/** For each row the steer nearest to `wanted` that both wheels can take coming from straight ahead. */
function steerEnds(
  model: Model,
  travel: { low: number; high: number },
  wanted: number,
  range: EnvelopeRange,
  rows: number,
): Float64Array | null {
  requireFinite("steerEnds", wanted, travel.low, travel.high);
  const found = new Float64Array(rows);
  for (let i = 0; i < rows; i++) {
    const height = heightAt(travel, i, rows);
    const angles = [
      armAngleFor(model.frontEnd.left, height),
      armAngleFor(model.frontEnd.right, height),
    ] as const;
    let good = wanted;
    if (!bothAt(model, angles, wanted)) {
      good = 0;
      let bad = wanted;
      while (Math.abs(bad - good) > BORDER_STEER) {
        const middle = 0.5 * (good + bad);
        if (bothAt(model, angles, middle)) good = middle;
        else bad = middle;
      }
    }
    if (good < range.steerLow || good > range.steerHigh) return null;
    found[i] = good;
  }
  return found;
}

function bothAt(model: Model, [left, right]: readonly [number, number], steer: number): boolean {
  return wheelAt(model, "left", left, steer) && wheelAt(model, "right", right, steer);
}

/** Solves one pose of one side into scratch. */
function wheelAt(model: Model, side: Side, arm: number, steer: number): boolean {
  if (model.frontEnd.steering.innerEndsTo(ends, steer) !== PoseStatus.Ok) return false;
  const at = side === "left" ? 0 : 3;
  const inner: Vec3 = [ends[at]!, ends[at + 1]!, ends[at + 2]!];
  const { row } = model.frontEnd[side];
  return poseRowTo(pose, 0, row, Math.cos(arm), Math.sin(arm), ...inner) === PoseStatus.Ok;
}
