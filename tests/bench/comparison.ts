import type { Timing } from "./measure.ts";
import type { Target } from "./targets.ts";

/** What a comparison of the pose kernel with something else found, to be printed. */
export interface Comparison {
  readonly timings: readonly Timing[];
  readonly targets: readonly Target[];
  /** What was compared and how well the answers agree, a line each. */
  readonly notes: readonly string[];
}
