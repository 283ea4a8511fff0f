import { WHEEL_ROW, type WheelTable } from "./wheelTable.ts";

/** Numbers a pose in `halfStepsOf`. */
export const HALF_STEP_ROW = 2 * WHEEL_ROW;

/** Half of what center and axis change from a row of the table to the next, then from a column to the next. */
export function halfStepsOf({ rows, columns, wheels }: WheelTable): Float64Array {
  const out = new Float64Array(rows * columns * HALF_STEP_ROW);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const at = (row * columns + column) * HALF_STEP_ROW;
      const up = Math.max(0, row - 1);
      const down = Math.min(rows - 1, row + 1);
      const left = Math.max(0, column - 1);
      const right = Math.min(columns - 1, column + 1);
      for (let k = 0; k < WHEEL_ROW; k++) {
        const byRow =
          wheels[(down * columns + column) * WHEEL_ROW + k]! -
          wheels[(up * columns + column) * WHEEL_ROW + k]!;
        const byColumn =
          wheels[(row * columns + right) * WHEEL_ROW + k]! - wheels[(row * columns + left) * WHEEL_ROW + k]!;
        out[at + k] = down > up ? (0.5 * byRow) / (down - up) : 0;
        out[at + WHEEL_ROW + k] = right > left ? (0.5 * byColumn) / (right - left) : 0;
      }
    }
  }
  return out;
}

/** Whether a pose stands in the first row (1), the last (2), the first column (4), the last (8). */
export function endsOf({ rows, columns }: WheelTable): Uint8Array {
  const out = new Uint8Array(rows * columns);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      out[row * columns + column] =
        (row === 0 ? 1 : 0) |
        (row === rows - 1 ? 2 : 0) |
        (column === 0 ? 4 : 0) |
        (column === columns - 1 ? 8 : 0);
    }
  }
  return out;
}

/**
 * How far a point of the ring moves within half a step of the table to either side of each pose, down and along it,
 * at most, mm. @param ballRadius no point of the ring is farther from the wheel center, mm.
 */
export function motionsOf({ rows, columns, wheels }: WheelTable, ballRadius: number): Float64Array {
  const apart = (a: number, b: number) => {
    const [i, j] = [a * WHEEL_ROW, b * WHEEL_ROW];
    const slide = Math.hypot(
      wheels[i]! - wheels[j]!,
      wheels[i + 1]! - wheels[j + 1]!,
      wheels[i + 2]! - wheels[j + 2]!,
    );
    const turn = Math.hypot(
      wheels[i + 3]! - wheels[j + 3]!,
      wheels[i + 4]! - wheels[j + 4]!,
      wheels[i + 5]! - wheels[j + 5]!,
    );
    return slide + ballRadius * turn;
  };
  return Float64Array.from({ length: rows * columns }, (_, pose) => {
    const column = pose % columns;
    const row = (pose - column) / columns;
    const down = Math.max(
      row > 0 ? apart(pose - columns, pose) : 0,
      row < rows - 1 ? apart(pose, pose + columns) : 0,
    );
    const across = Math.max(
      column > 0 ? apart(pose - 1, pose) : 0,
      column < columns - 1 ? apart(pose, pose + 1) : 0,
    );
    return 0.5 * (down + across);
  });
}
