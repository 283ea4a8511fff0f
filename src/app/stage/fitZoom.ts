import { type OrthographicCamera, Vector3 } from "three";
import type { Extent } from "./extent.ts";

/** Share of the picture that is left free around what it must hold. */
const MARGIN = 0.05;

// Leaf scratch.
const corner = new Vector3();

/** Pixels per mm at which a camera that looks at the extent's center holds all of it. Needs the camera's matrices. */
export function fitZoom(camera: OrthographicCamera, extent: Extent, width: number, height: number): number {
  let halfWidth = 1;
  let halfHeight = 1;
  for (let i = 0; i < 8; i++) {
    const pick = (axis: 0 | 1 | 2) =>
      0.5 * (i & (1 << axis) ? 1 : -1) * (extent.max[axis] - extent.min[axis]);
    corner.set(pick(0), pick(1), pick(2)).transformDirection(camera.matrixWorldInverse);
    // transformDirection gives a unit vector; the length goes back on.
    corner.multiplyScalar(Math.hypot(pick(0), pick(1), pick(2)));
    halfWidth = Math.max(halfWidth, Math.abs(corner.x));
    halfHeight = Math.max(halfHeight, Math.abs(corner.y));
  }
  return (1 - MARGIN) * Math.min((0.5 * width) / halfWidth, (0.5 * height) / halfHeight);
}
