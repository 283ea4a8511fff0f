import { type GapEntry, gapsAt } from "../../../studies/reports/gapsAt.ts";
import { solvePose } from "../../../suspension/solvePose.ts";
import type { PlotSpec, Series } from "../../parts/plotNumbers.ts";
import { memoLast } from "../../state/memoLast.ts";
import type { Truck } from "../../state/truck.ts";
import { type NamedTruck, spread } from "./alignmentPlots.ts";
import { type SteerScale, steerAxis, TRAVEL_AXIS } from "./plotAxes.ts";

/** Points of a gap curve, computed anew at every pose: few enough to follow a drag. */
const POINTS = 33;
/** The nearest so many parts are drawn; the rest is far from anything. */
const MOST_PARTS = 4;
/** mm. A gap that changes by less over all poses rides along with the wheel. */
const MOVES = 1e-3;
const NONE: readonly NamedTruck[] = [];
const LINES = ["solid", "dashed", "dotted", "dashed"] as const;

/** Gap of each part (its nearer side) against steer at this height; with others laid over, the least of all of each truck. */
export const gapOverSteer = memoLast(
  (
    truck: Truck,
    travel: number,
    others: readonly NamedTruck[] = NONE,
    scale: SteerScale = "lock",
  ): PlotSpec => {
    const steers = spread(-1, 1, POINTS);
    const onScale = (of: Truck, curves: readonly Series[]) => {
      const { fromInput } = steerAxis(of, travel, scale);
      return fromInput === undefined
        ? curves
        : curves.map((curve) => ({
            ...curve,
            points: curve.points.map(({ x, y }) => ({ x: fromInput(x), y })),
          }));
    };
    const curves = (of: Truck) =>
      onScale(
        of,
        curvesOf(of, steers, (steer) => [travel, steer], others.length > 0),
      );
    return {
      id: "gap-steer",
      title: "Gap over steering at this height",
      note: noteOf(others),
      of: "gap",
      x: steerAxis(truck, travel, scale),
      y: { label: "gap", measure: "length" },
      series: laidOver(truck, others, curves),
      levels: levelsOf(truck),
    };
  },
);

/** Gap of each part (its nearer side) against height at this steer; with others laid over, the least of all of each truck. */
export const gapOverTravel = memoLast(
  (truck: Truck, steer: number, others: readonly NamedTruck[] = NONE): PlotSpec => {
    const curves = (of: Truck) => {
      const { droop, bump } = of.setup.travel;
      return curvesOf(of, spread(droop, bump, POINTS), (travel) => [travel, steer], others.length > 0);
    };
    return {
      id: "gap-travel",
      title: "Gap over height at this steering",
      note: noteOf(others),
      of: "gap",
      x: TRAVEL_AXIS,
      y: { label: "gap", measure: "length" },
      series: laidOver(truck, others, curves),
      slope: "slope",
      levels: levelsOf(truck),
    };
  },
);

function noteOf(others: readonly NamedTruck[]): string {
  return others.length === 0
    ? "nearest parts, the nearer side of each"
    : "the nearest part of each truck that moves against it";
}

function laidOver(truck: Truck, others: readonly NamedTruck[], curves: (of: Truck) => readonly Series[]) {
  if (others.length === 0) return curves(truck);
  return [{ name: "shown", truck }, ...others].flatMap(({ name, truck: of }, i): Series[] => {
    const all = curves(of);
    // What rides together is as near at every pose: it would hide what the poses do.
    const moving = all.filter(({ points }) => isMoved(points.map(({ y }) => y)));
    const parts = moving.length > 0 ? moving : all;
    const [first] = parts;
    if (first === undefined) return [];
    const least = first.points.map(({ x }, k) => ({
      x,
      y: leastOf(parts.map(({ points }) => points[k]!.y)),
    }));
    const line = i === 0 ? "solid" : i % 2 === 1 ? "dotted" : "dashed";
    return [{ name, points: least, line, isMain: i === 0, of: i }];
  });
}

function isMoved(gaps: readonly (number | null)[]): boolean {
  const known = gaps.filter((gap) => gap !== null);
  return Math.max(...known) - Math.min(...known) > MOVES;
}

function leastOf(values: readonly (number | null)[]): number | null {
  const known = values.filter((value) => value !== null);
  return known.length === 0 ? null : Math.min(...known);
}

function levelsOf(truck: Truck): { readonly at: number; readonly name: string }[] {
  return [
    { at: 0, name: "touches" },
    { at: truck.setup.allowance, name: "allowance" },
  ];
}

/** @param isWhole of every part that moves against the wheel (if there is none: of all), else of the nearest alone */
function curvesOf(
  truck: Truck,
  xs: readonly number[],
  poseAt: (x: number) => readonly [travel: number, steer: number],
  isWhole: boolean,
): Series[] {
  const { pairs } = truck.model;
  // What rides together is most of the work of all gaps.
  const moving = isWhole ? pairs.filter(({ kind }) => kind !== "together") : pairs;
  const looked = { pairs: moving.length > 0 ? moving : pairs };
  const gaps = xs.map((x): readonly GapEntry[] | null => {
    const [travel, steer] = poseAt(x);
    const pose = solvePose(truck.model.frontEnd, travel, steer);
    return pose.ok ? gapsAt(looked, pose) : null;
  });
  const least = new Map<string, number>();
  for (const entries of gaps) {
    for (const { part, gap } of entries ?? []) least.set(part, Math.min(gap, least.get(part) ?? gap));
  }
  const parts = [...least].sort((a, b) => a[1] - b[1]).slice(0, isWhole ? least.size : MOST_PARTS);
  return parts.map(([part], i) => ({
    name: part,
    line: LINES[i % LINES.length]!,
    isMain: i === 0,
    points: xs.map((x, k) => ({ x, y: nearerOf(gaps[k] ?? null, part) })),
  }));
}

function nearerOf(entries: readonly GapEntry[] | null, part: string): number | null {
  if (entries === null) return null;
  let least: number | null = null;
  for (const entry of entries) {
    if (entry.part === part && (least === null || entry.gap < least)) least = entry.gap;
  }
  return least;
}
