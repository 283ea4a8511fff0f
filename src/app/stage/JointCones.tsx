import { useCallback, useRef } from "react";
import { BufferGeometry, Float32BufferAttribute, type Group } from "three";
import { addScaled, dot, scale, sub, type Vec3 } from "../../geometry/vec.ts";
import { type JointCone, jointConesAt } from "../../studies/limits/jointCones.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import type { SolvedPose } from "../../suspension/solvePose.ts";
import { useStage } from "../state/stageSettings.ts";
import type { Truck } from "../state/truck.ts";
import { moveTo } from "./frames.ts";
import { frameTo } from "./frameTo.ts";
import { useInk } from "./InkProvider.tsx";
import { coneGeometry, coneLines } from "./solidGeometry.ts";
import { useGeometry } from "./useGeometry.ts";
import { usePoseSync } from "./usePoseSync.ts";

export type JointConesProps = {
  truck: Truck;
};

/** mm. How far a cone and its stud are drawn: a likeness, longer than the joint itself. */
const CONE = 95;
const STUD = 125;

/** The cone that each ball joint's stud may lean in, about the housing, and the stud; where the setup limits them. */
export function JointCones({ truck }: JointConesProps) {
  const isShown = useStage((s) => s.hasJoints);
  const { limits } = truck.setup;
  if (!isShown || limits === null) return null;
  return (["left", "right"] as const).flatMap((side) =>
    (["upper ball joint", "lower ball joint"] as const).map((name) => {
      const limit = name === "upper ball joint" ? limits.upperBallJoint : limits.lowerBallJoint;
      return (
        limit && <Joint key={`${side} ${name}`} truck={truck} side={side} name={name} cone={limit.cone} />
      );
    }),
  );
}

type JointProps = { truck: Truck; side: Side; name: JointCone["name"]; cone: number };

/** Past its cone a joint gets the ink of what rubs and a dense hatch, and the overlay says so in words. */
function Joint({ truck, side, name, cone }: JointProps) {
  const ink = useInk();
  const fill = useGeometry(() => coneGeometry(cone, CONE), [cone]);
  const kept = useGeometry(() => coneLines(cone, CONE, 8), [cone]);
  const hatch = useGeometry(() => coneLines(cone, CONE, 40), [cone]);
  const stud = useGeometry(() => lineGeometry(STUD), []);
  const housing = useRef<Group>(null);
  const line = useRef<Group>(null);
  const inside = useRef<Group>(null);
  const outside = useRef<Group>(null);
  const apply = useCallback(
    (pose: SolvedPose) => {
      const found = jointConesAt(truck.model, pose).find((one) => one.name === name && one.side === side);
      if (found === undefined) return;
      // Drawn to the side on which the knuckle is: the stud is in it.
      const { upperBallJoint, lowerBallJoint } = pose[side];
      const up = sub(upperBallJoint, lowerBallJoint);
      const toKnuckle = name === "lower ball joint" ? 1 : -1;
      const way = Math.sign(toKnuckle * dot(found.stud, up)) || 1;
      moveTo(housing.current, (matrix) => alongTo(matrix, found.center, scale(found.housing, way)));
      moveTo(line.current, (matrix) => alongTo(matrix, found.center, scale(found.stud, way)));
      const isPassed = dot(found.housing, found.stud) < Math.cos(found.cone) - 1e-9;
      if (inside.current) inside.current.visible = !isPassed;
      if (outside.current) outside.current.visible = isPassed;
    },
    [truck, name, side],
  );
  usePoseSync(truck, apply);
  return (
    <>
      <group ref={housing} matrixAutoUpdate={false}>
        <mesh geometry={fill} material={ink.veil.rod} renderOrder={22} />
        <group ref={inside}>
          <lineSegments geometry={kept} material={ink.edge.clear} renderOrder={23} />
        </group>
        <group ref={outside} visible={false}>
          <lineSegments geometry={hatch} material={ink.edge.rubs} renderOrder={23} />
        </group>
      </group>
      <group ref={line} matrixAutoUpdate={false}>
        <lineSegments geometry={stud} material={ink.ghostLine} renderOrder={24} />
      </group>
    </>
  );
}

function alongTo(matrix: Parameters<typeof frameTo>[0], from: Vec3, way: Vec3): void {
  // Any direction that is not the way itself will do for the second axis.
  const aside: Vec3 = Math.abs(way[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0];
  frameTo(matrix, from, addScaled(from, way, 1), addScaled(from, aside, 1));
}

/** A line along +x, dashed by distance. */
function lineGeometry(length: number): BufferGeometry {
  return new BufferGeometry()
    .setAttribute("position", new Float32BufferAttribute([0, 0, 0, length, 0, 0], 3))
    .setAttribute("lineDistance", new Float32BufferAttribute([0, 0], 1));
}
