import { type GapEntry, gapsAt } from "../../../studies/reports/gapsAt.ts";
import { solvePose } from "../../../suspension/solvePose.ts";
import type { PlotSpec, Series } from "../../parts/plotNumbers.ts";
import { memoLast } from "../../state/memoLast.ts";
import type { Truck } from "../../state/truck.ts";
import { spread } from "./alignmentPlots.ts";

/** Points of a gap curve, computed anew at every pose: few enough to follow a drag. */
const POINTS = 33;
/** The nearest so many parts are drawn; the rest is far from anything. */
const MOST_PARTS = 4;
const LINES = ["solid", "dashed", "dotted", "dashed"] as const;

/** Gap of each part (its nearer side) against steer at this height. */
export const gapOverSteer = memoLast((truck: Truck, travel: number): PlotSpec => {
  const xs = spread(-1, 1, POINTS);
  return {
    id: "gap-steer",
    title: "Gap over steering at this height",
    note: "nearest parts, the nearer side of each",
    x: { label: "steering", measure: "lock" },
    y: { label: "gap", measure: "length" },
    series: curvesOf(truck, xs, (steer) => [travel, steer]),
    levels: levelsOf(truck),
  };
});

/** Gap of each part (its nearer side) against height at this steer. */
export const gapOverTravel = memoLast((truck: Truck, steer: number): PlotSpec => {
  const { droop, bump } = truck.setup.travel;
  return {
    id: "gap-travel",
    title: "Gap over height at this steering",
    note: "nearest parts, the nearer side of each",
    x: { label: "travel, + bump", measure: "length" },
    y: { label: "gap", measure: "length" },
    series: curvesOf(truck, spread(droop, bump, POINTS), (travel) => [travel, steer]),
    levels: levelsOf(truck),
  };
});

function levelsOf(truck: Truck): { readonly at: number; readonly name: string }[] {
  return [
    { at: 0, name: "touches" },
    { at: truck.setup.allowance, name: "allowance" },
  ];
}

function curvesOf(
  truck: Truck,
  xs: readonly number[],
  poseAt: (x: number) => readonly [travel: number, steer: number],
): Series[] {
  const gaps = xs.map((x): readonly GapEntry[] | null => {
    const [travel, steer] = poseAt(x);
    const pose = solvePose(truck.model.frontEnd, travel, steer);
    return pose.ok ? gapsAt(truck.model, pose) : null;
  });
  const least = new Map<string, number>();
  for (const entries of gaps) {
    for (const { part, gap } of entries ?? []) least.set(part, Math.min(gap, least.get(part) ?? gap));
  }
  const parts = [...least].sort((a, b) => a[1] - b[1]).slice(0, MOST_PARTS);
  return parts.map(([part], i) => ({
    name: part,
    line: LINES[i]!,
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
