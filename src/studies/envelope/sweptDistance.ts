import type { SectionField } from "./sectionField.ts";
import { endsOf, HALF_STEP_ROW, halfStepsOf } from "./tableSteps.ts";
import { WHEEL_ROW, type WheelTable } from "./wheelTable.ts";

/** Share of a cube's reach by which distances in it may leave their tangents at its middle. */
const BEND_SHARE = 0.25;

/** First step of the search, in steps of the table. */
const FIRST_STEP = 0.4;
/** A step that lowered the distance is followed by one this much longer. */
const LONGER = 1.5;
/** mm. The search ends when its next step cannot be expected to gain this much. */
const LEAST_GAIN = 0.01;
const MOST_MOVES = 40;
/** mm. A pose from which the slopes promise less gain than this is not searched from. */
const WORTH = 0.25;
/**
 * Share of the table's spacing by which a distance between two poses of the table may be below what the slopes
 * at them say: the section is not convex, and its barrel is hollow.
 */
const LOOSE_SHARE = 0.15;

/** What is known at a pose: distance, its slopes down and along the table, its gradient x, y, z. */
const D = 0;
const ROW = 1;
const COLUMN = 2;
const GX = 3;

/**
 * Signed distance from a point to what the ring sweeps: the least over all poses of a table, and between
 * them, of the distance to the ring there. Poses between those of the table are interpolated linearly; the
 * nearest is found by going downhill from each pose of the table that is nearer than its neighbors, so
 * scallops between poses vanish. What is found is never less than the true distance (but for interpolation).
 */
export class SweptDistance {
  /**
   * What was found at the last point asked: the distance, row and column of the nearest pose, the unit
   * direction of growing distance (x, y, z).
   */
  readonly found = new Float64Array(6);
  private readonly point = new Float64Array(3);
  /** At the pose being tried, and at the best one of this descent. */
  private readonly tried = new Float64Array(6);
  private readonly kept = new Float64Array(6);
  /** Distances of the poses being looked at by their place in the table; infinite elsewhere. */
  private readonly byPose: Float64Array;
  /** Whether a pose stands in the first row (1), the last (2), the first column (4), the last (8). */
  private readonly ends: Uint8Array;
  private readonly lowest: Float64Array;
  private readonly gradients: Float64Array;
  private readonly loose: number;
  /** Half of what the wheel changes from a row to the next, then from a column to the next. */
  private readonly halfSteps: Float64Array;

  constructor(
    readonly table: WheelTable,
    private readonly field: SectionField,
  ) {
    this.byPose = new Float64Array(table.rows * table.columns).fill(Number.POSITIVE_INFINITY);
    this.gradients = new Float64Array(3 * table.rows * table.columns);
    this.lowest = new Float64Array(table.rows * table.columns);
    this.loose = LOOSE_SHARE * table.spacing;
    this.halfSteps = halfStepsOf(table);
    this.ends = endsOf(table);
  }

  /** Distance at one pose of the table. */
  at(pose: number, x: number, y: number, z: number): number {
    const { wheels } = this.table;
    const k = pose * WHEEL_ROW;
    const dx = x - wheels[k]!;
    const dy = y - wheels[k + 1]!;
    const dz = z - wheels[k + 2]!;
    const along = dx * wheels[k + 3]! + dy * wheels[k + 4]! + dz * wheels[k + 5]!;
    const sq = dx * dx + dy * dy + dz * dz - along * along;
    this.field.look(along, sq > 0 ? Math.sqrt(sq) : 0);
    return this.field.found[0]!;
  }

  /** Fills `found` for a point, with the least distance over the listed poses of the table and about them. */
  look(x: number, y: number, z: number, list: Int32Array, from: number, to: number): void {
    const { byPose, found, table } = this;
    this.point[0] = x;
    this.point[1] = y;
    this.point[2] = z;
    found[0] = Number.POSITIVE_INFINITY;
    let least = Number.POSITIVE_INFINITY;
    for (let i = from; i < to; i++) {
      const d = this.at(list[i]!, x, y, z);
      byPose[list[i]!] = d;
      this.lowest[list[i]!] = d - this.halfStep(list[i]!, x, y, z);
      if (d < least) least = d;
    }
    // First from where the distance is least, then from wherever the slopes say that less may be near.
    for (let pass = 0; pass < 2; pass++) {
      for (let i = from; i < to; i++) {
        const pose = list[i]!;
        if (pass === 0 ? byPose[pose] !== least : this.lowest[pose]! > found[0]! - WORTH) continue;
        const column = pose % table.columns;
        const row = (pose - column) / table.columns;
        // What is found within a step of a pose is what its own descent would lead to.
        const isNear = Math.abs(row - found[1]!) <= 1 && Math.abs(column - found[2]!) <= 1;
        if (pass === 1 && isNear) continue;
        this.descend(row, column);
        if (pass === 0) break;
      }
    }
    for (let i = from; i < to; i++) byPose[list[i]!] = Number.POSITIVE_INFINITY;
  }

