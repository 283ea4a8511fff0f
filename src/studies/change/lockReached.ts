import { solvePose } from "../../suspension/solvePose.ts";
import type { Model } from "../model/model.ts";

/**
 * The greatest angle, rad, that a wheel is steered to at either lock, at full droop, as measured and at full bump, whatever stop is
 * there: what the linkage gives. null = none of these poses can be solved.
 */
export function lockReached({ frontEnd, setup }: Model): number | null {
  const { droop, bump } = setup.travel;
  const angles = [droop, 0, bump].flatMap((travel) =>
    [-1, 1].flatMap((steer) => {
      const pose = solvePose(frontEnd, travel, steer);
      return pose.ok ? [Math.abs(pose.left.steerAngle), Math.abs(pose.right.steerAngle)] : [];
    }),
  );
  return angles.length === 0 ? null : Math.max(...angles);
}
