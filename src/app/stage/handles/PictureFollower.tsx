import { useFrame, useThree } from "@react-three/fiber";
import { useEffect } from "react";
import { Vector3 } from "three";
import { handleStore } from "./handleStore.ts";
import type { Picture } from "./picturePlane.ts";

/** mm. Long enough that rounding does not turn an axis. */
const FAR = 1000;

/** Pixels over that length that tell one picture from another. */
const SAME = 0.05;

// Leaf scratch.
const projected = new Vector3();

/** Notes where the axes fall, whenever a frame is drawn that is seen from elsewhere. The projection is parallel. */
export function PictureFollower() {
  const invalidate = useThree((s) => s.invalidate);
  useEffect(() => invalidate(), [invalidate]);
  useFrame(({ camera, size }) => {
    camera.updateMatrixWorld();
    const place = (x: number, y: number, z: number) => {
      projected.set(x, y, z).project(camera);
      return { x: 0.5 * (projected.x + 1) * size.width, y: 0.5 * (1 - projected.y) * size.height };
    };
    const origin = place(0, 0, 0);
    const way = (x: number, y: number, z: number) => {
      const end = place(x, y, z);
      return { x: (end.x - origin.x) / FAR, y: (end.y - origin.y) / FAR };
    };
    const now: Picture = { origin, axes: [way(FAR, 0, 0), way(0, FAR, 0), way(0, 0, FAR)] };
    const before = handleStore.getState().picture;
    if (before === null || !isSame(before, now)) handleStore.setState({ picture: now });
  });
  return null;
}

function isSame(a: Picture, b: Picture): boolean {
  const isNear = (p: number, q: number, scale: number) => scale * Math.abs(p - q) < SAME;
  return (
    isNear(a.origin.x, b.origin.x, 1) &&
    isNear(a.origin.y, b.origin.y, 1) &&
    a.axes.every((axis, i) => isNear(axis.x, b.axes[i]!.x, FAR) && isNear(axis.y, b.axes[i]!.y, FAR))
  );
}
