import type { Result, SetupIssue } from "../../setup/types/types.ts";
import { limitTravel } from "../limits/limitsPassed.ts";
import type { Model } from "../model/model.ts";
import type { Budget } from "../numeric/budget.ts";
import { rangesToCheck } from "../reports/check.ts";
import { type AskedPoses, withAskedTravel } from "../search/sideRange.ts";
import { type Change, changedSetup, changedTruck, type TruckToVary } from "../window/truckOverField.ts";
import { linkageText, shapeText } from "./alike.ts";
import { CarriedBounds } from "./carriedBounds.ts";
import { axisPlace, entryChange } from "./chartAxis.ts";
import { chartOrder } from "./chartOrder.ts";
import type { AxisAsk, ChartAsk, ChartCell } from "./chartTypes.ts";
import { hintsOf, type PoseHints } from "./poseHints.ts";
import type { Ranges } from "./seenGap.ts";
import { truckVerdict } from "./truckVerdict.ts";

/** Ranges of linkages kept: searches leave a lot in each. */
const RANGES_KEPT = 8;

/** Of a cell's budget a half at most is for hints, the first time, and a quarter for the limits. */
const HINTS_PART = 2;
const LIMITS_PART = 4;

/** Says a cell without a height in reach. */
const OUT_OF_REACH = "none of the heights asked about is in reach";

/** A chart put together. @returns issues where an axis is none */
export function chartSearch(truck: TruckToVary, ask: ChartAsk): Result<ChartSearch> {
  const x = changesOf(truck, ask.x);
  if (!x.ok) return x;
  const y = changesOf(truck, ask.y);
  if (!y.ok) return y;
  return { ok: true, value: new ChartSearch(truck, ask, x.value, y.value) };
}

function changesOf({ document, file, setup }: TruckToVary, { key, entries }: AxisAsk): Result<Change[]> {
  const place = axisPlace(key, document, file);
  if (!place.ok) return place;
  return {
    ok: true,
    value: entries.map((entry) => entryChange(place.value, entry, setup)),
  };
}

/**
 * Works out cells of a chart. What one cell says depends on the chart alone, not on which cells were worked out before: any share
 * of the cells says the same as all of them do.
 */
export class ChartSearch {
  readonly columns: number;
  readonly rows: number;
  private readonly poses: AskedPoses;
  private hints: PoseHints | null = null;
  private carried: CarriedBounds | null = null;
  /** By linkage: trucks that differ in the tire alone share their poses. */
  private readonly ranges = new Map<string, Ranges>();

  constructor(
    private readonly truck: TruckToVary,
    ask: ChartAsk,
    private readonly x: readonly Change[],
    private readonly y: readonly Change[],
  ) {
    this.columns = x.length;
    this.rows = y.length;
    this.poses = { travel: ask.travel, lock: ask.lock };
  }

  get count(): number {
    return this.columns * this.rows;
  }

  /** All cells, coarse to fine. */
  order(): readonly number[] {
    const [here, right] = [this.linkageAt(0, 0), this.linkageAt(this.columns - 1, 0)];
    return chartOrder(this.columns, this.rows, here !== right);
  }

  /** Where on an axis the truck as it stands is; null = nowhere. */
  presentOn(axis: "x" | "y"): number | null {
    const now = shapeText(this.truck.setup);
    const at = this[axis].findIndex((change) => {
      const made = changedSetup(this.truck, [change]);
      return made.ok && shapeText(made.value) === now;
    });
    return at < 0 ? null : at;
  }

  /** @param cell its number, row by row */
  cellAt(cell: number, budget: Budget): ChartCell {
    if (budget.isSpent(0)) return { kind: "unfinished" };
    const made = this.modelAt(cell % this.columns, Math.floor(cell / this.columns));
    if (!made.ok) return { kind: "issue", issue: issueText(made.issues) };
    const model = withAskedTravel(made.value, this.poses);
    if (!hasHeight(model)) return { kind: "issue", issue: OUT_OF_REACH };
    const share = budget.share(1);
    const hints = this.hintsFor(share.share(HINTS_PART));
    const ranges = this.rangesOf(model, share.share(LIMITS_PART));
    const carried = this.carriedFor(hints).of(cell, model, ranges, share);
    return truckVerdict(made.value, this.poses, { ranges, hints, carried }, share);
  }

  private modelAt(column: number, row: number) {
    return changedTruck(this.truck, [this.x[column]!, this.y[row]!]);
  }

  /** Poses at which trucks all over the chart come near: of its corners and its middle. */
  private hintsFor(budget: Budget): PoseHints {
    if (this.hints !== null) return this.hints;
    const [right, top] = [this.columns - 1, this.rows - 1];
    const places = [
      [0, 0],
      [right, 0],
      [0, top],
      [right, top],
      [right >> 1, top >> 1],
    ] as const;
    const trucks = places.flatMap(([column, row]) => {
      const made = this.modelAt(column, row);
      if (!made.ok) return [];
      const model = withAskedTravel(made.value, this.poses);
      return hasHeight(model) ? [{ model, ranges: this.rangesOf(model, budget) }] : [];
    });
    this.hints = hintsOf(trucks, budget);
    return this.hints;
  }

  private carriedFor(hints: PoseHints): CarriedBounds {
    this.carried ??= new CarriedBounds(this.columns, this.rows, this.poses.lock, hints, (column, row) => {
      const made = this.modelAt(column, row);
      if (!made.ok) return null;
      const model = withAskedTravel(made.value, this.poses);
      return hasHeight(model) ? model : null;
    });
    return this.carried;
  }

  private rangesOf(model: Model, budget: Budget): Ranges {
    const key = linkageText(model);
    const known = this.ranges.get(key);
    if (known !== undefined) return known;
    const { ranges } = rangesToCheck(model, this.poses, budget);
    if (this.ranges.size >= RANGES_KEPT) this.ranges.delete(this.ranges.keys().next().value!);
    if (!budget.cut) this.ranges.set(key, ranges);
    return ranges;
  }

  private linkageAt(column: number, row: number): string | null {
    const made = this.modelAt(column, row);
    return made.ok ? linkageText(made.value) : null;
  }
}

function hasHeight(model: Model): boolean {
  const { low, high } = limitTravel(model);
  return low <= high;
}

function issueText([first]: readonly SetupIssue[]): string {
  return first === undefined ? "" : `${first.key}: ${first.mend}`;
}
