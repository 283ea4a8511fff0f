import type { Pair } from "../../../studies/model/pairs.ts";
import { type GapEntry, gapsAt } from "../../../studies/reports/gapsAt.ts";
import { isStraight, steerWords } from "../../../studies/wording/poseWords.ts";
import { truckName } from "../../../studies/wording/truckName.ts";
import { solvePose } from "../../../suspension/solvePose.ts";
import { LINES, type PlotSpec, type Series } from "../../parts/plotNumbers.ts";
import { memoLast } from "../../state/memoLast.ts";
import type { Truck } from "../../state/truck.ts";
import { type NamedTruck, spread } from "./alignmentPlots.ts";
import { STRAIGHT_AHEAD } from "./placeText.ts";
import { type SteerScale, steerAxis, TRAVEL_AXIS } from "./plotAxes.ts";
import { looksOf } from "./variantLooks.ts";

/** Points of a gap curve, computed anew at every pose: few enough to follow a drag. */
const POINTS = 33;
/** The nearest so many parts are drawn; the rest is far from anything. */
const MOST_PARTS = 4;
/** mm. A gap that changes by less over all poses rides along with the wheel. */
const MOVES = 1e-3;
/** mm. What rides together is told by so much too large at most: no picture shows it, and it takes a thirtieth of the time. */
const COARSE = 1e-3;
const NO_GAPS: ReadonlyMap<string, number> = new Map();
const NONE: readonly NamedTruck[] = [];

/** Gap of each part (its nearer side) against steer at this height; with others laid over, the least of all of each truck. */
export const gapOverSteer = memoLast(
  (
    truck: Truck,
    travel: number,
    others: readonly NamedTruck[] = NONE,
    scale: SteerScale = "lock",
    isFine: boolean = false,
  ): PlotSpec => {
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
      onScale(of, curvesOf(of, { over: "steer", at: travel, isFine }, others.length > 0));
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
  (truck: Truck, steer: number, others: readonly NamedTruck[] = NONE, isFine: boolean = false): PlotSpec => {
    const pose = solvePose(truck.model.frontEnd, 0, steer);
    const stands = isStraight(steer) ? STRAIGHT_AHEAD : steerWords(steer, pose.ok ? pose : null, "left");
    const curves = (of: Truck) => curvesOf(of, { over: "travel", at: steer, isFine }, others.length > 0);
    return {
      id: "gap-travel",
      title: "Gap over height at this steering",
      note: `${stands}; ${noteOf(others)}`,
      stands,
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
    ? "nearest parts that move, and the nearest that does not; the nearer side of each"
    : "for each truck, its nearest part that moves against the wheel";
}

function laidOver(truck: Truck, others: readonly NamedTruck[], curves: (of: Truck) => readonly Series[]) {
  if (others.length === 0) return curves(truck);
  const looks = looksOf([truck, ...others.map((other) => other.truck)]);
  return [{ name: truckName(truck.setup.variant), truck }, ...others].flatMap(
    ({ name, truck: of }, i): Series[] => {
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
      return [{ name, points: least, ...looks[i]! }];
    },
  );
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

/** Along what gaps are told, where the other of travel (mm) and steering stands, and whether as finely as they are known. */
interface Cut {
  readonly over: "travel" | "steer";
  readonly at: number;
  readonly isFine: boolean;
}

interface CutCurves extends Cut {
  readonly isWhole: boolean;
  readonly curves: readonly Series[];
}

const known = new WeakMap<Truck, CutCurves>();

/**
 * Curves of a truck, once as long as it is asked the same: others laid over it do not change with it.
 * @param isWhole of every part that moves against the wheel (if there is none: of all), else of the nearest alone
 */
function curvesOf(truck: Truck, cut: Cut, isWhole: boolean): readonly Series[] {
  const last = known.get(truck);
  const isSame = last?.over === cut.over && last.at === cut.at && last.isFine === cut.isFine;
  if (isSame && last.isWhole === isWhole) return last.curves;
  const curves = newCurves(truck, cut, isWhole);
  known.set(truck, { ...cut, isWhole, curves });
  return curves;
}

function newCurves({ model, setup }: Truck, { over, at, isFine }: Cut, isWhole: boolean): Series[] {
  const { droop, bump } = setup.travel;
  const xs = over === "travel" ? spread(droop, bump, POINTS) : spread(-1, 1, POINTS);
  const moving = model.pairs.filter(({ kind }) => kind !== "together");
  const gaps = xs.map((x): readonly GapEntry[] | null => {
    const pose = over === "travel" ? solvePose(model.frontEnd, x, at) : solvePose(model.frontEnd, at, x);
    return pose.ok ? gapsAt({ pairs: moving }, pose) : null;
  });
  const least = new Map<string, number>();
  for (const entries of gaps) {
    for (const { part, gap } of entries ?? []) least.set(part, Math.min(gap, least.get(part) ?? gap));
  }
  const riding = isWhole && moving.length > 0 ? NO_GAPS : ridingGaps(model.pairs, least, isFine ? 0 : COARSE);
  const parts = [...least, ...riding].sort((a, b) => a[1] - b[1]);
  const curves = parts.map(
    ([part], i): Series => ({
      name: part,
      line: LINES[i % LINES.length]!,
      isMain: i === 0,
      points: xs.map((x, k) => ({
        x,
        y: gaps[k] === null ? null : (riding.get(part) ?? nearerOf(gaps[k]!, part)),
      })),
    }),
  );
  return isWhole ? curves : nearestOf(curves);
}

/**
 * The curves to draw, the nearest first: of those that tell the same all along the nearest alone, since the others would take the
 * place of what the poses move.
 */
function nearestOf(curves: readonly Series[]): Series[] {
  const moves = curves.map(({ points }) => isMoved(points.map(({ y }) => y)));
  const still = moves.indexOf(false);
  const shown = curves.filter((_, i) => moves[i] || i === still).slice(0, MOST_PARTS);
  return shown.map((curve, i) => ({ ...curve, line: LINES[i % LINES.length]!, isMain: i === 0 }));
}

/** Of what rides together, the same at every pose and on both sides, the gaps that are among the nearest. */
function ridingGaps(
  pairs: readonly Pair[],
  least: ReadonlyMap<string, number>,
  coarse: number,
): ReadonlyMap<string, number> {
  const beat = [...least.values()].sort((a, b) => a - b)[MOST_PARTS - 1] ?? Number.POSITIVE_INFINITY;
  const found = new Map<string, number>();
  for (const pair of pairs) {
    if (pair.kind !== "together" || found.has(pair.name)) continue;
    found.set(pair.name, pair.roughGap(beat, coarse));
  }
  return new Map([...found].filter(([, gap]) => gap < beat));
}

function nearerOf(entries: readonly GapEntry[], part: string): number | null {
  let least: number | null = null;
  for (const entry of entries) {
    if (entry.part === part && (least === null || entry.gap < least)) least = entry.gap;
  }
  return least;
}
