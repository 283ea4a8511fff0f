import { CELL, CellKind } from "../../gaps/cells/cells.ts";

/**
 * Fills a cell row with the piece of a rod between fractions `near` and `far` from its outer end. mm.
 * @param outer, inner the rod's ends, three numbers each at `outerAt`, `innerAt`.
 */
export function rodCellTo(
  out: Float64Array,
  outer: ArrayLike<number>,
  outerAt: number,
  inner: ArrayLike<number>,
  innerAt: number,
  near: number,
  far: number,
  radius: number,
): void {
  out[0] = CellKind.Segment;
  for (let i = 0; i < 3; i++) {
    const k = outer[outerAt + i]!;
    const along = inner[innerAt + i]! - k;
    out[1 + i] = k + near * along;
    out[4 + i] = k + far * along;
    out[7 + i] = 0;
  }
  out[CELL.radius] = radius;
}
