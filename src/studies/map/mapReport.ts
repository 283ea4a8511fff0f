import { GAP } from "../../gaps/partGap.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import type { Model } from "../model/model.ts";
import { Budget } from "../numeric/budget.ts";
import { type ReachLimit, reachLimits } from "../reports/reachLimits.ts";
import { type ClearanceMap, type MapOptions, mapOf } from "./clearanceMap.ts";
import { type Contour, contoursOf, limitBorderOf } from "./contours.ts";
import { type LowestTravels, lowestTravels } from "./lowestTravels.ts";
import { type NoLimits, type SteerLimits, steerLimits } from "./steerLimits.ts";
import type { Stop } from "./stop.ts";

/** Lines of a side's map. */
export interface SideContours {
  /** Where the gap is 0. */
  readonly touch: readonly Contour[];
  /** Where it is the allowance. */
  readonly allowance: readonly Contour[];
}

/** A pair that rides together nearer than the allowance: no height or steering angle helps. */
export interface AlwaysNear {
  readonly part: string;
  readonly side: Side;
  /** mm. */
  readonly gap: number;
}

/** A map with what is read off it. Plain data: mm, vehicle axes. */
export interface MapReport {
  readonly map: ClearanceMap;
  readonly contours: Readonly<Record<Side, SideContours>>;
  /** Where a limit of either wheel begins to be passed, straight between cells; none where the setup gives none. */
  readonly limitBorder: readonly Contour[];
  /** At each row's travel. */
  readonly steerAtHeight: readonly (SteerLimits | NoLimits)[];
  /** At each column's steer. */
  readonly lowestAtSteer: readonly (LowestTravels | NoLimits)[];
  readonly always: readonly AlwaysNear[];
  readonly limits: readonly ReachLimit[];
  /** Whether a gap below 0 was found, in a cell or on the way of a curve. */
  readonly rubs: boolean;
  /** Whether a limit was passed in a cell, or ends the way of a curve. */
  readonly passesLimit: boolean;
  /** The budget was spent first: cells not looked at have no gap, and how far it steers and how low it goes are proven as far as given. */
  readonly cutShort?: true;
}

/** The map, its contours and both curves; a third of the budget each, and what the ones before leave. */
export function mapReportOf(model: Model, options: MapOptions = {}): MapReport {
  const budget = options.budget ?? Budget.endless();
  const map = mapOf(model, { ...options, budget: budget.share(3) });
  const steerAtHeight = steerLimits(model, map.travels, budget.share(2));
  const lowestAtSteer = lowestTravels(model, map.steers, budget.share(1));
  const contours = (side: Side): SideContours => ({
    touch: contoursOf(map, map[side], 0),
    allowance: contoursOf(map, map[side], model.setup.allowance),
  });
  const touches = [
    ...steerAtHeight.flatMap((row) => (row.ok ? [row.leftTurn.touch, row.rightTurn.touch] : [])),
    ...lowestAtSteer.flatMap((row) => (row.ok ? [row.touch] : [])),
  ];
  return {
    map,
    contours: { left: contours("left"), right: contours("right") },
    limitBorder: limitBorderOf(map),
    steerAtHeight,
    lowestAtSteer,
    always: alwaysNear(model),
    limits: reachLimits(model),
    rubs:
      [map.left, map.right].some((side) => side.gap.some((gap) => gap < 0)) ||
      touches.some(({ left, right }) => isRub(left) || isRub(right)),
    passesLimit:
      (map.pastLimit?.limits.length ?? 0) > 0 || touches.some(({ either }) => either.stop === "limit"),
    ...(budget.cut ? { cutShort: true } : {}),
  };
}

function isRub(end: Stop): boolean {
  return end.stop === "touch" && end.gap < 0;
}

function alwaysNear(model: Model): AlwaysNear[] {
  return model.pairs.flatMap((pair) => {
    if (pair.kind !== "together") return [];
    const gap = pair.row[GAP.gap]!;
    return gap < model.setup.allowance ? [{ part: pair.name, side: pair.side, gap }] : [];
  });
}
