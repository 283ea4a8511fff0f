import { type BufferGeometry, CylinderGeometry, Quaternion, SphereGeometry, Vector3 } from "three";
import type { Vec3 } from "../../geometry/vec.ts";

const UP = new Vector3(0, 1, 0);

/** A round bar from one point to another. @param endRadius at `to`; default the same all along */
export function rodGeometry(from: Vec3, to: Vec3, radius: number, endRadius = radius): BufferGeometry {
  const a = new Vector3(...from);
  const along = new Vector3(...to).sub(a);
  const length = along.length();
  const turn = new Quaternion().setFromUnitVectors(UP, along.normalize());
  return new CylinderGeometry(endRadius, radius, length, 20)
    .translate(0, 0.5 * length, 0)
    .applyQuaternion(turn)
    .translate(a.x, a.y, a.z);
}

/** A ball at a point. */
export function ballGeometry(at: Vec3, radius: number): BufferGeometry {
  return new SphereGeometry(radius, 20, 12).translate(at[0], at[1], at[2]);
}
