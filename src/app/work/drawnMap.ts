import { type ClearanceMap, type MapSide, mapOf } from "../../studies/map/clearanceMap.ts";
import { type Contour, contoursOf, limitBorderOf } from "../../studies/map/contours.ts";
import type { LowestTravels } from "../../studies/map/lowestTravels.ts";
import type { NoLimits, SteerLimits } from "../../studies/map/steerLimits.ts";
import type { Model } from "../../studies/model/model.ts";
import type { Budget } from "../../studies/numeric/budget.ts";
import { jointOf, type PoseStatus } from "../../suspension/poseStatus.ts";

/** Which wheel's gaps the map shows: the worse of the two, or one of them. */
export type MapSideName = "both" | "left" | "right";

/** Lines of one side choice: where it touches, and where the allowance begins. */
export interface MapLines {
  readonly touch: readonly Contour[];
  readonly allowance: readonly Contour[];
}

/** A map ready to be drawn. */
export interface DrawnMap {
  readonly map: ClearanceMap;
  /** Gap of each cell by side choice, of what moves against each other; NaN where the linkage cannot go. */
  readonly gap: Readonly<Record<MapSideName, Float64Array>>;
  readonly lines: Readonly<Record<MapSideName, MapLines>>;
  /** What sets the border of reach, in words without a full stop; each once. */
  readonly borders: readonly string[];
  /** Where a limit of either wheel begins to be passed. */
  readonly limitBorder: readonly Contour[];
}

/** How far it can be steered at one height, and how low it can go at one steer. */
export interface PoseLimits {
  readonly travel: number;
  readonly steer: number;
  readonly steering: SteerLimits | NoLimits;
  readonly lowering: LowestTravels | NoLimits;
}

/** The map of a truck with its lines, for each choice of side. @param budget for its cells */
export function drawnMapOf(model: Model, budget: Budget): DrawnMap {
  const map = mapOf(model, { budget });
  const both = worseOf(map.left, map.right);
  const { allowance } = model.setup;
  const lines = (side: MapSide): MapLines => ({
    touch: contoursOf(map, side, 0),
    allowance: contoursOf(map, side, allowance),
  });
  return {
    map,
    gap: { both: both.gap, left: map.left.gap, right: map.right.gap },
    lines: { both: lines(both), left: lines(map.left), right: lines(map.right) },
    borders: bordersOf(map),
    limitBorder: limitBorderOf(map),
  };
}

function worseOf(left: MapSide, right: MapSide): MapSide {
  const least = (a: Float64Array, b: Float64Array) => a.map((v, i) => worseGap(v, b[i]!));
  return {
    ...left,
    gap: least(left.gap, right.gap),
    moving: least(left.moving, right.moving),
    together: Math.min(left.together, right.together),
  };
}

/** The lesser of two gaps. Where one is not known (NaN), the other's rub stands; that the other clears says nothing of both. */
function worseGap(a: number, b: number): number {
  if (Number.isNaN(a)) return b < 0 ? b : a;
  if (Number.isNaN(b)) return a < 0 ? a : b;
  return Math.min(a, b);
}

/** The joints that end the reach somewhere in the map. */
function bordersOf({ reach }: ClearanceMap): string[] {
  const names = new Set<string>();
  reach.startsAt.forEach((start, cell) => {
    if (Number.isNaN(start)) return;
    names.add(`${reach.side[cell] === 0 ? "left" : "right"} ${jointOf(reach.status[cell] as PoseStatus)}`);
  });
  return [...names];
}
