import { useCallback, useRef } from "react";
import type { Group } from "three";
import { addScaled, length, mirrorY, sub } from "../../geometry/vec.ts";
import type { SolvedPose } from "../../suspension/solvePose.ts";
import type { Truck } from "../state/truck.ts";
import { frameTo } from "./frameTo.ts";
import { moveTo } from "./moveTo.ts";
import { rodGeometry } from "./rodGeometry.ts";
import { Solid } from "./Solid.tsx";
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
