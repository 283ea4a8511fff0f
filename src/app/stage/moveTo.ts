import type { Matrix4, Object3D } from "three";

/** Moves an object that has `matrixAutoUpdate={false}` by letting `fill` write its matrix. */
export function moveTo(object: Object3D | null, fill: (matrix: Matrix4) => void): void {
  if (!object) return;
  fill(object.matrix);
  object.matrixWorldNeedsUpdate = true;
}
