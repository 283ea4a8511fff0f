import type { Side } from "../../suspension/frontEnd.ts";
import type { Verdict } from "../reports/check.ts";

/** A value of an axis, as plain data: one field's value or a block's keys. */
export interface AxisEntry {
  /** What it is called on the chart. */
  readonly label: string;
  /** As the setup file would hold it. */
  readonly typed: unknown;
}

/** An axis as it is asked for, plain data. */
export interface AxisAsk {
  /** The field's key, or a block's: `wheel.backspacing`, `tire`. */
  readonly key: string;
  readonly entries: readonly AxisEntry[];
}

/** Two axes and the poses looked at, plain data. */
export interface ChartAsk {
  readonly x: AxisAsk;
  readonly y: AxisAsk;
  /** Travel, mm; null = the setup's droop to bump. */
  readonly travel: { readonly low: number; readonly high: number } | null;
  /** Share of full lock either way, more than 0 and at most 1. */
  readonly lock: number;
}

/** What one combination does over the poses looked at: proven. mm. */
export interface VerdictCell {
  readonly kind: "verdict";
  readonly verdict: Verdict;
  /** The worst gap found: at a pose that is there. Null where nothing is measured. */
  readonly gap: number | null;
  /** No pose has less; null where it rubs: how deep it gets elsewhere was not looked for. */
  readonly bound: number | null;
  /** What decides: null where nothing is measured. */
  readonly part: string | null;
  readonly side: Side | null;
  readonly travel: number;
  readonly steer: number;
  /** The same at every pose. */
  readonly together?: true;
}

export type ChartCell =
  | VerdictCell
  /** The truck does not go together: why, with the key. */
  | { readonly kind: "issue"; readonly issue: string }
  /** The budget was spent before it was known. */
  | { readonly kind: "unfinished" };
