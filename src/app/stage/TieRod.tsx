import { useCallback, useRef } from "react";
import type { Group } from "three";
import { addScaled, vecAt } from "../../geometry/vec.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { POSE } from "../../suspension/poseRow.ts";
import { SIDE } from "../../suspension/sideRow.ts";
import type { SolvedPose } from "../../suspension/solvePose.ts";
import type { Truck } from "../state/truck.ts";
import { frameTo } from "./frameTo.ts";
import { moveTo } from "./moveTo.ts";
import { rodGeometry } from "./rodGeometry.ts";
import { Solid } from "./Solid.tsx";
import { useGeometry } from "./useGeometry.ts";
import { usePoseSync } from "./usePoseSync.ts";

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
      <Solid geometry={geometry} tone="rod" />
    </group>
  );
}