  /**
   * Picks from a list of poses those that may be nearest somewhere in a cube about a point, by the
   * slopes at each, `reach` half its diagonal, and writes them into the list from `to` on. `found[0]` is then the least distance at a
   * pose of the table, `found[1]` a bound of how much less it can be between them.
   * @returns the end of the ones picked.
   */
  pick(x: number, y: number, z: number, reach: number, list: Int32Array, from: number, to: number): number {
    const { byPose, found } = this;
    let least = Number.POSITIVE_INFINITY;
    let nearest = list[from]!;
    let bound = Number.POSITIVE_INFINITY;
    for (let i = from; i < to; i++) {
      const pose = list[i]!;
      const d = this.at(pose, x, y, z);
      const lowest = d - this.halfStep(pose, x, y, z) - this.loose;
      byPose[pose] = lowest;
      if (d < least) {
        least = d;
        nearest = pose;
      }
      if (lowest < bound) bound = lowest;
    }
    const half = reach / Math.sqrt(3);
    const { gradients } = this;
    const g = 3 * nearest;
    let end = to;
    for (let i = from; i < to; i++) {
      const pose = list[i]!;
      const k = 3 * pose;
      // How much the two distances can draw together on the way to a corner of the cube.
      const closing =
        half *
          (Math.abs(gradients[k]! - gradients[g]!) +
            Math.abs(gradients[k + 1]! - gradients[g + 1]!) +
            Math.abs(gradients[k + 2]! - gradients[g + 2]!)) +
        BEND_SHARE * reach;
      if (byPose[pose]! - least <= Math.min(closing, 2 * reach)) list[end++] = pose;
      byPose[pose] = Number.POSITIVE_INFINITY;
    }
    found[0] = least;
    found[1] = least - bound;
    return end;
  }

  /**
   * How much the distance can fall, to first order, over half a step of the table to each side of the pose
   * that `at` looked at last; leaves the gradient there in `gradients`.
   */
  private halfStep(pose: number, x: number, y: number, z: number): number {
    const { wheels } = this.table;
    const { halfSteps } = this;
    const k = pose * WHEEL_ROW;
    const m = pose * HALF_STEP_ROW;
    const dx = x - wheels[k]!;
    const dy = y - wheels[k + 1]!;
    const dz = z - wheels[k + 2]!;
    const nx = wheels[k + 3]!;
    const ny = wheels[k + 4]!;
    const nz = wheels[k + 5]!;
    const along = dx * nx + dy * ny + dz * nz;
    const sq = dx * dx + dy * dy + dz * dz - along * along;
    const perR = sq > 0 ? this.field.found[2]! / Math.sqrt(sq) : 0;
    const kx = this.field.found[1]! - perR * along;
    const gx = kx * nx + perR * dx;
    const gy = kx * ny + perR * dy;
    const gz = kx * nz + perR * dz;
    const down =
      kx * (dx * halfSteps[m + 3]! + dy * halfSteps[m + 4]! + dz * halfSteps[m + 5]!) -
      (gx * halfSteps[m]! + gy * halfSteps[m + 1]! + gz * halfSteps[m + 2]!);
    const across =
      kx * (dx * halfSteps[m + 9]! + dy * halfSteps[m + 10]! + dz * halfSteps[m + 11]!) -
      (gx * halfSteps[m + 6]! + gy * halfSteps[m + 7]! + gz * halfSteps[m + 8]!);
    this.gradients[3 * pose] = gx;
    this.gradients[3 * pose + 1] = gy;
    this.gradients[3 * pose + 2] = gz;
    // At an end of the table only the way back into it counts.
    const ends = this.ends[pose]!;
    const byRow = (down > 0 ? ends & 1 : ends & 2) === 0 ? Math.abs(down) : 0;
    const byColumn = (across > 0 ? ends & 4 : ends & 8) === 0 ? Math.abs(across) : 0;
    return byRow + byColumn;
  }

  /**
   * Goes downhill from a pose, row and column with a step of their own: longer after a gain, cut to where
   * the slope should vanish after it turned. Keeps the end in `found` when it beats what is there.
   */
  private descend(row: number, column: number): void {
    const lastRow = this.table.rows - 1;
    const lastColumn = this.table.columns - 1;
    const { tried, kept, found } = this;
    let r = row;
    let c = column;
    let rowStep = FIRST_STEP;
    let columnStep = FIRST_STEP;
    this.between(r, c);
    kept.set(tried);
    for (let moves = 0; moves < MOST_MOVES; moves++) {
      const rowSlope = kept[ROW]!;
      const columnSlope = kept[COLUMN]!;
      const goesRow = rowSlope > 0 ? r > 0 : r < lastRow && rowSlope < 0;
      const goesColumn = columnSlope > 0 ? c > 0 : c < lastColumn && columnSlope < 0;
      const rowGain = goesRow ? Math.abs(rowSlope) * rowStep : 0;
      const columnGain = goesColumn ? Math.abs(columnSlope) * columnStep : 0;
      if (rowGain + columnGain < LEAST_GAIN) break;
      // Within half a step of the table the slopes do not lead below what is found already.
      const promised = (goesRow ? Math.abs(rowSlope) : 0) + (goesColumn ? Math.abs(columnSlope) : 0);
      if (kept[D]! - 0.5 * promised > found[0]!) break;
      // The axis that promises next to nothing stays where it is.
      const nr = rowGain > 0.1 * columnGain ? clamp(r - Math.sign(rowSlope) * rowStep, lastRow) : r;
      const nc = columnGain > 0.1 * rowGain ? clamp(c - Math.sign(columnSlope) * columnStep, lastColumn) : c;
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

function clamp(value: number, last: number): number {
  return value < 0 ? 0 : value > last ? last : value;
}

/** Where the slope turned, the step to its zero if it were straight; else longer after a gain, half after none. */
function nextStep(step: number, slope: number, slopeThere: number, gained: boolean): number {
  if (slope * slopeThere >= 0) return gained ? step * LONGER : 0.5 * step;
  const zero = slope / (slope - slopeThere);
  // After a gain the search stands beyond the zero; after none before it.
  const share = gained ? 1 - zero : zero;
  return step * (share < 0.05 ? 0.05 : share);
}
