import { armAngleFor } from "../../suspension/armAngle.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { jointOf, PoseStatus } from "../../suspension/poseStatus.ts";
import { type OutOfReach, solvePose } from "../../suspension/solvePose.ts";
import { type LimitBorders, limitBordersOf } from "../limits/limitBorders.ts";
import type { Model } from "../model/model.ts";
import { Budget } from "../numeric/budget.ts";
import { Look, type March, march } from "../numeric/march.ts";
import { PoseCell } from "./poseCell.ts";
import { limitedEnd, type Stop, togetherTouch, touchOf, type WheelStops, wheelStops } from "./stop.ts";

/** How far the wheels can be steered one way from straight ahead. `at` of a stop is steer, −1 … +1. */
export interface TurnLimits {
  /** Before a gap is below 0. */
  readonly touch: WheelStops;
  /** Before a gap is below the setup's allowance. */
  readonly allowance: WheelStops;
}

/** How far the wheels can be steered at one height. */
export interface SteerLimits {
  readonly ok: true;
  /** mm. */
  readonly travel: number;
  readonly leftTurn: TurnLimits;
  readonly rightTurn: TurnLimits;
}

/** A height or a steering angle at which the truck cannot stand even at the start. */
export interface NoLimits extends OutOfReach {
  readonly travel: number;
  readonly steer: number;
}

/**
 * Share of full lock below which a stretch is not halved again. A tire's shoulder moves by two thousandths of a
 * millimeter in it; where a gap closes at a tenth of that speed, the limit is still known to 1e-4 of full lock.
 */
const STEER_RESOLUTION = 2 ** -17;

/** Share of full lock: where a touch march gives up this near the border of reach, the border is what stops it. */
const AT_BORDER = 1e-6;

/**
 * At each height: how far the wheels can be steered from straight ahead, left and right, before something touches,
 * and before it comes nearer than the allowance; or before a limit of either wheel is passed. Proven: no steer in
 * between is skipped (`march`); a near miss that the resolution cannot tell from a touch counts as one. What rides
 * together below the level stops every way where it starts: no steer changes it.
 * @param travels mm. @param budget once it is spent, nothing is proven past where each has come.
 */
export function steerLimits(
  model: Model,
  travels: ArrayLike<number>,
  budget: Budget = Budget.endless(),
): (SteerLimits | NoLimits)[] {
  const search = new SteerSearch(model);
  const found: (SteerLimits | NoLimits)[] = [];
  for (let i = 0; i < travels.length; i++) {
    const travel = travels[i]!;
    const straight = solvePose(model.frontEnd, travel, 0);
    const share = budget.share(travels.length - i);
    found.push(straight.ok ? search.at(travel, share) : { ...straight, travel, steer: 0 });
  }
  return found;
}

class SteerSearch {
  private readonly cells: Readonly<Record<Side, PoseCell>>;
  private budget = Budget.endless();
  private borders: LimitBorders | null = null;
  private arms: Readonly<Record<Side, number>> = { left: 0, right: 0 };

  constructor(private readonly model: Model) {
    this.cells = { left: new PoseCell(model, "left"), right: new PoseCell(model, "right") };
  }

  at(travel: number, budget: Budget): SteerLimits {
    this.budget = budget;
    this.borders = limitBordersOf(this.model, budget);
    const { left, right } = this.model.frontEnd;
    this.arms = { left: armAngleFor(left, travel), right: armAngleFor(right, travel) };
    return { ok: true, travel, leftTurn: this.turn(travel, 1), rightTurn: this.turn(travel, -1) };
  }

  private turn(travel: number, way: 1 | -1): TurnLimits {
    const reached = this.end(way);
    const border = this.borders?.alongSteer(travel, way);
    const end = border === undefined ? reached : limitedEnd(reached, border, way, AT_BORDER);
    const allowance = {
      left: this.stop("left", 0, end, this.model.setup.allowance),
      right: this.stop("right", 0, end, this.model.setup.allowance),
    };
    // What keeps the allowance touches nothing.
    const touch = {
      left: this.stop("left", allowance.left.at, end, 0),
      right: this.stop("right", allowance.right.at, end, 0),
    };
    return {
      touch: wheelStops(touch.left, touch.right, way),
      allowance: wheelStops(allowance.left, allowance.right, way),
    };
  }

  /** Full lock that way, or the last steer both wheels can follow. */
  private end(way: 1 | -1): Stop {
    const ends = (["left", "right"] as const).map((side): Stop => {
      const { cells, arms } = this;
      const there = march(
        (steer, half) => (cells[side].exists(arms[side], 0, steer, half) ? Look.Clear : Look.Unproven),
        0,
        way,
        STEER_RESOLUTION,
        this.budget,
      );
      return there.found === Look.Clear ? { stop: "end", at: way } : this.border(side, way, there);
    });
    return ends[1]!.at * way < ends[0]!.at * way ? ends[1]! : ends[0]!;
  }

  /** Names the joint: the border is at most a hair past what is proven to exist. */
  private border(side: Side, way: 1 | -1, { clearTo, next }: March): Stop {
    for (let off = Math.abs(next - clearTo); off < AT_BORDER; off *= 2) {
      const status = this.cells[side].place(this.arms[side], clearTo + way * off);
      if (status !== PoseStatus.Ok) return { stop: "reach", at: clearTo, side, joint: jointOf(status) };
    }
    return { stop: "unproven", at: clearTo };
  }

  private stop(side: Side, from: number, end: Stop, level: number): Stop {
    const cell = this.cells[side];
    const arm = this.arms[side];
    cell.place(arm, 0);
    const always = togetherTouch(this.model, side, cell, level);
    if (always !== null) return { ...always, at: 0 };
    const { clearTo, next, found } = march(
      (steer, half) => cell.look(arm, 0, steer, half, level),
      from,
      end.at,
      STEER_RESOLUTION,
      this.budget,
    );
    if (found === Look.Clear) return end;
    if (found === Look.Unproven) {
      return Math.abs(end.at - clearTo) <= AT_BORDER
        ? { ...end, at: clearTo }
        : { stop: "unproven", at: clearTo };
    }
    const stretch = { clearTo, next, to: end.at };
    const place = (steer: number) => cell.place(arm, steer) === PoseStatus.Ok;
    return { ...touchOf(this.model, side, cell, found, stretch, level, place), at: clearTo };
  }
}
