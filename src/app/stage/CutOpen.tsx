import { useFrame, useThree } from "@react-three/fiber";
import { useEffect, useRef } from "react";
import { type Group, Plane, Vector3 } from "three";

// Leaf scratch.
const eye = new Vector3();
const normal = new Vector3();
const place = new Vector3();
const plane = new Plane();
const NO_PLANES: Plane[] = [];

/** Leaves out what of a knuckle stands before the plane of its pin and steering axis, as seen by the eye. Knuckle frame. */
export function CutOpen({ pinLead }: { pinLead: number }) {
  const group = useRef<Group>(null);
  const gl = useThree((s) => s.gl);
  const invalidate = useThree((s) => s.invalidate);
  useEffect(() => {
    invalidate();
    return () => {
      gl.clippingPlanes = NO_PLANES;
      invalidate();
    };
  }, [gl, invalidate]);
  useFrame(({ camera }) => {
    if (!group.current) return;
    const { matrixWorld } = group.current;
    normal.setFromMatrixColumn(matrixWorld, 0).normalize();
    place.set(pinLead, 0, 0).applyMatrix4(matrixWorld);
    // Kept is the far side.
    if (normal.dot(camera.getWorldDirection(eye)) < 0) normal.negate();
    plane.setFromNormalAndCoplanarPoint(normal, place);
    gl.clippingPlanes = [plane];
  });
  return <group ref={group} />;
}
