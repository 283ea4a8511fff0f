/**
 * A cell is a convex bit of a part, as a flat row that a search can split: a segment (two points), a
 * triangle (three) or a box (center, half sizes). Left-hand frame, mm.
 */
export const CELL = { kind: 0, data: 1, radius: 10 } as const;

/** Numbers in a cell row: kind, nine of data, the radius of the part about the cell (paths have one). */
export const CELL_ROW = 11;

/** A solid is a box searched only once its faces are known to be hit, and to a coarser tolerance. */
export const CellKind = { Segment: 0, Triangle: 1, Box: 2, Solid: 3 } as const;

/** Fills `out[0..2]` with the cell's center. */
export function cellCenterTo(out: Float64Array, cells: Float64Array, at: number): void {
  const kind = cells[at];
  for (let i = 0; i < 3; i++) {
    const a = cells[at + 1 + i]!;
    if (kind === CellKind.Segment) out[i] = 0.5 * (a + cells[at + 4 + i]!);
    else if (kind === CellKind.Triangle) out[i] = (a + cells[at + 4 + i]! + cells[at + 7 + i]!) / 3;
    else out[i] = a;
  }
}

/** Farthest point of the cell from its center, mm. */
export function cellReach(cells: Float64Array, at: number, cx: number, cy: number, cz: number): number {
  const kind = cells[at];
  if (kind === CellKind.Box || kind === CellKind.Solid) {
    const hx = cells[at + 4]!;
    const hy = cells[at + 5]!;
    const hz = cells[at + 6]!;
    return Math.sqrt(hx * hx + hy * hy + hz * hz);
  }
  let mostSq = 0;
  const corners = kind === CellKind.Segment ? 2 : 3;
  for (let c = 0; c < corners; c++) {
    const x = cells[at + 1 + 3 * c]! - cx;
    const y = cells[at + 2 + 3 * c]! - cy;
    const z = cells[at + 3 + 3 * c]! - cz;
    const sq = x * x + y * y + z * z;
    if (sq > mostSq) mostSq = sq;
  }
  return Math.sqrt(mostSq);
}

/** The least of g·(p − center) over the cell (≤ 0): how much lower a slope g can make it anywhere in it. */
export function cellDescent(
  cells: Float64Array,
  at: number,
  cx: number,
  cy: number,
  cz: number,
  gx: number,
  gy: number,
  gz: number,
): number {
  const kind = cells[at];
  if (kind === CellKind.Box || kind === CellKind.Solid) {
    return -(Math.abs(gx) * cells[at + 4]! + Math.abs(gy) * cells[at + 5]! + Math.abs(gz) * cells[at + 6]!);
  }
  const a = gx * (cells[at + 1]! - cx) + gy * (cells[at + 2]! - cy) + gz * (cells[at + 3]! - cz);
  const b = gx * (cells[at + 4]! - cx) + gy * (cells[at + 5]! - cy) + gz * (cells[at + 6]! - cz);
  if (kind === CellKind.Segment) return a < b ? a : b;
  const c = gx * (cells[at + 7]! - cx) + gy * (cells[at + 8]! - cy) + gz * (cells[at + 9]! - cz);
  const ab = a < b ? a : b;
  return ab < c ? ab : c;
}

/**
 * Splits a cell across its longest side into two; either of `outA`, `outB` may be where the cell stood.
 * Segments and boxes are halved, triangles cut through the middle of their longest edge.
 */
export function splitCell(
  cells: Float64Array,
  at: number,
  out: Float64Array,
  outA: number,
  outB: number,
): void {
  const row = scratch;
  for (let i = 0; i < CELL_ROW; i++) row[i] = cells[at + i]!;
  for (let i = 0; i < CELL_ROW; i++) {
    out[outA + i] = row[i]!;
    out[outB + i] = row[i]!;
  }
  const kind = row[0];
  if (kind === CellKind.Segment) {
    for (let i = 0; i < 3; i++) {
      const middle = 0.5 * (row[1 + i]! + row[4 + i]!);
      out[outA + 4 + i] = middle;
      out[outB + 1 + i] = middle;
    }
    return;
  }
  if (kind === CellKind.Box || kind === CellKind.Solid) {
    let side = 0;
    if (row[5]! > row[4]!) side = 1;
    if (row[6]! > row[4 + side]!) side = 2;
    const half = 0.5 * row[4 + side]!;
    out[outA + 4 + side] = half;
    out[outB + 4 + side] = half;
    out[outA + 1 + side] = row[1 + side]! - half;
    out[outB + 1 + side] = row[1 + side]! + half;
    return;
  }
  const ab = edgeSq(row, 0, 1);
  const bc = edgeSq(row, 1, 2);
  const ca = edgeSq(row, 2, 0);
  const from = ab >= bc && ab >= ca ? 0 : bc >= ca ? 1 : 2;
  const to = (from + 1) % 3;
  for (let i = 0; i < 3; i++) {
    const middle = 0.5 * (row[1 + 3 * from + i]! + row[1 + 3 * to + i]!);
    out[outA + 1 + 3 * to + i] = middle;
    out[outB + 1 + 3 * from + i] = middle;
  }
}

const scratch = new Float64Array(CELL_ROW);

function edgeSq(row: Float64Array, a: number, b: number): number {
  const x = row[1 + 3 * a]! - row[1 + 3 * b]!;
  const y = row[2 + 3 * a]! - row[2 + 3 * b]!;
  const z = row[3 + 3 * a]! - row[3 + 3 * b]!;
  return x * x + y * y + z * z;
}

/** Swaps two cells. */
export function swapCells(cells: Float64Array, a: number, b: number): void {
  for (let i = 0; i < CELL_ROW; i++) {
    const keep = cells[a + i]!;
    cells[a + i] = cells[b + i]!;
    cells[b + i] = keep;
  }
}
