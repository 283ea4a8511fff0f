import type { SectionField } from "./sectionField.ts";
import { WHEEL_ROW, type WheelTable } from "./wheelTable.ts";

/** First step of the search, in steps of the table. */
const FIRST_STEP = 0.4;
/** A step that lowered the distance is followed by one this much longer. */
const LONGER = 1.5;
/** mm. The search ends when its next step cannot be expected to gain this much. */
const LEAST_GAIN = 0.01;
const MOST_MOVES = 40;
/** How far a descent that is not the first goes from its pose, in steps of the table: others begin beyond. */
const ROOM = 0.55;

/** What is known at a pose: distance, its slopes down and along the table, its gradient x, y, z. */
const D = 0;
const ROW = 1;
const COLUMN = 2;
const GX = 3;

/** Searches the pose nearest to a point between those of a table, which are interpolated linearly. */
export class PoseDescent {
  /**
   * The best of all descents since `start`: the distance, row and column of the pose, the unit direction of
   * growing distance (x, y, z).
   */
  readonly found = new Float64Array(6);
  private readonly point = new Float64Array(3);
  /** At the pose being tried, and at the best one of this descent. */
  private readonly tried = new Float64Array(6);
  private readonly kept = new Float64Array(6);

  constructor(
    private readonly table: WheelTable,
    private readonly field: SectionField,
  ) {}

  /** Begins anew about a point. */
  start(x: number, y: number, z: number): void {
    this.point[0] = x;
    this.point[1] = y;
    this.point[2] = z;
    this.found.fill(Number.POSITIVE_INFINITY, 0, 3);
  }

  /**
   * Goes downhill from a pose, row and column with a step of their own: longer after a gain, cut to where
   * the slope should vanish after it turned. Keeps the end in `found` when it beats what is there.
   * @param bend how far distances within half a step of the table may lie below what the slopes say, mm.
   */
  descend(row: number, column: number, bend: number): void {
    const lastRow = this.table.rows - 1;
    const lastColumn = this.table.columns - 1;
    const { tried, kept, found } = this;
    const isFirst = found[0] === Number.POSITIVE_INFINITY;
    const room = isFirst ? Number.POSITIVE_INFINITY : ROOM;
    const rowLow = Math.max(0, row - room);
    const rowHigh = Math.min(lastRow, row + room);
    const columnLow = Math.max(0, column - room);
    const columnHigh = Math.min(lastColumn, column + room);
    let r = row;
    let c = column;
    let rowStep = FIRST_STEP;
    let columnStep = FIRST_STEP;
    this.between(r, c);
    kept.set(tried);
    for (let moves = 0; moves < MOST_MOVES; moves++) {
      const rowSlope = kept[ROW]!;
      const columnSlope = kept[COLUMN]!;
      const goesRow = rowSlope > 0 ? r > rowLow : r < rowHigh && rowSlope < 0;
      const goesColumn = columnSlope > 0 ? c > columnLow : c < columnHigh && columnSlope < 0;
      const rowGain = goesRow ? Math.abs(rowSlope) * rowStep : 0;
      const columnGain = goesColumn ? Math.abs(columnSlope) * columnStep : 0;
      if (rowGain + columnGain < LEAST_GAIN) break;
      // Within half a step of the table the slopes do not lead below what is found already.
      const promised = (goesRow ? Math.abs(rowSlope) : 0) + (goesColumn ? Math.abs(columnSlope) : 0);
      if (kept[D]! - 0.5 * promised - bend > found[0]!) break;
      // The axis that promises next to nothing stays where it is.
      const nr = rowGain > 0.1 * columnGain ? clamp(r - Math.sign(rowSlope) * rowStep, rowLow, rowHigh) : r;
      const nc =
        columnGain > 0.1 * rowGain
          ? clamp(c - Math.sign(columnSlope) * columnStep, columnLow, columnHigh)
          : c;
      this.between(nr, nc);
      const gained = tried[D]! < kept[D]!;
      if (nr !== r) rowStep = nextStep(rowStep, rowSlope, tried[ROW]!, gained);
      if (nc !== c) columnStep = nextStep(columnStep, columnSlope, tried[COLUMN]!, gained);
      if (!gained) continue;
      r = nr;
      c = nc;
      for (let i = 0; i < 6; i++) kept[i] = tried[i]!;
    }
    if (kept[D]! < found[0]!) {
      found[0] = kept[D]!;
      found[1] = r;
      found[2] = c;
      found[3] = kept[GX]!;
      found[4] = kept[GX + 1]!;
      found[5] = kept[GX + 2]!;
    }
  }

