import { useCallback, useRef } from "react";
import type { Group } from "three";
import { addScaled, length, mirrorY, sub, vecAt } from "../../geometry/vec.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { POSE } from "../../suspension/poseRow.ts";
import { SIDE } from "../../suspension/sideRow.ts";
import type { SolvedPose } from "../../suspension/solvePose.ts";
import type { Truck } from "../state/truck.ts";
import { moveTo } from "./frames.ts";
import { frameTo } from "./frameTo.ts";
import { isGuess, MADE_OF } from "./guess.ts";
import { Solid } from "./Solid.tsx";
import { rodGeometry } from "./solidGeometry.ts";
import { useGeometry } from "./useGeometry.ts";
import { usePoseSync } from "./usePoseSync.ts";

export type SteeringLinkProps = {
  truck: Truck;
};

/** What carries the inner tie rod ends across the truck: the rack, or the center link between its two ends. */
export function SteeringLink({ truck }: SteeringLinkProps) {
  const { restLeft, restRight } = truck.model.frontEnd.steering;
  const between = length(sub(mirrorY(restRight), restLeft));
  const geometry = useGeometry(() => rodGeometry([0, 0, 0], [between, 0, 0], 13), [between]);
  const group = useRef<Group>(null);
  const apply = useCallback((pose: SolvedPose) => {
    const left = pose.left.tieRodInner;
    moveTo(group.current, (matrix) =>
      frameTo(matrix, left, pose.right.tieRodInner, addScaled(left, [0, 0, 1], 1)),
    );
  }, []);
  usePoseSync(truck, apply);
  return (
    <group ref={group} matrixAutoUpdate={false}>
      <Solid geometry={geometry} tone="rod" />
    </group>
  );
}

/** mm. A likeness, where the setup gives no hardware. */
const RADIUS = 10;

export type TieRodProps = {
  truck: Truck;
  side: Side;
};

/** The tie rod, from the inner end to the knuckle's steering arm. */
export function TieRod({ truck, side }: TieRodProps) {
  const rodLength = truck.model.frontEnd[side].row[SIDE.tieRodLength]!;
  const radius = truck.setup.hardware?.tieRod.radius ?? RADIUS;
  const geometry = useGeometry(() => rodGeometry([0, 0, 0], [rodLength, 0, 0], radius), [rodLength, radius]);
  const group = useRef<Group>(null);
  const apply = useCallback(
    (pose: SolvedPose) => {
      const inner = vecAt(pose[side].row, POSE.tieRodInner);
      const outer = vecAt(pose[side].row, POSE.tieRodOuter);
      moveTo(group.current, (matrix) => frameTo(matrix, inner, outer, addScaled(inner, [0, 0, 1], 1)));
    },
    [side],
  );
  usePoseSync(truck, apply);
  return (
    <group ref={group} matrixAutoUpdate={false}>
      <Solid geometry={geometry} tone="rod" isGuess={isGuess(truck.setup, ...MADE_OF.tieRod)} />
    </group>
  );
}
