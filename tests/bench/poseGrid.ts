import type { Model } from "../../src/studies/model.ts";
import { armAngleFor } from "../../src/suspension/armAngle.ts";
import type { Side } from "../../src/suspension/frontEnd.ts";
import { POSE, POSE_ROW, poseRowTo } from "../../src/suspension/poseRow.ts";
import { PoseStatus } from "../../src/suspension/poseStatus.ts";
import { INNER_ENDS_ROW } from "../../src/suspension/steering.ts";

const SIDES = ["left", "right"] as const;

/** One side's inputs of the pose kernel: (cos, sin) of the arm angle and the inner tie rod end, in rows of 5. */
interface KernelInputs {
  readonly side: Float64Array;
  readonly inputs: Float64Array;
}
const INPUT_ROW = 5;

/** Travel and steer of a grid over the truck's whole travel, lock to lock. `count` > 1 values of each. */
export function gridOf(model: Model, count: number): { readonly travel: number; readonly steer: number }[] {
  const { droop, bump } = model.setup.travel;
  const shares = Array.from({ length: count }, (_, i) => i / (count - 1));
  return shares.flatMap((t) => shares.map((s) => ({ travel: droop + t * (bump - droop), steer: 2 * s - 1 })));
}

/** The kernel's inputs at those poses, worked out beforehand. @throws Error when a pose is out of reach. */
export function kernelInputs(model: Model, poses: ReturnType<typeof gridOf>): KernelInputs[] {
  return SIDES.map((side) => kernelInputsOf(model, side, poses));
}

function kernelInputsOf(model: Model, side: Side, poses: ReturnType<typeof gridOf>): KernelInputs {
  const ends = new Float64Array(INNER_ENDS_ROW);
  const inputs = new Float64Array(poses.length * INPUT_ROW);
  const end = side === "left" ? 0 : 3;
  for (const [i, { travel, steer }] of poses.entries()) {
    if (model.frontEnd.steering.innerEndsTo(ends, steer) !== PoseStatus.Ok) {
      throw new Error(`kernelInputs: the steering does not reach steer ${steer}`);
    }
    const angle = armAngleFor(model.frontEnd[side], travel);
    inputs.set([Math.cos(angle), Math.sin(angle), ...ends.subarray(end, end + 3)], i * INPUT_ROW);
  }
  return { side: model.frontEnd[side].row, inputs };
}

const out = new Float64Array(POSE_ROW);

/**
 * Solves every pose of every side. @returns the sum of the wheel centers' coordinates, left-hand frame, mm.
 * @throws Error when a pose is out of reach.
 */
export function sumWheelCenters(sides: readonly KernelInputs[]): number {
  let sum = 0;
  for (const { side, inputs: v } of sides) {
    for (let i = 0; i < v.length; i += INPUT_ROW) {
      const status = poseRowTo(out, 0, side, v[i]!, v[i + 1]!, v[i + 2]!, v[i + 3]!, v[i + 4]!);
      if (status !== PoseStatus.Ok) throw new Error(`sumWheelCenters: pose ${i / INPUT_ROW} out of reach`);
      sum += out[POSE.wheelCenter]! + out[POSE.wheelCenter + 1]! + out[POSE.wheelCenter + 2]!;
    }
  }
  return sum;
}
