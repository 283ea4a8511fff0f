import { type RollRow, rollCurve } from "../../../studies/curves/rollCurve.ts";
import { truckName } from "../../../studies/wording/truckName.ts";
import type { PlotAxis, PlotSpec, Series } from "../../parts/plotNumbers.ts";
import { memoLast } from "../../state/memoLast.ts";
import type { Truck } from "../../state/truck.ts";
import type { NamedTruck } from "./alignmentPlots.ts";
import { looksOf } from "./variantLooks.ts";

const ROLL_AXIS: PlotAxis = {
  label: "body roll, + left side up",
  brief: "body roll",
  measure: "angle",
  over: "roll",
};

/** Odd: the level body is one of them. */
const POINTS = 25;

/** Plots over body roll. */
export const ROLL_KINDS = [
  {
    id: "roll-sideways",
    title: "Roll center sideways over body roll",
    note: "at this height; + = left of the truck's center plane",
    read: ({ rollCenter }: RollRow) => rollCenter?.y ?? null,
  },
  {
    id: "roll-height",
    title: "Roll center height over body roll",
    note: "at this height; above the line between the patches",
    read: ({ rollCenter }: RollRow) => rollCenter?.height ?? null,
  },
] as const;

/** What the roll center does as the body rolls at a height, mm; empty where no wheel has travel left. */
export const rollPlots = memoLast(
  (truck: Truck, travel: number, others: readonly NamedTruck[]): PlotSpec[] => {
    const rows = [{ name: truckName(truck.setup.variant), truck }, ...others].map(({ name, truck: of }) => ({
      name: others.length === 0 ? "both wheels" : name,
      rows: rollCurve(of.model, travel, POINTS),
    }));
    if (rows[0]!.rows.length === 0) return [];
    const looks = looksOf([truck, ...others.map((other) => other.truck)]);
    return ROLL_KINDS.map(({ id, title, note, read }) => ({
      id,
      title,
      note,
      of: "roll center",
      slope: "slope",
      x: ROLL_AXIS,
      y: { label: title.replace(/ over .*/, ""), measure: "length" },
      series: rows.map(({ name, rows: of }, i): Series => {
        const points = of.map((row) => ({ x: row.roll, y: read(row) }));
        return { name, points, ...looks[i]! };
      }),
    }));
  },
);