  /** Distance, its slopes over the table and its gradient at a pose between those of the table. */
  private between(row: number, column: number): void {
    const { rows, columns, wheels } = this.table;
    const i = row >= rows - 1 ? (rows > 1 ? rows - 2 : 0) : row | 0;
    const j = column >= columns - 1 ? (columns > 1 ? columns - 2 : 0) : column | 0;
    const u = row - i;
    const v = column - j;
    const a = (i * columns + j) * WHEEL_ROW;
    const b = columns > 1 ? a + WHEEL_ROW : a;
    const c = rows > 1 ? a + columns * WHEEL_ROW : a;
    const e = c + (b - a);
    const wa = (1 - u) * (1 - v);
    const wb = (1 - u) * v;
    const wc = u * (1 - v);
    const we = u * v;
    const dx = this.point[0]! - (wa * wheels[a]! + wb * wheels[b]! + wc * wheels[c]! + we * wheels[e]!);
    const dy =
      this.point[1]! -
      (wa * wheels[a + 1]! + wb * wheels[b + 1]! + wc * wheels[c + 1]! + we * wheels[e + 1]!);
    const dz =
      this.point[2]! -
      (wa * wheels[a + 2]! + wb * wheels[b + 2]! + wc * wheels[c + 2]! + we * wheels[e + 2]!);
    let nx = wa * wheels[a + 3]! + wb * wheels[b + 3]! + wc * wheels[c + 3]! + we * wheels[e + 3]!;
    let ny = wa * wheels[a + 4]! + wb * wheels[b + 4]! + wc * wheels[c + 4]! + we * wheels[e + 4]!;
    let nz = wa * wheels[a + 5]! + wb * wheels[b + 5]! + wc * wheels[c + 5]! + we * wheels[e + 5]!;
    const size = 1 / Math.sqrt(nx * nx + ny * ny + nz * nz);
    nx *= size;
    ny *= size;
    nz *= size;
    const x = dx * nx + dy * ny + dz * nz;
    const sq = dx * dx + dy * dy + dz * dz - x * x;
    const r = sq > 0 ? Math.sqrt(sq) : 0;
    this.field.look(x, r);
    const slopeX = this.field.found[1]!;
    const slopeR = this.field.found[2]!;
    const perR = r > 0 ? slopeR / r : 0;
    const kx = slopeX - perR * x;
    const gx = kx * nx + perR * dx;
    const gy = kx * ny + perR * dy;
    const gz = kx * nz + perR * dz;
    // A center that moves by m and an axis that moves by w change the distance by kx·(d·w) − gradient·m.
    const v1 = 1 - v;
    const u1 = 1 - u;
    let rowSlope = 0;
    let columnSlope = 0;
    for (let k = 0; k < 3; k++) {
      const g = k === 0 ? gx : k === 1 ? gy : gz;
      const d = kx * (k === 0 ? dx : k === 1 ? dy : dz);
      const wheelRow = v1 * (wheels[c + k]! - wheels[a + k]!) + v * (wheels[e + k]! - wheels[b + k]!);
      const wheelColumn = u1 * (wheels[b + k]! - wheels[a + k]!) + u * (wheels[e + k]! - wheels[c + k]!);
      const axisRow =
        v1 * (wheels[c + 3 + k]! - wheels[a + 3 + k]!) + v * (wheels[e + 3 + k]! - wheels[b + 3 + k]!);
      const axisColumn =
        u1 * (wheels[b + 3 + k]! - wheels[a + 3 + k]!) + u * (wheels[e + 3 + k]! - wheels[c + 3 + k]!);
      rowSlope += d * axisRow - g * wheelRow;
      columnSlope += d * axisColumn - g * wheelColumn;
    }
    const { tried } = this;
    tried[D] = this.field.found[0]!;
    tried[ROW] = rowSlope;
    tried[COLUMN] = columnSlope;
    tried[GX] = gx;
    tried[GX + 1] = gy;
    tried[GX + 2] = gz;
  }
}

function clamp(value: number, low: number, high: number): number {
  return value < low ? low : value > high ? high : value;
}

/** Where the slope turned, the step to its zero if it were straight; else longer after a gain, half after none. */
function nextStep(step: number, slope: number, slopeThere: number, gained: boolean): number {
  if (slope * slopeThere >= 0) return gained ? step * LONGER : 0.5 * step;
  const zero = slope / (slope - slopeThere);
  // After a gain the search stands beyond the zero; after none before it.
  const share = gained ? 1 - zero : zero;
  return step * (share < 0.05 ? 0.05 : share);
}
