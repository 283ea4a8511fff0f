import { useFrame, useThree } from "@react-three/fiber";
import { useEffect } from "react";
import { Plane, Vector3 } from "three";
import { stageSettings } from "../state/stageSettings.ts";

/** mm kept on the cut-away side, so that what lies in the plane itself is still drawn. */
const HAIR = 0.3;

// Leaf scratch.
const eye = new Vector3();
const plane = new Plane();
const NO_PLANES: Plane[] = [];

/** Leaves out what stands before the section plane, as seen by the eye. */
export function SectionClip() {
  const gl = useThree((s) => s.gl);
  useEffect(() => {
    return () => {
      gl.clippingPlanes = NO_PLANES;
    };
  }, [gl]);
  useFrame(({ camera }) => {
    const cut = stageSettings.getState().section;
    if (cut === null) {
      gl.clippingPlanes = NO_PLANES;
      return;
    }
    camera.getWorldDirection(eye);
    // Kept is the far side: away from the eye along the axis cut.
    const keep = eye[cut.axis] < 0 ? -1 : 1;
    plane.normal.set(0, 0, 0);
    plane.normal[cut.axis] = keep;
    plane.constant = HAIR - keep * cut.at;
    gl.clippingPlanes = [plane];
  });
  return null;
}
