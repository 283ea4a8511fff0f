import { POSE_ROW, poseRowTo } from "../../src/suspension/poseRow.ts";
import { PoseStatus } from "../../src/suspension/poseStatus.ts";
import { INPUT_ROW, type KernelInputs } from "./poseGrid.ts";
import { processorTime } from "./processorTime.ts";

/** Both sides' pose rows at a list of poses, solved by the kernel as often as asked. */
export interface PoseTable {
  /** All rows, side after side. */
  readonly rows: Float64Array;
  /** Solves every pose of every side `rounds` times. @returns nanoseconds of processor time. */
  readonly clock: (rounds: number) => number;
}

/** Room for the poses of those inputs. */
export function poseTable(sides: readonly KernelInputs[]): PoseTable {
  const count = sides.reduce((sum, { inputs }) => sum + inputs.length / INPUT_ROW, 0);
  const rows = new Float64Array(count * POSE_ROW);
  return {
    rows,
    clock(rounds) {
      const start = processorTime();
      for (let round = 0; round < rounds; round++) solveAll(rows, sides);
      return processorTime() - start;
    },
  };
}

/** @throws Error when a pose is out of reach. */
function solveAll(rows: Float64Array, sides: readonly KernelInputs[]): void {
  let at = 0;
  for (const { side, inputs: v } of sides) {
    for (let i = 0; i < v.length; i += INPUT_ROW) {
      const status = poseRowTo(rows, at, side, v[i]!, v[i + 1]!, v[i + 2]!, v[i + 3]!, v[i + 4]!);
      if (status !== PoseStatus.Ok) throw new Error(`solveAll: pose ${i / INPUT_ROW} out of reach`);
      at += POSE_ROW;
    }
  }
}
