import type { OrbitControls } from "@react-three/drei/core/OrbitControls.js";
import { useThree } from "@react-three/fiber";
import { type ComponentRef, type RefObject, useEffect } from "react";
import { setStage } from "../state/stageSettings.ts";

export type StageKeysProps = {
  /** The element that has the focus when the keys are meant for the picture. */
  target: RefObject<HTMLElement | null>;
};

/** Radians that an arrow key turns the truck. */
const TURN = Math.PI / 24;
const ZOOM = 1.15;

/** Turns and zooms the picture by keys: arrows turn, plus and minus zoom, F fills the window with it. */
export function StageKeys({ target }: StageKeysProps) {
  const get = useThree((s) => s.get);
  useEffect(() => {
    const element = target.current;
    const onKeyDown = (event: KeyboardEvent) => {
      const { camera, invalidate } = get();
      const controls = get().controls as ComponentRef<typeof OrbitControls> | null;
      // What lies in the picture (points, a label to press) has keys of its own.
      if (event.target !== element) return;
      if (!controls || event.ctrlKey || event.metaKey || event.altKey) return;
      const zoomBy = (factor: number) => {
        camera.zoom = Math.min(controls.maxZoom, Math.max(controls.minZoom, camera.zoom * factor));
        camera.updateProjectionMatrix();
      };
      const azimuth = controls.getAzimuthalAngle();
      const polar = controls.getPolarAngle();
      if (event.key === "ArrowLeft") controls.setAzimuthalAngle(azimuth - TURN);
      else if (event.key === "ArrowRight") controls.setAzimuthalAngle(azimuth + TURN);
      else if (event.key === "ArrowUp") controls.setPolarAngle(Math.max(0, polar - TURN));
      else if (event.key === "ArrowDown") controls.setPolarAngle(Math.min(Math.PI, polar + TURN));
      else if (event.key === "+" || event.key === "=") zoomBy(ZOOM);
      else if (event.key === "-") zoomBy(1 / ZOOM);
      else if (event.key === "f") setStage(({ isFilled }) => ({ isFilled: !isFilled }));
      else return;
      event.preventDefault();
      invalidate();
    };
    element?.addEventListener("keydown", onKeyDown);
    return () => element?.removeEventListener("keydown", onKeyDown);
  }, [get, target]);
  return null;
}
