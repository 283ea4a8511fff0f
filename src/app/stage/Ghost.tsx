import { useThree } from "@react-three/fiber";
import { useLayoutEffect, useMemo, useRef } from "react";
import type { Group } from "three";
import type { Side } from "../../suspension/frontEnd.ts";
import type { Truck } from "../state/truck.ts";
import { useWorkbench } from "../state/useWorkbench.ts";
import { workbench } from "../state/workbench.ts";
import { ghostKnuckleGeometry, ghostWheelGeometry } from "./ghostGeometry.ts";
import { useInk } from "./InkProvider.tsx";
import { MirroredSide } from "./MirroredSide.tsx";
import { moveTo } from "./moveTo.ts";
import { otherPose, otherTruck } from "./otherTruck.ts";
import { knuckleFrameTo, wheelFrameTo } from "./rowFrameTo.ts";
import { useStage } from "./stageSettings.ts";
import { useGeometry } from "./useGeometry.ts";

export type GhostProps = {
  /** The truck shown. */
  truck: Truck;
};

/** Dashed outlines of another variant's wheels and knuckles, at the height and steering of the truck shown. */
export function Ghost({ truck }: GhostProps) {
  const choice = useStage((s) => s.ghost);
  const document = useWorkbench((s) => s.good?.document ?? null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the document is what the other truck is made of
  const other = useMemo(() => choice && otherTruck(workbench.getState(), choice.variant), [choice, document]);
  if (!other || other === truck) return null;
  return (
    <>
      <GhostSide truck={other} side="left" />
      <GhostSide truck={other} side="right" />
    </>
  );
}

function GhostSide({ truck, side }: { truck: Truck; side: Side }) {
  const ink = useInk();
  const invalidate = useThree((s) => s.invalidate);
  const ring = truck.model.tire;
  const { knuckle } = truck.setup;
  const wheel = useGeometry(() => ghostWheelGeometry(ring), [ring]);
  const upright = useGeometry(() => ghostKnuckleGeometry(knuckle), [knuckle]);
  const wheelGroup = useRef<Group>(null);
  const knuckleGroup = useRef<Group>(null);
  useLayoutEffect(() => {
    const follow = () => {
      const pose = otherPose(truck, workbench.getState());
      if (!pose) return;
      moveTo(wheelGroup.current, (matrix) => wheelFrameTo(matrix, pose[side].row));
      moveTo(knuckleGroup.current, (matrix) => knuckleFrameTo(matrix, pose[side].row));
      invalidate();
    };
    follow();
    return workbench.subscribe((now, before) => {
      if (now.travel !== before.travel || now.steer !== before.steer) follow();
    });
  }, [truck, side, invalidate]);
  return (
    <MirroredSide side={side}>
      <group ref={wheelGroup} matrixAutoUpdate={false}>
        <lineSegments geometry={wheel} material={ink.ghostLine} renderOrder={40} />
      </group>
      <group ref={knuckleGroup} matrixAutoUpdate={false}>
        <lineSegments geometry={upright} material={ink.ghostLine} renderOrder={40} />
      </group>
    </MirroredSide>
  );
}
