import type { OpenWay } from "./measured.ts";
import type { SolvedEquations } from "./solveEquations.ts";
import type { Unknowns } from "./unknowns.ts";

/** Share of a pivot below which a direction is rounding. */
const ROUNDING = 1e-6;

/** Share of the largest that is left out of what a person is told. */
const SMALL = 0.05;

/**
 * What too few readings leave open, each way by itself: the space that no reading tells (what is square to all singular
 * vectors of the slopes), taken apart by elimination so that each way has as few points as it can.
 */
export function openWays(unknowns: Unknowns, { open }: SolvedEquations): readonly OpenWay[] {
  const { list, within } = unknowns;
  const rows = reduced(open.map((row) => row.map((share, i) => share * within[i]!)));
  return rows.flatMap((row) => {
    const large = row.reduce((most, value) => (Math.abs(value) > Math.abs(most) ? value : most), 0);
    const moves = row.flatMap((value, i) => {
      const unknown = list[i]!;
      const by = value / large;
      if (unknown.kind === "size" || Math.abs(by) < SMALL) return [];
      const side = unknown.kind === "left" ? ("left" as const) : ("right" as const);
      return [{ point: unknown.point, side, axis: unknown.axis, by }];
    });
    return moves.length === 0 ? [] : [{ moves }];
  });
}

/** Rows that span the same as the given ones, as few numbers in each as elimination leaves, in the order of their pivots. */
function reduced(given: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const rows = given.map((row) => [...row]);
  const found: { row: number[]; pivot: number }[] = [];
  const largest = Math.max(1, ...rows.flat().map(Math.abs));
  const left = new Set(rows.keys());
  for (;;) {
    let best = { row: -1, column: -1, size: ROUNDING * largest };
    for (const i of left)
      rows[i]!.forEach((value, column) => {
        if (Math.abs(value) > best.size) best = { row: i, column, size: Math.abs(value) };
      });
    if (best.row < 0) break;
    left.delete(best.row);
    const pivot = rows[best.row]!.map((value) => value / rows[best.row]![best.column]!);
    const clear = (row: number[]) => {
      const factor = row[best.column]!;
      if (factor !== 0) for (let k = 0; k < row.length; k++) row[k] = row[k]! - factor * pivot[k]!;
    };
    for (const i of left) clear(rows[i]!);
    for (const { row } of found) clear(row);
    found.push({ row: pivot, pivot: best.column });
  }
  return found.sort((a, b) => a.pivot - b.pivot).map(({ row }) => row);
}
