import { useCallback, useMemo, useRef } from "react";
import { type Group, LatheGeometry, Vector2, Vector3 } from "three";
import { addScaled, length, sub, type Vec3, vecAt } from "../../geometry/vec.ts";
import type { AirSpringSetup } from "../../setup/types/airTypes.ts";
import type { ShockLimit } from "../../setup/types/limitsTypes.ts";
import {
  lowerMountTo,
  type SpringOrShock,
  springOrShockOnArm,
  springOrShockOnKnuckle,
} from "../../studies/model/springOrShock.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import type { SolvedPose } from "../../suspension/solvePose.ts";
import { useStage } from "../state/stageSettings.ts";
import type { Truck } from "../state/truck.ts";
import { moveTo } from "./frames.ts";
import { frameTo } from "./frameTo.ts";
import { MirroredSide } from "./MirroredSide.tsx";
import { Solid } from "./Solid.tsx";
import { rodGeometry } from "./solidGeometry.ts";
import { useGeometry } from "./useGeometry.ts";
import { usePoseSync } from "./usePoseSync.ts";

export type SpringsProps = {
  truck: Truck;
};

/** mm. Likenesses, where the setup gives no diameter. */
const BAG = 150;
const SHOCK = 48;

/** Air springs, squashed to the height they have now, and shocks; where the setup says where they are mounted. */
export function Springs({ truck }: SpringsProps) {
  const isShown = useStage((s) => s.hasSprings);
  const { airSpring, limits } = truck.setup;
  const shock = limits?.shock ?? null;
  if (!isShown) return null;
  return (["left", "right"] as const).map((side) => (
    <MirroredSide key={side} side={side}>
      {airSpring && <AirBag truck={truck} side={side} spring={airSpring} />}
      {shock && <Shock truck={truck} side={side} shock={shock} />}
    </MirroredSide>
  ));
}

// Leaf scratch.
const mount = new Float64Array(3);
const size = new Vector3();

function AirBag({ truck, side, spring }: { truck: Truck; side: Side; spring: AirSpringSetup }) {
  const { bodyMount, armMount, diameter } = spring;
  const { row } = truck.model.frontEnd[side];
  const mounted = useMemo(() => springOrShockOnArm(row, bodyMount, armMount), [row, bodyMount, armMount]);
  const geometry = useGeometry(bagGeometry, []);
  const group = useRef<Group>(null);
  const radius = 0.5 * (diameter ?? BAG);
  const apply = useCallback(
    (pose: SolvedPose) => {
      const low = lowerMount(mounted, pose, side);
      moveTo(group.current, (matrix) => {
        frameTo(matrix, bodyMount, low, addScaled(bodyMount, [1, 0, 0], 1));
        matrix.scale(size.set(length(sub(low, bodyMount)), radius, radius));
      });
    },
    [mounted, side, bodyMount, radius],
  );
  usePoseSync(truck, apply);
  return (
    <group ref={group} matrixAutoUpdate={false}>
      <Solid geometry={geometry} tone="tire" hasEdges={false} />
    </group>
  );
}

function Shock({ truck, side, shock }: { truck: Truck; side: Side; shock: ShockLimit }) {
  const { bodyMount, lowerMount: low, on, compressed, diameter } = shock;
  const { row } = truck.model.frontEnd[side];
  const mounted = useMemo(
    () =>
      on === "knuckle" ? springOrShockOnKnuckle(bodyMount, low) : springOrShockOnArm(row, bodyMount, low),
    [row, bodyMount, low, on],
  );
  const radius = 0.5 * (diameter ?? SHOCK);
  // The can hangs on the lower mount, the rod on the body: together as long as the shock is when it is shortest.
  const can = useGeometry(
    () => rodGeometry([0, 0, 0], [0.7 * compressed, 0, 0], radius),
    [compressed, radius],
  );
  const rod = useGeometry(
    () => rodGeometry([0, 0, 0], [0.98 * compressed, 0, 0], 0.3 * radius),
    [compressed, radius],
  );
  const top = useRef<Group>(null);
  const bottom = useRef<Group>(null);
  const apply = useCallback(
    (pose: SolvedPose) => {
      const now = lowerMount(mounted, pose, side);
      moveTo(top.current, (matrix) => frameTo(matrix, bodyMount, now, addScaled(bodyMount, [1, 0, 0], 1)));
      moveTo(bottom.current, (matrix) => frameTo(matrix, now, bodyMount, addScaled(now, [1, 0, 0], 1)));
    },
    [mounted, side, bodyMount],
  );
  usePoseSync(truck, apply);
  return (
    <>
      <group ref={top} matrixAutoUpdate={false}>
        <Solid geometry={rod} tone="rod" />
      </group>
      <group ref={bottom} matrixAutoUpdate={false}>
        <Solid geometry={can} tone="knuckle" />
      </group>
    </>
  );
}

function lowerMount(mounted: SpringOrShock, pose: SolvedPose, side: Side): Vec3 {
  lowerMountTo(mount, mounted, pose[side].row, 0);
  return vecAt(mount, 0);
}

/** A bag of two folds along +x from 0 to 1, its widest radius 1: stretched to height and diameter when it is placed. */
function bagGeometry() {
  const waist = 0.82;
  const profile: Vector2[] = [new Vector2(0, 0), new Vector2(0.6, 0)];
  for (let lobe = 0; lobe < 2; lobe++) {
    for (let k = lobe; k <= 12; k++) {
      const t = k / 12;
      const end = lobe === 0 ? 0.6 : waist;
      const other = lobe === 0 ? waist : 0.6;
      const base = end + (other - end) * t;
      profile.push(new Vector2(base + (1 - base) * Math.sin(Math.PI * t), 0.5 * (lobe + t)));
    }
  }
  profile.push(new Vector2(0, 1));
  // Three turns it about y: laid along +x.
  return new LatheGeometry(profile, 32).rotateZ(-0.5 * Math.PI);
}
