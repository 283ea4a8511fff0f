import { type Matrix4, Vector3 } from "three";
import type { Vec3 } from "../../geometry/vec.ts";

// Leaf scratch.
const x = new Vector3();
const y = new Vector3();
const z = new Vector3();

/**
 * Fills the matrix of a frame on three points: origin at the first, x toward the second, y toward the third
 * (made square to x). A rigid body built in such a frame is placed by where its points are now.
 */
export function frameTo(out: Matrix4, origin: Vec3, along: Vec3, aside: Vec3): Matrix4 {
  x.set(along[0] - origin[0], along[1] - origin[1], along[2] - origin[2]).normalize();
  y.set(aside[0] - origin[0], aside[1] - origin[1], aside[2] - origin[2]);
  z.crossVectors(x, y).normalize();
  y.crossVectors(z, x);
  return out.makeBasis(x, y, z).setPosition(origin[0], origin[1], origin[2]);
}
