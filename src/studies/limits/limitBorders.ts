import { armAngleFor } from "../../suspension/armAngle.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { jointOf, PoseStatus } from "../../suspension/poseStatus.ts";
import type { Model } from "../model/model.ts";
import { Budget } from "../numeric/budget.ts";
import { Look, march } from "../numeric/march.ts";
import { KEPT } from "./frontEndLimit.ts";
import { CellState, LimitCell } from "./limitCell.ts";
import { limitsOn } from "./limitsOn.ts";

/** What sets a border of the reachable region. */
export type LimitBorder =
  /** A limit is met: all before `at` keeps it, proven. */
  | { readonly stop: "limit"; readonly at: number; readonly side: Side; readonly name: string }
  /** A joint of the linkage cannot follow any farther. */
  | { readonly stop: "reach"; readonly at: number; readonly side: Side; readonly joint: string }
  /** The end of the range asked for. */
  | { readonly stop: "end"; readonly at: number }
  /** Right at the end of the linkage's reach nothing is proven past `at`. */
  | { readonly stop: "unproven"; readonly at: number; readonly side: Side };

/** Share of the range below which a stretch is not halved again: a hundredth of a degree, some microns of travel. */
const RESOLUTION = 2 ** -18;

/** Share of the range within which an unproven end is looked at for a joint out of reach. */
const AT_BORDER = 1e-5;

/** Half ranges of a height looked at as a cell, rad, and of the least part of a lock. */
const POINT = 1e-9;
const LEAST_HALF = 2 ** -7;

/** Microseconds, about. */
const LOOK_WORK = 10;

const SIDES = ["left", "right"] as const;

/** One limit, by its place in `limitsOn`, on one side. */
export interface OneLimit {
  readonly limit: number;
  readonly side: Side;
}

/** Null where the setup gives no limits: then there is nothing to go along for. */
export function limitBordersOf(model: Model, budget: Budget): LimitBorders | null {
  return limitsOn(model, "left").length > 0 ? new LimitBorders(model, budget) : null;
}

/** Goes along travel or steer until a limit is passed on either side. One for a model: it holds its cells. */
export class LimitBorders {
  private readonly cells: Readonly<Record<Side, LimitCell>>;

  /** @param budget once it is spent, nothing is proven past where it has come. */
  constructor(
    private readonly model: Model,
    private readonly budget: Budget = Budget.endless(),
  ) {
    this.cells = { left: new LimitCell(model, "left"), right: new LimitCell(model, "right") };
  }

  /** The limit with the least share in hand of those passed at a pose; null = all are kept, or the pose cannot be. */
  passedAt(travel: number, steer: number): { readonly side: Side; readonly name: string } | null {
    let worst: { readonly side: Side; readonly name: string } | null = null;
    let least = 0;
    for (const side of SIDES) {
      const cell = this.cells[side];
      if (cell.put(armAngleFor(cell.side, travel), steer) !== PoseStatus.Ok) continue;
      for (const [i, limit] of cell.limits.entries()) {
        const margin = cell.margin(i);
        const share = margin / limit.range;
        if (margin >= -KEPT || share >= least) continue;
        least = share;
        worst = { side, name: limit.name };
      }
    }
    return worst;
  }

  /** How far the steering goes at a travel (mm), from straight ahead to `to` (−1 or +1). @param only that limit alone */
  alongSteer(travel: number, to: number, only: OneLimit | null = null): LimitBorder {
    const borders = sidesOf(only).map((side) => {
      const arm = armAngleFor(this.cells[side].side, travel);
      return this.march(side, 0, to, only, (cell, middle, half) => cell.look(arm, 0, middle, half));
    });
    return nearest(borders, 0);
  }

  /** Whether that limit is proven to be kept at a travel (mm) from straight ahead to `to`, the border of reach included. */
  keepsAlongSteer(travel: number, to: number, { side, limit }: OneLimit): boolean {
    const cell = this.cells[side];
    const arm = armAngleFor(cell.side, travel);
    const keeps = (middle: number, half: number): boolean => {
      if (this.budget.isSpent(LOOK_WORK)) return false;
      const state = cell.look(arm, POINT, middle, half);
      if (state === CellState.Empty) return true;
      if (state === CellState.Bounded || cell.boundAtBorder()) {
        const spread = cell.spreadOf(limit);
        if (cell.margin(limit) - spread[0]! - spread[1]! >= -KEPT) return true;
      }
      const part = 0.5 * half;
      return half > LEAST_HALF && keeps(middle - part, part) && keeps(middle + part, part);
    };
    return keeps(0.5 * to, 0.5 * Math.abs(to));
  }

