import { useCallback, useRef } from "react";
import { BufferGeometry, Float32BufferAttribute, type Group, type Matrix4, Vector3 } from "three";
import type { FloorPlane } from "../../studies/stances/floorPose.ts";
import { floorOf } from "../../studies/wording/poseWords.ts";
import type { SolvedPose } from "../../suspension/solvePose.ts";
import type { Truck } from "../state/truck.ts";
import { moveTo } from "./frames.ts";
import { useInk } from "./InkProvider.tsx";
import { dashesGeometry } from "./lineGeometry.ts";
import { stageFloor } from "./stagePose.ts";
import { useGeometry } from "./useGeometry.ts";
import { usePoseSync } from "./usePoseSync.ts";

export type FloorProps = {
  truck: Truck;
};

/** Half length and half width of the floor drawn, in squares. */
const HALF = 6;

// Leaf scratch.
const along = new Vector3();
const across = new Vector3();
const up = new Vector3();

/**
 * The floor at the contact patches, in squares of 6 in or 150 mm, with the center plane and the axle line on it. The body
 * stands still: the floor comes up as the truck goes down, and leans as the body rolls or pitches over it.
 */
export function Floor({ truck }: FloorProps) {
  const ink = useInk();
  const square = truck.setup.units === "in" ? 152.4 : 150;
  const grid = useGeometry(() => gridGeometry(square), [square]);
  const reach = (HALF + 0.7) * square;
  const lines = useGeometry(
    () =>
      dashesGeometry([
        [
          [-reach, 0, 0],
          [reach, 0, 0],
        ],
        [
          [0, -reach, 0],
          [0, reach, 0],
        ],
      ]),
    [reach],
  );
  const group = useRef<Group>(null);
  const apply = useCallback(
    (pose: SolvedPose) =>
      moveTo(group.current, (matrix) => {
        const plane = stageFloor(truck, pose)?.plane;
        if (plane === undefined) matrix.identity().setPosition(0, 0, floorOf(pose));
        else floorFrameTo(matrix, plane);
      }),
    [truck],
  );
  usePoseSync(truck, apply);
  return (
    <group ref={group} matrixAutoUpdate={false}>
      <lineSegments geometry={grid} material={ink.gridLine} />
      <lineSegments geometry={lines} material={ink.centerLine} />
    </group>
  );
}

/** Puts the floor's own square axes on a plane, its middle straight below the vehicle's origin. */
function floorFrameTo(matrix: Matrix4, { normal, offset }: FloorPlane): void {
  up.set(normal[0], normal[1], normal[2]);
  across.crossVectors(up, along.set(1, 0, 0)).normalize();
  along.crossVectors(across, up);
  matrix.makeBasis(along, across, up).setPosition(0, 0, offset / normal[2]);
}

function gridGeometry(square: number): BufferGeometry {
  const positions: number[] = [];
  const reach = HALF * square;
  for (let k = -HALF; k <= HALF; k++) {
    const at = k * square;
    positions.push(-reach, at, 0, reach, at, 0, at, -reach, 0, at, reach, 0);
  }
  return new BufferGeometry().setAttribute("position", new Float32BufferAttribute(positions, 3));
}
