import type { Model } from "../../src/studies/model/model.ts";
import { armAngleFor } from "../../src/suspension/armAngle.ts";
import type { Side } from "../../src/suspension/frontEnd.ts";
import { PoseStatus } from "../../src/suspension/poseStatus.ts";
import { INNER_ENDS_ROW } from "../../src/suspension/steering.ts";

const SIDES = ["left", "right"] as const;

/** A travel, mm, and a steer, −1 … +1. */
export interface GridPose {
  readonly travel: number;
  readonly steer: number;
}

/** One side's inputs of the pose kernel: (cos, sin) of the arm angle and the inner tie rod end, in rows of 5. */
export interface KernelInputs {
  readonly side: Float64Array;
  readonly inputs: Float64Array;
}

/** Numbers in a row of `KernelInputs`. */
export const INPUT_ROW = 5;

/** Travel and steer of a grid over the truck's whole travel, lock to lock. `count` > 1 values of each. */
export function gridOf(model: Model, count: number): GridPose[] {
  const { droop, bump } = model.setup.travel;
  const shares = Array.from({ length: count }, (_, i) => i / (count - 1));
  return shares.flatMap((t) => shares.map((s) => ({ travel: droop + t * (bump - droop), steer: 2 * s - 1 })));
}

/** The kernel's inputs at those poses, worked out beforehand. @throws Error when a pose is out of reach. */
export function kernelInputs(model: Model, poses: readonly GridPose[]): KernelInputs[] {
  return SIDES.map((side) => kernelInputsOf(model, side, poses));
}

function kernelInputsOf(model: Model, side: Side, poses: readonly GridPose[]): KernelInputs {
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
