import { type Matrix4, type Object3D, Vector3 } from "three";
import type { Vec3 } from "../../geometry/vec.ts";
import { POSE } from "../../suspension/poseRow.ts";

// Leaf scratch.
const x = new Vector3();
const y = new Vector3();
const z = new Vector3();

/** Fills the knuckle's matrix from a pose row: origin at the lower ball joint, x forward, y outboard, z up the axis. */
export function knuckleFrameTo(out: Matrix4, row: Float64Array): Matrix4 {
  read(x, row, POSE.knuckleX);
  read(y, row, POSE.knuckleY);
  read(z, row, POSE.knuckleZ);
  return place(out, row, POSE.lowerBallJoint);
}

/** Fills the wheel's matrix from a pose row: origin at the wheel center, x forward, y outboard along the wheel axis. */
export function wheelFrameTo(out: Matrix4, row: Float64Array): Matrix4 {
  // The pin is parallel to the knuckle's y–z plane, so the knuckle's x is square to the wheel axis.
  read(x, row, POSE.knuckleX);
  read(y, row, POSE.wheelAxis);
  z.crossVectors(x, y);
  return place(out, row, POSE.wheelCenter);
}

function read(v: Vector3, row: Float64Array, at: number): void {
  v.set(row[at]!, row[at + 1]!, row[at + 2]!);
}

function place(out: Matrix4, row: Float64Array, at: number): Matrix4 {
  return out.makeBasis(x, y, z).setPosition(row[at]!, row[at + 1]!, row[at + 2]!);
}

/** Moves an object that has `matrixAutoUpdate={false}` by letting `fill` write its matrix. */
export function moveTo(object: Object3D | null, fill: (matrix: Matrix4) => void): void {
  if (!object) return;
  fill(object.matrix);
  object.matrixWorldNeedsUpdate = true;
}

/** A point put through a matrix. */
export function transformed(point: Vec3, matrix: Matrix4): Vec3 {
  const { x, y, z } = new Vector3(...point).applyMatrix4(matrix);
  return [x, y, z];
}