  /** How far travel (mm) goes at a steer, from `from` toward `to`. @param only that limit alone */
  alongTravel(steer: number, from: number, to: number, only: OneLimit | null = null): LimitBorder {
    const { left, right } = this.model.frontEnd;
    // Both wheels go as far as either can.
    const low = Math.max(left.reach.droop.travel, right.reach.droop.travel);
    const high = Math.min(left.reach.bump.travel, right.reach.bump.travel);
    const end = Math.min(Math.max(to, low), high);
    const armOf = (side: Side, travel: number) => armAngleFor(this.cells[side].side, travel);
    const start = { left: armOf("left", from), right: armOf("right", from) };
    const stop = { left: armOf("left", end), right: armOf("right", end) };
    // Along the arm of each side; both are told as travel.
    const borders = sidesOf(only).map((side) => {
      const found = this.march(side, start[side], stop[side], only, (cell, middle, half) =>
        cell.look(middle, half, steer, 0),
      );
      if (found.stop === "end") return end === to ? { ...found, at: to } : this.reachEnd(end, to);
      return { ...found, at: found.at === start[side] ? from : this.cells[side].travelAt(found.at) };
    });
    return nearest(borders, from);
  }

  private reachEnd(end: number, to: number): LimitBorder {
    const { frontEnd } = this.model;
    const way = to < end ? "droop" : "bump";
    const side = SIDES.find((one) => frontEnd[one].reach[way].travel === end) ?? "left";
    return { stop: "reach", at: end, side, joint: jointOf(frontEnd[side].reach[way].status) };
  }

  /** One side's way. What stops it is told where the stretch that is not clear any more ends. */
  private march(
    side: Side,
    from: number,
    to: number,
    only: OneLimit | null,
    look: (cell: LimitCell, middle: number, half: number) => CellState,
  ): LimitBorder {
    const cell = this.cells[side];
    const { clearTo, next, found } = march(
      (middle, half) => {
        if (look(cell, middle, half) !== CellState.Bounded) return Look.Unproven;
        return firstBelow(cell, only);
      },
      from,
      to,
      RESOLUTION * Math.abs(to - from),
      this.budget,
    );
    if (found === Look.Clear) return { stop: "end", at: to };
    if (found >= 0) return { stop: "limit", at: clearTo, side, name: cell.limits[found]!.name };
    const way = to < from ? -1 : 1;
    for (let off = Math.abs(next - clearTo); off <= AT_BORDER * Math.abs(to - from) && off > 0; off *= 2) {
      look(cell, clearTo + way * off, 0);
      const status = cell.put(cell.armNow, cell.place.steer);
      if (status !== PoseStatus.Ok) return { stop: "reach", at: clearTo, side, joint: jointOf(status) };
    }
    return { stop: "unproven", at: clearTo, side };
  }
}

function sidesOf(only: OneLimit | null): readonly Side[] {
  return only === null ? SIDES : [only.side];
}

/** The limit that may be passed in the cell looked at and is nearest to it; `Look.Clear` when none is. */
function firstBelow(cell: LimitCell, only: OneLimit | null): number {
  let found: number = Look.Clear;
  let least = 0;
  for (let i = 0; i < cell.limits.length; i++) {
    if (only !== null && i !== only.limit) continue;
    const spread = cell.spreadOf(i);
    const margin = cell.margin(i) - spread[0]! - spread[1]!;
    if (margin >= -KEPT) continue;
    const share = margin / cell.limits[i]!.range;
    if (found === Look.Clear || share < least) {
      least = share;
      found = i;
    }
  }
  return found;
}

/** Of two borders the one met first; of two alike, one that a limit sets tells more. */
function nearest(borders: readonly LimitBorder[], from: number): LimitBorder {
  return borders.reduce((first, next) => {
    const [a, b] = [Math.abs(first.at - from), Math.abs(next.at - from)];
    return b < a || (a === b && first.stop !== "limit" && next.stop === "limit") ? next : first;
  });
}
