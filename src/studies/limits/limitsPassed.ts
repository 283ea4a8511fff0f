import { armAngleFor } from "../../suspension/armAngle.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import type { Model } from "../model/model.ts";
import { Budget } from "../numeric/budget.ts";
import { KEPT } from "./frontEndLimit.ts";
import { keptAllOver } from "./keptAllOver.ts";
import { LimitBorders } from "./limitBorders.ts";
import { LimitCell } from "./limitCell.ts";
import { type WorstMargin, worstMargin } from "./worstMargin.ts";

/** The least margin of one limit over all travel and both locks, and where it is first passed. mm, radians. */
export interface LimitOverRange extends WorstMargin {
  readonly side: Side;
  readonly name: string;
  readonly measure: "length" | "angle";
  readonly range: number;
  /** Null where no pose passes it. */
  readonly starts: LimitStarts | null;
  /** The budget was spent first: `bound` is what was reached, and a start that is null was not looked for to the end. */
  readonly cutShort?: true;
}

/** Where a limit is first passed; each null where it is not. */
export interface LimitStarts {
  /** Travel, mm, from 0 into bump and into droop, straight ahead. Proven: nothing between passes it. */
  readonly bump: number | null;
  readonly droop: number | null;
  /** The least steer to the left and to the right that passes it, at the heights looked at (`HEIGHTS`). */
  readonly left: SteerStart | null;
  readonly right: SteerStart | null;
}

export interface SteerStart {
  readonly steer: number;
  readonly travel: number;
}

/** Of what is left of a budget one limit has this part at least. */
const MOST_SHARES = 3;

/** Heights, full droop to full bump, at which the least steer is looked for; at each one it is proven. */
const HEIGHTS = 33;

/** Share of a steer that two heights may differ by and be taken as one: what a march leaves open. */
const ALIKE = 2 ** -16;

/** How far the proven bound may stay below the margin found: a hundredth of a degree, a twentieth of a millimeter. */
const ANGLE_TOLERANCE = (0.01 * Math.PI) / 180;
const LENGTH_TOLERANCE = 0.05;

/** The travel both wheels can follow straight ahead, of what the setup asks for; mm. @param alone that wheel for itself */
export function limitTravel(
  { setup, frontEnd }: Model,
  alone: Side | null = null,
): { readonly low: number; readonly high: number } {
  const sides = alone === null ? [frontEnd.left, frontEnd.right] : [frontEnd[alone]];
  return {
    low: Math.max(setup.travel.droop, ...sides.map(({ reach }) => reach.droop.travel)),
    high: Math.min(setup.travel.bump, ...sides.map(({ reach }) => reach.bump.travel)),
  };
}

/**
 * Every limit of both sides over the setup's travel and both locks, left side first: the least margin with its proven
 * bound, and where it is first passed. Empty when the setup gives no limit.
 */
export function limitsOverRange(model: Model, budget: Budget = Budget.endless()): LimitOverRange[] {
  return searched(model, Number.POSITIVE_INFINITY, false, budget);
}

function searched(model: Model, enough: number, aloneSides: boolean, budget: Budget): LimitOverRange[] {
  const found: LimitOverRange[] = [];
  for (const side of ["left", "right"] as const) {
    if (side === "right" && model.mirrored) {
      found.push(...found.map(mirrored));
      break;
    }
    const cell = new LimitCell(model, side);
    const { low, high } = limitTravel(model, aloneSides ? side : null);
    const range = { armLow: armAngleFor(cell.side, low), armHigh: armAngleFor(cell.side, high) };
    // Of one that is kept, that is all there is to prove.
    const kept = enough < Number.POSITIVE_INFINITY ? keptAllOver(cell, range, budget) : null;
    for (const [i, { name, measure, range: whole }] of cell.limits.entries()) {
      if (kept?.has(i)) continue;
      const tolerance = measure === "angle" ? ANGLE_TOLERANCE : LENGTH_TOLERANCE;
      const sidesLeft = side === "left" && !model.mirrored ? 2 : 1;
      // One that is long has a third of what is left, so that it need not go short while the others take little.
      const share = budget.share(Math.min(MOST_SHARES, sidesLeft * cell.limits.length - i));
      const worst = worstMargin(cell, i, range, tolerance, enough, share);
      if (worst === null) continue;
      const borders = new LimitBorders(model, share);
      const starts = worst.margin < -KEPT ? startsOf(borders, side, i, low, high) : null;
      const cutShort = share.cut ? { cutShort: true as const } : {};
      found.push({ side, name, measure, range: whole, ...worst, starts, ...cutShort });
    }
  }
  return found;
}

/** Whether some pose passes it, rounding aside. */
export function isPassed({ margin }: LimitOverRange): boolean {
  return margin < -KEPT;
}

/** Whether some pose passes it, or the budget was spent before it was proven that none does. */
export function mayBePassed(limit: LimitOverRange): boolean {
  return isPassed(limit) || (limit.cutShort === true && limit.bound < -KEPT);
}

/**
 * Those of them that some pose passes, and those of which the budget let nothing be proven (`isPassed` parts them).
 * @param aloneSides each wheel for itself, as far as it can follow alone
 */
export function limitsPassed(
  model: Model,
  aloneSides = false,
  budget: Budget = Budget.endless(),
): LimitOverRange[] {
  return searched(model, -KEPT, aloneSides, budget).filter(mayBePassed);
}

function startsOf(borders: LimitBorders, side: Side, limit: number, low: number, high: number): LimitStarts {
  const along = (to: number) => {
    if (to === 0) return null;
    const border = borders.alongTravel(0, 0, to, { limit, side });
    return border.stop === "limit" ? border.at : null;
  };
  return {
    bump: along(high),
    droop: along(low),
    left: leastSteer(borders, side, limit, low, high, 1),
    right: leastSteer(borders, side, limit, low, high, -1),
  };
}

function leastSteer(
  borders: LimitBorders,
  side: Side,
  limit: number,
  low: number,
  high: number,
  lock: 1 | -1,
): SteerStart | null {
  let least: SteerStart | null = null;
  for (let i = 0; i < HEIGHTS; i++) {
    const travel = low + ((high - low) * i) / (HEIGHTS - 1);
    // As far as the least found, and no farther: beyond it this height tells nothing.
    const to = least === null ? lock : least.steer * (1 - ALIKE);
    // Cheaper than the way there, which ends in ever shorter stretches before the border of reach.
    if (borders.keepsAlongSteer(travel, to, { limit, side })) continue;
    const border = borders.alongSteer(travel, to, { limit, side });
    // What is passed straight ahead already is told by travel.
    if (border.stop !== "limit" || border.at === 0) continue;
    if (least === null || Math.abs(border.at) < Math.abs(least.steer)) least = { steer: border.at, travel };
  }
  return least;
}

function mirrored(left: LimitOverRange): LimitOverRange {
  const turned = (start: SteerStart | null) => (start === null ? null : { ...start, steer: -start.steer });
  const { starts, steer } = left;
  return {
    ...left,
    side: "right",
    steer: steer === 0 ? 0 : -steer,
    starts: starts && { ...starts, left: turned(starts.right), right: turned(starts.left) },
  };
}
