import { type BufferGeometry, CylinderGeometry, Matrix4 } from "three";
import { mergeGeometries } from "three/addons/utils/BufferGeometryUtils.js";
import type { Vec3 } from "../../geometry/vec.ts";
import type { ArmSetup } from "../../setup/types/types.ts";
import { frameTo } from "./frameTo.ts";
import { rodGeometry } from "./rodGeometry.ts";
import { transformed } from "./transformed.ts";

/** mm. Drawn so that a pivot looks like one; they stay on the frame and are not measured. */
const BUSHING_RADIUS = 26;
const BUSHING_LENGTH = 60;

/** A control arm in the frame of its own three points (`frameTo`): two legs, a bushing on each pivot. @param radius of a leg, mm; @param taper its radius at the ball joint, as a share */
export function armGeometry(arm: ArmSetup, radius: number, taper: number): BufferGeometry {
  const toFrame = frameTo(new Matrix4(), arm.frontPivot, arm.rearPivot, arm.ballJoint).invert();
  const inFrame = (point: Vec3) => transformed(point, toFrame);
  const front = inFrame(arm.frontPivot);
  const rear = inFrame(arm.rearPivot);
  const joint = inFrame(arm.ballJoint);
  const bushing = (at: Vec3) =>
    new CylinderGeometry(BUSHING_RADIUS, BUSHING_RADIUS, BUSHING_LENGTH, 20)
      .rotateZ(Math.PI / 2)
      .translate(at[0], at[1], at[2]);
  return mergeGeometries([
    rodGeometry(front, joint, radius, taper * radius),
    rodGeometry(rear, joint, radius, taper * radius),
    bushing(front),
    bushing(rear),
  ]);
}
