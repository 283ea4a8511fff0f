import { armAngleFor } from "../../suspension/armAngle.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { jointOf } from "../../suspension/poseStatus.ts";
import { type OutOfReach, solvePose } from "../../suspension/solvePose.ts";
import type { Model } from "../model/model.ts";
import { Budget } from "../numeric/budget.ts";
import { evenly } from "../numeric/evenly.ts";
import { type LimitBorder, LimitBorders } from "./limitBorders.ts";
import { LimitCell } from "./limitCell.ts";
import { notChecked } from "./limitsOn.ts";
import { isPassed, type LimitOverRange, limitsOverRange, limitTravel } from "./limitsPassed.ts";

/** One limit at one pose; mm or radians. */
export interface LimitMargin {
  readonly side: Side;
  readonly name: string;
  readonly measure: "length" | "angle";
  /** ≥ 0 while the limit is kept. */
  readonly margin: number;
  /** Margin ÷ the limit's range: what is left of it, 1 = all. */
  readonly share: number;
}

/** Every limit at one pose, the one with the least share left first. */
export type LimitPose =
  | {
      readonly ok: true;
      readonly travel: number;
      readonly steer: number;
      readonly margins: readonly LimitMargin[];
    }
  | {
      readonly ok: false;
      readonly travel: number;
      readonly steer: number;
      readonly side: Side;
      readonly joint: string;
    };

/** What is met first on the way from a stance. `at`: travel, mm, or steer. */
export interface BindsFirst {
  readonly bump: LimitBorder;
  readonly droop: LimitBorder;
  readonly left: LimitBorder;
  readonly right: LimitBorder;
}

export interface LimitStance {
  readonly name: string;
  readonly travel: number;
  /** Straight ahead, full left lock, full right lock. */
  readonly poses: readonly [LimitPose, LimitPose, LimitPose];
  /** From this height, straight ahead; null where the stance itself passes a limit, or is out of reach. */
  readonly first: BindsFirst | null;
}

/** How far the steering goes at a height, and how far travel goes at a steer: the borders of what can be reached. */
export interface ReachableRegion {
  readonly atHeights: readonly {
    readonly travel: number;
    /** What is passed straight ahead already; null = nothing. */
    readonly blocked: { readonly side: Side; readonly name: string } | null;
    readonly left: LimitBorder;
    readonly right: LimitBorder;
  }[];
  readonly atSteers: readonly {
    readonly steer: number;
    /** From travel 0; both null where a limit is passed there already. */
    readonly bump: LimitBorder | null;
    readonly droop: LimitBorder | null;
    readonly blocked: { readonly side: Side; readonly name: string } | null;
  }[];
}

export interface LimitsReport {
  readonly stances: readonly LimitStance[];
  /** Each limit over all travel and both locks, left side first. */
  readonly overall: readonly LimitOverRange[];
  readonly region: ReachableRegion;
  /** Names of what the setup does not limit. */
  readonly notChecked: readonly string[];
  /** Some pose of the range passes a limit. */
  readonly passed: boolean;
  /** The budget was spent first: margins are proven as far as their bounds say, ways as far as they are told. */
  readonly cutShort?: true;
}

/** Heights and steers the region is told at unless asked otherwise. */
const ROWS = 15;
const COLS = 11;

/**
 * What the front end's joints, stops, shocks and air springs allow: margins at each stance (the measured height when
 * the setup names none), ranked; each limit over the whole range; the reachable region and what sets each border of it.
 * Between the heights and steers of the region nothing is claimed; each of its borders is proven along its own line.
 */
export function limitsOf(
  model: Model,
  budget: Budget = Budget.endless(),
  rows = ROWS,
  cols = COLS,
): LimitsReport {
  const cells = { left: new LimitCell(model, "left"), right: new LimitCell(model, "right") };
  const named = model.setup.stances.length > 0 ? model.setup.stances : [{ name: "as measured", travel: 0 }];
  const overall = limitsOverRange(model, budget.share(2));
  const borders = new LimitBorders(model, budget.share(1));
  const report = {
    stances: named.map(({ name, travel }) => ({
      name,
      travel,
      poses: [0, 1, -1].map((steer) => poseOf(model, cells, travel, steer)) as [
        LimitPose,
        LimitPose,
        LimitPose,
      ],
      first: firstFrom(model, borders, travel),
    })),
    overall,
    region: regionOf(model, borders, rows, cols),
    notChecked: notChecked(model.setup),
    passed: overall.some(isPassed),
  };
  return budget.cut ? { ...report, cutShort: true } : report;
}

/** Every limit of both sides at one pose, ranked. */
export function limitMargins(model: Model, travel: number, steer: number): LimitPose {
  return limitReader(model)(travel, steer);
}

/** Reads every limit at many poses of one model: its cells are made once. */
export function limitReader(model: Model): (travel: number, steer: number) => LimitPose {
  const cells = { left: new LimitCell(model, "left"), right: new LimitCell(model, "right") };
  return (travel, steer) => poseOf(model, cells, travel, steer);
}

function poseOf(
  model: Model,
  cells: Readonly<Record<Side, LimitCell>>,
  travel: number,
  steer: number,
): LimitPose {
  const solved = solvePose(model.frontEnd, travel, steer);
  if (!solved.ok) return outOfReach(solved, travel, steer);
  const margins: LimitMargin[] = [];
  for (const side of ["left", "right"] as const) {
    const cell = cells[side];
    cell.put(armAngleFor(cell.side, travel), steer);
    for (const [i, { name, measure, range }] of cell.limits.entries()) {
      const margin = cell.margin(i);
      margins.push({ side, name, measure, margin, share: margin / range });
    }
  }
  margins.sort((a, b) => a.share - b.share);
  return { ok: true, travel, steer, margins };
}

function outOfReach({ side, status }: OutOfReach, travel: number, steer: number): LimitPose {
  return { ok: false, travel, steer, side, joint: jointOf(status) };
}

function firstFrom(model: Model, borders: LimitBorders, travel: number): BindsFirst | null {
  if (!solvePose(model.frontEnd, travel, 0).ok || borders.passedAt(travel, 0) !== null) return null;
  const { low, high } = limitTravel(model);
  const toward = (end: number): LimitBorder =>
    travel === end ? { stop: "end", at: end } : borders.alongTravel(0, travel, end);
  return {
    // A stance may lie outside the setup's own travel.
    bump: toward(Math.max(travel, high)),
    droop: toward(Math.min(travel, low)),
    left: borders.alongSteer(travel, 1),
    right: borders.alongSteer(travel, -1),
  };
}

function regionOf(model: Model, borders: LimitBorders, rows: number, cols: number): ReachableRegion {
  const { low, high } = limitTravel(model);
  return {
    atHeights: Array.from(evenly(low, high, rows), (travel) => ({
      travel,
      blocked: borders.passedAt(travel, 0),
      left: borders.alongSteer(travel, 1),
      right: borders.alongSteer(travel, -1),
    })),
    atSteers: Array.from(evenly(-1, 1, cols), (steer) => {
      const blocked = borders.passedAt(0, steer);
      const stands = blocked === null && solvePose(model.frontEnd, 0, steer).ok;
      return {
        steer,
        blocked,
        bump: stands ? borders.alongTravel(steer, 0, high) : null,
        droop: stands ? borders.alongTravel(steer, 0, low) : null,
      };
    }),
  };
}
