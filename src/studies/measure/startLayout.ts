import { bodyPointOf } from "../../setup/blocks/readings/readingPoint.ts";
import { leastSquares } from "../numeric/leastSquares.ts";
import { type Equation, pointsOf } from "./equations.ts";
import type { Unknowns } from "./unknowns.ts";

/** mm and rad: how near the scaled layout is wanted to a reading; what is farther off counts less and less. */
const NEAR = 50;
const NEAR_ANGLE = 0.1;

/** Along, across and up the truck: how much larger than assumed, one standard deviation, and how far it may be shifted, mm. */
const SCALE_WITHIN = 0.15;
const SHIFT_WITHIN = 50;

/**
 * Where the solving begins: the assumed layout, stretched along, across and up and shifted along and up so that it fits the
 * readings about. Where the body is tells nothing of the arms under it, so its readings do not stretch them. What the setup gives already stays where it is, and has no part in it: what is written into a setup does
 * not change what comes of the same readings again.
 */
export function startLayout(unknowns: Unknowns, equations: readonly Equation[]): readonly number[] {
  const { list, start, layout } = unknowns;
  const stretched = ([x, y, z, ahead, up]: readonly number[]) =>
    layout.map((value, i) => {
      const unknown = list[i]!;
      if (unknown.kind === "more") return value;
      if (unknown.kind === "size") return unknown.size === "frameWidth" ? value * (1 + y!) : value;
      if (unknown.axis === 1) return value * (1 + y!);
      return unknown.axis === 0 ? value * (1 + x!) + ahead! : value * (1 + z!) + up!;
    });
  const fitted = equations.filter(
    ({ reading }) =>
      reading.kind !== "size" &&
      reading.kind !== "plumb" &&
      pointsOf(reading).every((point) => bodyPointOf(point) === null),
  );
  const { at } = leastSquares({
    residuals: (factors) => {
      const values = stretched(factors);
      const off = fitted.map(({ value, is, reading }) =>
        rooted((value(values) - is) / (reading.kind === "angle" ? NEAR_ANGLE : NEAR)),
      );
      const [x, y, z, ahead, up] = factors as [number, number, number, number, number];
      return [...off, ...[x, y, z].map((one) => one / SCALE_WITHIN), ahead / SHIFT_WITHIN, up / SHIFT_WITHIN];
    },
    start: [0, 0, 0, 0, 0],
    scales: [SCALE_WITHIN, SCALE_WITHIN, SCALE_WITHIN, SHIFT_WITHIN, SHIFT_WITHIN],
  });
  return stretched(at).map((value, i) => (list[i]!.origin === "given" ? start[i]! : value));
}

/** A residual whose square grows as the residual itself once it is large: one slip of the hand does not stretch a truck. */
function rooted(residual: number): number {
  return Math.sign(residual) * Math.sqrt(2 * (Math.sqrt(1 + residual * residual) - 1));
}
