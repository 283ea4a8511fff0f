import type { ModelAsk } from "../../studies/alignment/modelAsked.ts";
import type { HeightStop } from "../../studies/limits/heightWay.ts";
import type { NoLimits, SteerLimits } from "../../studies/map/steerLimits.ts";
import type { CheckReport } from "../../studies/reports/check.ts";

/** A truck asked about. Numbered, so that an answer can be matched to its question. */
export interface CounterRequest extends ModelAsk {
  readonly id: number;
  /** Heights at which to see how far it steers, mm. */
  readonly travels: readonly number[];
}

/** First how far it steers at each height asked for, in that order; then, after a while, the whole range. */
export type CounterAnswer =
  | {
      readonly id: number;
      readonly kind: "steering";
      readonly steering: readonly (SteerLimits | NoLimits)[];
      /** What keeps the truck from each height; null = it stands there. */
      readonly heights: readonly (HeightStop | null)[];
    }
  | { readonly id: number; readonly kind: "check"; readonly report: CheckReport }
  | { readonly id: number; readonly kind: "failed"; readonly message: string };
