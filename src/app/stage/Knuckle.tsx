import { useCallback, useRef } from "react";
import type { Group } from "three";
import type { BuildSetup } from "../../setup/types/buildTypes.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import type { SolvedPose } from "../../suspension/solvePose.ts";
import { useStage } from "../state/stageSettings.ts";
import type { Truck } from "../state/truck.ts";
import { Brake, Housings, Studs } from "./BoltedOn.tsx";
import { BuildBodies } from "./BuildBodies.tsx";
import { CutOpen } from "./CutOpen.tsx";
import { knuckleFrameTo, moveTo } from "./frames.ts";
import { isGuess, MADE_OF } from "./guess.ts";
import { useInk } from "./InkProvider.tsx";
import { knuckleBodyGeometry, knuckleGeometry } from "./knuckleGeometry.ts";
import { dashesGeometry } from "./lineGeometry.ts";
import { Solid } from "./Solid.tsx";
import { useGeometry } from "./useGeometry.ts";
import { usePoseSync } from "./usePoseSync.ts";

export type KnuckleProps = {
  truck: Truck;
  side: Side;
  /** No wheel stands on it: the steering axis is drawn no farther than the part. Default false. */
  isAlone?: boolean;
};

function hasShape({ pin, members, plates }: BuildSetup): boolean {
  return pin !== null || plates.length > 0 || members.some(({ kind }) => kind !== "link");
}

/** mm below the lower ball joint that the axis of a knuckle drawn alone goes. */
const REACH_ALONE = 90;

/**
 * The knuckle with what rides on it, and the steering axis as a center line. In its true size where the setup gives
 * hardware; else a likeness of one.
 */
export function Knuckle({ truck, side, isAlone = false }: KnuckleProps) {
  const { knuckle, hardware, build } = truck.setup;
  const isCutOpen = useStage((s) => s.isCutOpen);
  // Alone it is shown as it is built, as far as the build has a shape.
  const isBuilt = isAlone && build !== null && hasShape(build);
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
      {isBuilt ? (
        <>
          <BuildBodies build={build} knuckle={knuckle} />
          <Studs studs={build.studs} span={knuckle.span} />
          {hardware && <Housings span={knuckle.span} hardware={hardware} />}
          {hardware && <Brake knuckle={knuckle} hardware={hardware} isSeenThrough />}
          {isCutOpen && <CutOpen pinLead={knuckle.pinLead} />}
        </>
      ) : (
        <>
          <Solid geometry={geometry} tone="knuckle" isGuess={isGuess(truck.setup, ...MADE_OF.knuckle)} />
          {hardware && <Brake knuckle={knuckle} hardware={hardware} />}
        </>
      )}
      <SteeringAxis span={knuckle.span} reach={isAlone ? REACH_ALONE : truck.model.tire.loadedRadius} />
    </group>
  );
}

export type SteeringAxisProps = {
  /** Lower to upper ball joint, mm. */
  span: number;
  /** How far it is drawn below the lower ball joint, mm. */
  reach: number;
};

/** The steering axis, drawn as a center line through both ball joints and toward the floor. Knuckle frame. */
function SteeringAxis({ span, reach }: SteeringAxisProps) {
  const ink = useInk();
  const geometry = useGeometry(
    () =>
      dashesGeometry([
        [
          [0, 0, -reach],
          [0, 0, span + 120],
        ],
      ]),
    [span, reach],
  );
  return <lineSegments geometry={geometry} material={ink.centerLine} />;
}
