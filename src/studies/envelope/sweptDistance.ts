import { PoseDescent } from "./poseDescent.ts";
import type { SectionBends } from "./sectionBends.ts";
import type { SectionField } from "./sectionField.ts";
import { endsOf, HALF_STEP_ROW, halfStepsOf, motionsOf } from "./tableSteps.ts";
import { WHEEL_ROW, type WheelTable } from "./wheelTable.ts";

/**
 * Signed distance from a point to what the ring sweeps: the least over all poses of a table, and between
 * them, of the distance to the ring there. Poses between those of the table are interpolated linearly; the
 * nearest is found by going downhill from each pose of the table about which a lesser distance may be, so
 * scallops between poses vanish. What is found is never less than the true distance (but for interpolation).
 */
export class SweptDistance {
  /** What was found at the last point asked: see `PoseDescent.found`. */
  readonly found: Float64Array;
  private readonly descent: PoseDescent;
  /** Distances of the poses being looked at by their place in the table. */
  private readonly byPose: Float64Array;
  /** Whether a pose stands in the first row (1), the last (2), the first column (4), the last (8). */
  private readonly ends: Uint8Array;
  /** Gradient of the distance at the pose that `halfStep` was asked for last, and at the nearest of `pick`. */
  private readonly gradient = new Float64Array(3);
  private readonly nearest = new Float64Array(3);
  /** Place in the meridian plane that `at` looked at last: along the axis, from the axis. */
  private along = 0;
  private radius = 0;
  /** Half of what the wheel changes from a row to the next, then from a column to the next. */
  private readonly halfSteps: Float64Array;
  /** How far a point of the ring moves within half a step of the table about each pose, at most, mm. */
  private readonly motions: Float64Array;

  /** @param ballRadius no point of the ring is farther from the wheel center; @param worth less gain is not searched for, mm. */
  constructor(
    readonly table: WheelTable,
    private readonly field: SectionField,
    private readonly bends: SectionBends,
    ballRadius: number,
    private readonly worth: number,
  ) {
    this.descent = new PoseDescent(table, field);
    this.found = this.descent.found;
    this.byPose = new Float64Array(table.rows * table.columns);
    this.halfSteps = halfStepsOf(table);
    this.motions = motionsOf(table, ballRadius);
    this.ends = endsOf(table);
  }

  /** Distance at one pose of the table. */
  private at(pose: number, x: number, y: number, z: number): number {
    const { wheels } = this.table;
    const k = pose * WHEEL_ROW;
    const dx = x - wheels[k]!;
    const dy = y - wheels[k + 1]!;
    const dz = z - wheels[k + 2]!;
    const along = dx * wheels[k + 3]! + dy * wheels[k + 4]! + dz * wheels[k + 5]!;
    const sq = dx * dx + dy * dy + dz * dz - along * along;
    this.along = along;
    this.radius = sq > 0 ? Math.sqrt(sq) : 0;
    this.field.look(along, this.radius);
    return this.field.found[0]!;
  }

  /** Fills `found` for a point, with the least distance over the listed poses of the table and about them. */
  look(x: number, y: number, z: number, list: Int32Array, from: number, to: number): void {
    const { byPose, descent, found, motions } = this;
    descent.start(x, y, z);
    let least = Number.POSITIVE_INFINITY;
    let first = -1;
    for (let i = from; i < to; i++) {
      const d = this.at(list[i]!, x, y, z);
      byPose[list[i]!] = d;
      if (d < least) {
        least = d;
        first = list[i]!;
      }
    }
    if (first < 0) return;
    // First from where the distance is least, then from wherever less may be about a pose.
    this.descendFrom(first, x, y, z);
    for (let i = from; i < to; i++) {
      const pose = list[i]!;
      if (pose !== first && byPose[pose]! - motions[pose]! < found[0]! - this.worth)
        this.descendFrom(pose, x, y, z);
    }
  }

  /** Goes downhill from a pose of the table unless nothing less than what is found can be about it. */
  private descendFrom(pose: number, x: number, y: number, z: number): void {
    const { columns } = this.table;
    const { found } = this;
    const column = pose % columns;
    const row = (pose - column) / columns;
    const d = this.at(pose, x, y, z);
    const fall = this.halfStep(pose, x, y, z);
    this.bends.look(this.along, this.radius, this.motions[pose]!);
    const bend = this.bends.found[0]!;
    if (d - fall - bend > found[0]! - this.worth) return;
    // Where nothing bends, the descent would lead to what is found within a step of the pose.
    const isNear = Math.abs(row - found[1]!) <= 1 && Math.abs(column - found[2]!) <= 1;
    if (isNear && bend < this.worth) return;
    this.descent.descend(row, column, bend);
  }

  /**
   * Picks from a list of poses those about which the ring may be nearest somewhere in a cube about a point, and
   * writes them into the list from `to` on. Two bounds tell: no distance changes faster than one moves, and
   * none leaves its tangent by more than the section bends nearby. `found[0]` is then the least distance at a
   * pose of the table, `found[1]` a bound of how much less it can be between them.
   * @param reach half the cube's diagonal. @returns the end of the ones picked.
   */
  pick(x: number, y: number, z: number, reach: number, list: Int32Array, from: number, to: number): number {
    const { bends, byPose, found, gradient, motions, nearest } = this;
    let least = Number.POSITIVE_INFINITY;
    let best = list[from]!;
    for (let i = from; i < to; i++) {
      const d = this.at(list[i]!, x, y, z);
      byPose[list[i]!] = d;
      if (d < least) {
        least = d;
        best = list[i]!;
      }
    }
    this.at(best, x, y, z);
    this.halfStep(best, x, y, z);
    nearest.set(gradient);
    bends.look(this.along, this.radius, reach);
    const above = bends.found[1]!;
    const half = reach / Math.sqrt(3);
    let bound = least;
    let end = to;
    for (let i = from; i < to; i++) {
      const pose = list[i]!;
      const d = byPose[pose]!;
      const motion = motions[pose]!;
      if (d - motion > least + 2 * reach) continue;
      this.at(pose, x, y, z);
      const fall = this.halfStep(pose, x, y, z);
      bends.look(this.along, this.radius, motion);
      const lowest = d - Math.min(motion, fall + bends.found[0]!);
      if (lowest < bound) bound = lowest;
      bends.look(this.along, this.radius, motion + reach);
      // How much the two distances can draw together on the way to a corner of the cube.
      const closing =
        half *
        (Math.abs(gradient[0]! - nearest[0]!) +
          Math.abs(gradient[1]! - nearest[1]!) +
          Math.abs(gradient[2]! - nearest[2]!));
      if (d - fall - bends.found[0]! - least <= closing + above) list[end++] = pose;
    }
    found[0] = least;
    found[1] = least - bound;
    return end;
  }

  /**
   * How much the distance can fall, to first order, over half a step of the table to each side of the pose
   * that `at` looked at last; leaves the gradient there in `gradient`.
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
    this.gradient[0] = gx;
    this.gradient[1] = gy;
    this.gradient[2] = gz;
    // At an end of the table only the way back into it counts.
    const ends = this.ends[pose]!;
    const byRow = (down > 0 ? ends & 1 : ends & 2) === 0 ? Math.abs(down) : 0;
    const byColumn = (across > 0 ? ends & 4 : ends & 8) === 0 ? Math.abs(across) : 0;
    return byRow + byColumn;
  }
}
