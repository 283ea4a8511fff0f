import { truckName } from "../../../studies/wording/truckName.ts";
import type { PlotSpec, Series } from "../../parts/plotNumbers.ts";
import type { Truck } from "../../state/truck.ts";
import { type CurveKind, PLOT_KINDS, type PlotKind } from "./curveKinds.ts";
import { type SteerScale, steerAxis, TRAVEL_AXIS } from "./plotAxes.ts";
import { looksOf } from "./variantLooks.ts";

/** Points of a curve: enough that it looks drawn, few enough to be there at once. */
const POINTS = 49;

export interface NamedTruck {
  readonly name: string;
  readonly truck: Truck;
}

export function spread(low: number, high: number, count = POINTS): number[] {
  return Array.from({ length: count }, (_, i) => low + ((high - low) * i) / (count - 1));
}

/** The kinds that a truck says enough for. */
export function kindsOf(truck: Truck): readonly PlotKind[] {
  return PLOT_KINDS.filter(({ isOf }) => isOf?.(truck) ?? true);
}

/** Every plot of a truck over travel and steering. @param others as for `alignmentPlot` */
export function alignmentPlots(
  truck: Truck,
  others: readonly NamedTruck[],
  scale: SteerScale = "lock",
): PlotSpec[] {
  return kindsOf(truck).map((kind) => plotOf(kind, truck, others, scale));
}

/**
 * One plot; null where there is none of that name, or the truck does not say enough for it.
 * @param others trucks laid over the first, each with its name; the first is then called by its own name
 */
export function alignmentPlot(
  id: string,
  truck: Truck,
  others: readonly NamedTruck[],
  scale: SteerScale = "lock",
): PlotSpec | null {
  const kind = kindsOf(truck).find((one) => one.id === id);
  return kind ? plotOf(kind, truck, others, scale) : null;
}

function plotOf(kind: PlotKind, truck: Truck, others: readonly NamedTruck[], scale: SteerScale): PlotSpec {
  const { id, title, stands, of, over, measure, isWild = false, curves } = kind;
  const isOver = others.length > 0;
  const shown = truckName(truck.setup.variant);
  const named = (own: string) => (isOver ? (curves.length === 1 ? shown : `${shown}, ${own}`) : own);
  const looks = looksOf([truck, ...others.map((other) => other.truck)]);
  const series: Series[] = curves.map((curve, i) => ({
    ...curveOf(truck, kind, curve, scale),
    name: named(curve.name),
    line: i === 0 ? "solid" : "dashed",
    isMain: i === 0,
    // Two curves of one truck are told apart by color as well, but for others laid over them.
    ...(isOver ? { of: looks[0]!.of } : {}),
  }));
  // Over others only the first curve is laid, or the plot turns into wool.
  others.forEach(({ name, truck: other }, i) => {
    series.push({ ...curveOf(other, kind, curves[0]!, scale), name, ...looks[i + 1]! });
  });
  const x = over === "travel" ? TRAVEL_AXIS : steerAxis(truck, 0, scale);
  const slope = over === "travel" ? { slope: kind.slope ?? "slope" } : {};
  return {
    id,
    title,
    note: stands === null ? kind.note : `${stands}; ${kind.note}`,
    ...(stands === null ? {} : { stands }),
    of,
    x,
    y: { label: title.replace(/ over .*/, ""), measure, isWild },
    series,
    ...slope,
  };
}

const known = new WeakMap<Truck, Map<CurveKind, Series["points"]>>();

/** A curve of a truck, its points over the scale; worked out once. */
function curveOf(truck: Truck, { over }: PlotKind, curve: CurveKind, scale: SteerScale) {
  const points = pointsOf(truck, over, curve);
  if (over === "travel") return { points, read: (x: number) => curve.read(truck, x) };
  const { fromInput = asItIs, toInput = asItIs } = steerAxis(truck, 0, scale);
  return {
    points: points.map(({ x, y }) => ({ x: fromInput(x), y })),
    read: (x: number) => curve.read(truck, toInput(x)),
  };
}

const asItIs = (x: number) => x;

function pointsOf(truck: Truck, over: PlotKind["over"], curve: CurveKind): Series["points"] {
  const curves = known.get(truck) ?? new Map<CurveKind, Series["points"]>();
  known.set(truck, curves);
  const before = curves.get(curve);
  if (before) return before;
  const { droop, bump } = truck.setup.travel;
  const xs = over === "travel" ? spread(droop, bump) : spread(-1, 1);
  const points = xs.map((x) => ({ x, y: curve.read(truck, x) }));
  curves.set(curve, points);
  return points;
}
