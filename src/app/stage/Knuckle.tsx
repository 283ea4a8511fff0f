import { useCallback, useRef } from "react";
import type { Group } from "three";
import type { Side } from "../../suspension/frontEnd.ts";
import type { SolvedPose } from "../../suspension/solvePose.ts";
import type { Truck } from "../state/truck.ts";
import { Brake } from "./Brake.tsx";
import { knuckleBodyGeometry } from "./hardwareGeometry.ts";
import { knuckleGeometry } from "./knuckleGeometry.ts";
import { moveTo } from "./moveTo.ts";
import { knuckleFrameTo } from "./rowFrameTo.ts";
import { Solid } from "./Solid.tsx";
import { SteeringAxis } from "./SteeringAxis.tsx";
import { useGeometry } from "./useGeometry.ts";
import { usePoseSync } from "./usePoseSync.ts";

export type KnuckleProps = {
  truck: Truck;
  side: Side;
  /** No wheel stands on it: the steering axis is drawn no farther than the part. Default false. */
  isAlone?: boolean;
};

/** mm below the lower ball joint that the axis of a knuckle drawn alone goes. */
const REACH_ALONE = 90;

/**
 * The knuckle with what rides on it, and the steering axis as a center line. In its true size where the setup gives
 * hardware; else a likeness of one.
 */
export function Knuckle({ truck, side, isAlone = false }: KnuckleProps) {
  const { knuckle, hardware } = truck.setup;
  const geometry = useGeometry(
    () => (hardware ? knuckleBodyGeometry(knuckle, hardware) : knuckleGeometry(knuckle)),
    [knuckle, hardware],
  );
  const group = useRef<Group>(null);
  const apply = useCallback(
    (pose: SolvedPose) => moveTo(group.current, (matrix) => knuckleFrameTo(matrix, pose[side].row)),
    [side],
  );
  usePoseSync(truck, apply);
  return (
    <group ref={group} matrixAutoUpdate={false}>
      <Solid geometry={geometry} tone="knuckle" />
      {hardware && <Brake knuckle={knuckle} hardware={hardware} />}
      <SteeringAxis span={knuckle.span} reach={isAlone ? REACH_ALONE : truck.model.tire.loadedRadius} />
    </group>
  );
}
