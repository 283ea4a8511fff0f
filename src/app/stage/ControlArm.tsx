import { useCallback, useRef } from "react";
import type { Group } from "three";
import { vecAt } from "../../geometry/vec.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { POSE } from "../../suspension/poseRow.ts";
import type { SolvedPose } from "../../suspension/solvePose.ts";
import type { Truck } from "../state/truck.ts";
import { moveTo } from "./frames.ts";
import { frameTo } from "./frameTo.ts";
import { isGuess, MADE_OF } from "./guess.ts";
import { Solid } from "./Solid.tsx";
import { armGeometry } from "./solidGeometry.ts";
import { useGeometry } from "./useGeometry.ts";
import { usePoseSync } from "./usePoseSync.ts";

export type ControlArmProps = {
  truck: Truck;
  side: Side;
  which: "upperArm" | "lowerArm";
};

/** mm. A likeness, where the setup gives no hardware. */
const LEG_RADIUS = { upperArm: 15, lowerArm: 19 } as const;
const JOINT = { upperArm: POSE.upperBallJoint, lowerArm: POSE.lowerBallJoint } as const;

/** A control arm, turning about its two pivots. */
export function ControlArm({ truck, side, which }: ControlArmProps) {
  const { rightArms = null } = truck.setup.alignment.standing ?? {};
  const arm = ((side === "right" && rightArms) || truck.setup.truck)[which];
  const given = truck.setup.hardware?.[which].radius ?? null;
  const geometry = useGeometry(
    () => armGeometry(arm, given ?? LEG_RADIUS[which], given === null ? 0.8 : 1),
    [arm, which, given],
  );
  const group = useRef<Group>(null);
  const apply = useCallback(
    (pose: SolvedPose) => {
      const joint = vecAt(pose[side].row, JOINT[which]);
      moveTo(group.current, (matrix) => frameTo(matrix, arm.frontPivot, arm.rearPivot, joint));
    },
    [arm, side, which],
  );
  usePoseSync(truck, apply);
  return (
    <group ref={group} matrixAutoUpdate={false}>
      <Solid geometry={geometry} tone="arm" isGuess={isGuess(truck.setup, ...MADE_OF[which])} />
    </group>
  );
}
