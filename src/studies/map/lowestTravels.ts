import { armAngleFor } from "../../suspension/armAngle.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { POSE } from "../../suspension/poseRow.ts";
import { jointOf, PoseStatus } from "../../suspension/poseStatus.ts";
import { solvePose } from "../../suspension/solvePose.ts";
import { type LimitBorder, type LimitBorders, limitBordersOf } from "../limits/limitBorders.ts";
import type { Model } from "../model/model.ts";
import { Budget } from "../numeric/budget.ts";
import { Look, march } from "../numeric/march.ts";
import { PoseCell } from "./poseCell.ts";
import type { NoLimits } from "./steerLimits.ts";
import { limitedEnd, type Stop, togetherTouch, touchOf, type WheelStops, wheelStops } from "./stop.ts";

/** How far the truck can come down at one steering angle. `at` of a stop is travel, mm, + = lower truck. */
export interface WayDown extends WheelStops {
  /** Travel the way down starts from: 0 where that keeps the level, else full droop, or as near as limits let it be. */
  readonly from: number;
}

/** How low the truck can go at one steering angle. */
export interface LowestTravels {
  readonly ok: true;
  /** −1 … +1, + = left turn. */
  readonly steer: number;
  /** Before a gap is below 0. */
  readonly touch: WayDown;
  /** Before a gap is below the setup's allowance. */
  readonly allowance: WayDown;
}

/** Share of the arm's range below which a stretch is not halved again: about two thousandths of a millimeter of travel. */
const ARM_RESOLUTION = 2 ** -17;

/**
 * rad. Right at the end of an arm's reach nothing is proven, since the wheel moves there like a square root: a way
 * down from such an end starts this far inside it, which is a fraction of a millimeter of travel.
 */
const INSIDE = 1e-6;

/** mm of travel: this near the border of reach the border counts as reached. */
const AT_BORDER = 0.01;

/**
 * At each steering input: how far the truck can come down (how far into bump both wheels can go together) before
 * something touches, and before it comes nearer than the allowance; or before a limit of either wheel is passed. The
 * way down starts at travel 0, where the truck was measured; where that does not keep the level itself, at full droop,
 * the highest the setup rides, or where a limit ends the way up from 0. Where 0 passes a limit, that is all it tells.
 * Proven as `steerLimits` is; what rides together below the level stops the way where it starts.
 * @param steers −1 … +1. @param budget once it is spent, nothing is proven past where each has come.
 */
export function lowestTravels(
  model: Model,
  steers: ArrayLike<number>,
  budget: Budget = Budget.endless(),
): (LowestTravels | NoLimits)[] {
  const search = new TravelSearch(model);
  const found: (LowestTravels | NoLimits)[] = [];
  for (let i = 0; i < steers.length; i++) {
    const share = budget.share(steers.length - i);
    found.push(search.at(steers[i]!, share));
  }
  return found;
}

const SIDES = ["left", "right"] as const;

class TravelSearch {
  private readonly cells: Readonly<Record<Side, PoseCell>>;
  /** Full droop, or just inside the last travel both wheels can follow straight ahead. */
  private readonly low: number;
  /** Full bump, or the last travel both wheels can follow straight ahead. */
  private readonly high: Stop;
  private borders: LimitBorders | null = null;
  private budget = Budget.endless();
  private steer = 0;

  constructor(private readonly model: Model) {
    this.cells = { left: new PoseCell(model, "left"), right: new PoseCell(model, "right") };
    const { frontEnd, setup } = model;
    let low = setup.travel.droop;
    let high: Stop = { stop: "end", at: setup.travel.bump };
    for (const side of SIDES) {
      const { droop, bump } = frontEnd[side].reach;
      if (low < droop.travel) low = this.travelAt(side, droop.armAngle + INSIDE);
      if (bump.travel < high.at) high = { stop: "reach", at: bump.travel, side, joint: jointOf(bump.status) };
    }
    this.low = low;
    this.high = high;
  }

  at(steer: number, budget: Budget): LowestTravels | NoLimits {
    this.budget = budget;
    this.borders = limitBordersOf(this.model, budget);
    this.steer = steer;
    const { allowance } = this.model.setup;
    const limited = this.limitedRange();
    if (limited !== null && "stop" in limited) {
      const down = { from: limited.at, ...wheelStops(limited, limited, 1) };
      return { ok: true, steer, touch: down, allowance: down };
    }
    const starts = [allowance, 0].map((level) => (this.keeps(0, level) ? 0 : (limited?.low ?? this.low)));
    const stuck = starts
      .map((start) => solvePose(this.model.frontEnd, start, steer))
      .find((pose) => !pose.ok);
    if (stuck !== undefined && !stuck.ok) return { ...stuck, travel: this.low, steer };
    const border = limited?.border ?? null;
    const kept = this.down(starts[0]!, border, null, allowance);
    const touch = this.down(starts[1]!, border, starts[0] === starts[1] ? kept : null, 0);
    return { ok: true, steer, touch, allowance: kept };
  }

