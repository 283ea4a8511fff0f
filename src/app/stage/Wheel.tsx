import { useCallback, useRef } from "react";
import type { Group } from "three";
import type { Side } from "../../suspension/frontEnd.ts";
import type { SolvedPose } from "../../suspension/solvePose.ts";
import type { Truck } from "../state/truck.ts";
import { moveTo, wheelFrameTo } from "./frames.ts";
import { useInk } from "./InkProvider.tsx";
import { circlesGeometry, ringCircles } from "./lineGeometry.ts";
import { Solid } from "./Solid.tsx";
import { discOutline, latheGeometry, rimOutline } from "./solidGeometry.ts";
import { treadGeometry } from "./treadGeometry.ts";
import { useGeometry } from "./useGeometry.ts";
import { usePoseSync } from "./usePoseSync.ts";

export type WheelProps = {
  truck: Truck;
  side: Side;
};

/** Tire and wheel: the very profile that gaps are measured to, and its center, a plain disc where none is given. Veiled, so that the knuckle shows. */
export function Wheel({ truck, side }: WheelProps) {
  const ink = useInk();
  const ring = truck.model.tire;
  const { offset, center } = truck.setup.wheel;
  const tire = useGeometry(() => latheGeometry(ring.profile), [ring]);
  const rim = useGeometry(() => latheGeometry(rimOutline(ring.profile, ring.barrelRadius)), [ring]);
  const disc = useGeometry(
    () =>
      latheGeometry(
        center
          ? center.flatMap(([x, r]) => [x + offset, r])
          : discOutline(ring.profile, ring.barrelRadius, offset),
      ),
    [ring, offset, center],
  );
  const tread = useGeometry(() => treadGeometry(ring.profile), [ring]);
  const circles = useGeometry(() => circlesGeometry(ringCircles(ring.profile)), [ring]);
  const group = useRef<Group>(null);
  const apply = useCallback(
    (pose: SolvedPose) => moveTo(group.current, (matrix) => wheelFrameTo(matrix, pose[side].row)),
    [side],
  );
  usePoseSync(truck, apply);
  return (
    <group ref={group} matrixAutoUpdate={false}>
      <Solid geometry={tire} tone="tire" veil={1} hasEdges={false} />
      <Solid geometry={rim} tone="wheel" veil={1} hasOutline={false} hasEdges={false} />
      <Solid geometry={disc} tone="wheel" veil={1} hasOutline={false} hasEdges={false} />
      {ink.groove && <mesh geometry={tread} material={ink.groove} renderOrder={13} />}
      <lineSegments geometry={circles} material={ink.edge.clear} renderOrder={11} />
    </group>
  );
}
