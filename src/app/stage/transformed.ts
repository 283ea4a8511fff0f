import { type Matrix4, Vector3 } from "three";
import type { Vec3 } from "../../geometry/vec.ts";

/** A point put through a matrix. */
export function transformed(point: Vec3, matrix: Matrix4): Vec3 {
  const { x, y, z } = new Vector3(...point).applyMatrix4(matrix);
  return [x, y, z];
}