  /**
   * The travel about 0, or about full droop where 0 is out of reach, that keeps every limit; or the one passed there.
   * Null where the setup gives no limits, or the truck cannot stand there.
   */
  private limitedRange():
    | { readonly low: number; readonly border: LimitBorder }
    | Extract<Stop, { stop: "limit" }>
    | null {
    const { borders, low, high, steer } = this;
    if (borders === null) return null;
    const stands = (travel: number) => solvePose(this.model.frontEnd, travel, steer).ok;
    const from = low <= 0 && high.at >= 0 && stands(0) ? 0 : low;
    if (!stands(from)) return null;
    const passed = borders.passedAt(from, steer);
    if (passed !== null) return { stop: "limit", at: from, ...passed };
    const toward = (to: number): LimitBorder =>
      to === from ? { stop: "end", at: to } : borders.alongTravel(steer, from, to);
    const up = toward(low);
    const isShort = up.stop === "limit" || (up.stop === "unproven" && up.at - low > AT_BORDER);
    return { low: isShort ? up.at : low, border: toward(high.at) };
  }

  /** Whether both wheels can stand at a travel with no gap below the level. */
  private keeps(travel: number, level: number): boolean {
    if (!(travel >= this.low && travel <= this.high.at)) return false;
    return SIDES.every((side) => {
      const cell = this.cells[side];
      if (cell.place(this.armAt(side, travel), this.steer) !== PoseStatus.Ok) return false;
      cell.track.worst(cell.pose, 0);
      return cell.track.row[0]! >= level;
    });
  }

  /** @param kept a way down from the same start that keeps more: it need not be gone again. */
  private down(from: number, border: LimitBorder | null, kept: WayDown | null, level: number): WayDown {
    const reached = this.end(from);
    const end = border === null ? reached : limitedEnd(reached, border, 1, AT_BORDER);
    const stop = (side: Side) => this.stop(side, kept === null ? from : kept[side].at, end, level);
    return { from, ...wheelStops(stop("left"), stop("right"), 1) };
  }

  /** The lowest both wheels can go at this steer. */
  private end(from: number): Stop {
    let end = this.high;
    for (const side of SIDES) {
      const cell = this.cells[side];
      const [low, high] = [this.armAt(side, from), this.armAt(side, end.at)];
      const { clearTo, next, found } = march(
        (arm, half) => (cell.exists(arm, half, this.steer, 0) ? Look.Clear : Look.Unproven),
        low,
        high,
        // Rounding may put the end of travel a hair below where the way begins.
        ARM_RESOLUTION * Math.abs(high - low),
        this.budget,
      );
      if (found === Look.Clear) continue;
      const at = this.travelAt(side, clearTo);
      // Straight at the end of travel's reach the joint is known; the wheel's motion there has no bound.
      if (end.at - at <= AT_BORDER && end.stop === "reach") continue;
      end = this.border(side, clearTo, next, at);
    }
    return end;
  }

  /** Names the joint: the border is at most a hair past what is proven to exist. */
  private border(side: Side, clearTo: number, next: number, at: number): Stop {
    for (let off = next - clearTo; off < 1e-6; off *= 2) {
      const status = this.cells[side].place(clearTo + off, this.steer);
      if (status !== PoseStatus.Ok) return { stop: "reach", at, side, joint: jointOf(status) };
      if (!(off > 0)) break;
    }
    return { stop: "unproven", at };
  }

  private stop(side: Side, from: number, end: Stop, level: number): Stop {
    const cell = this.cells[side];
    const [low, high] = [this.armAt(side, from), this.armAt(side, end.at)];
    cell.place(low, this.steer);
    const always = togetherTouch(this.model, side, cell, level);
    if (always !== null) return { ...always, at: from };
    const whole = Math.abs(this.armAt(side, this.high.at) - this.armAt(side, this.low));
    // Without travel there is a hair of rounding left to go.
    const finest = Math.max(ARM_RESOLUTION * whole, Number.EPSILON);
    const { clearTo, next, found } = march(
      (arm, half) => cell.look(arm, half, this.steer, 0, level),
      low,
      high,
      finest,
      this.budget,
    );
    if (found === Look.Clear) return end;
    const at = clearTo === low ? from : this.travelAt(side, clearTo);
    if (found === Look.Unproven) {
      return end.at - at <= AT_BORDER ? { ...end, at } : { stop: "unproven", at };
    }
    const place = (arm: number) => cell.place(arm, this.steer) === PoseStatus.Ok;
    return { ...touchOf(this.model, side, cell, found, { clearTo, next, to: high }, level, place), at };
  }

  private armAt(side: Side, travel: number): number {
    return armAngleFor(this.model.frontEnd[side], travel);
  }

  /** Travel is told straight ahead, whatever the steer. */
  private travelAt(side: Side, arm: number): number {
    const cell = this.cells[side];
    cell.place(arm, 0);
    return cell.pose[POSE.wheelCenter + 2]! - this.model.frontEnd[side].centerHeightAtRest;
  }
}
