import { useThree } from "@react-three/fiber";
import { useLayoutEffect, useRef } from "react";
import type { Group } from "three";
import type { Side } from "../../suspension/frontEnd.ts";
import { useStage } from "../state/stageSettings.ts";
import type { Truck } from "../state/truck.ts";
import { workbench } from "../state/workbench.ts";
import { knuckleFrameTo, moveTo, wheelFrameTo } from "./frames.ts";
import { ghostKnuckleGeometry, ghostWheelGeometry } from "./ghostGeometry.ts";
import { useInk } from "./InkProvider.tsx";
import { MirroredSide } from "./MirroredSide.tsx";
import { otherPose, useGhostTruck } from "./otherTruck.ts";
import { useGeometry } from "./useGeometry.ts";
import { Wipe } from "./Wipe.tsx";

export type GhostProps = {
  /** The truck shown. */
  truck: Truck;
};

/**
 * Another variant at the height and steering of the truck shown: its wheels and knuckles as dashed outlines, or all of
 * its front end on one side of a wipe.
 */
export function Ghost({ truck }: GhostProps) {
  const other = useGhostTruck(truck);
  const isWiped = useStage((s) => s.wipe !== null);
  if (other === null) return null;
  if (isWiped) return <Wipe other={other} />;
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
