import type { LoadCase } from "./loadsTypes.ts";

const multiples = (name: string, of: Partial<LoadCase>): LoadCase => ({
  name,
  kind: "multiples",
  forward: 0,
  outboard: 0,
  up: 0,
  at: "contactPatch",
  wheel: "rolls",
  travel: null,
  steer: null,
  ...of,
});

/**
 * The cases of a setup that gives none, as multiples of the corner's weight. That suspension parts are looked at under a few
 * such cases, several times the weight up and about once or twice along and across, is from memory of textbooks on chassis
 * design; the numbers themselves are common practice, no source, and no standard: whoever answers for the part sets their own.
 */
export const DEFAULT_LOAD_CASES: readonly LoadCase[] = [
  /** What the truck does on the scale: the other cases are read against it. */
  multiples("standing", { up: 1 }),
  /** A pothole or hump: three times the weight. */
  multiples("bump", { up: 3 }),
  /** The outer wheel in a hard turn carries most of its axle, and its tire holds about what it carries. */
  multiples("cornering", { up: 1.6, outboard: -1.4 }),
  /** Weight moves forward in a hard stop, and the tire holds about what it carries. */
  multiples("braking", { up: 1.5, forward: -1.3, wheel: "braked" }),
  /** Both at once: the tire's hold is shared between them. */
  multiples("braking in a turn", { up: 1.8, forward: -1, outboard: -1, wheel: "braked" }),
  /** An edge met head on pushes the wheel back at its center, and up. */
  multiples("curb strike", { up: 2, forward: -2.5, at: "wheelCenter" }),
  /** All that falls, on one wheel. */
  multiples("one-wheel landing", { up: 4.5 }),
];
