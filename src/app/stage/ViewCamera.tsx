import { OrbitControls } from "@react-three/drei/core/OrbitControls.js";
import { useThree } from "@react-three/fiber";
import { type ComponentRef, useLayoutEffect, useRef } from "react";
import type { OrthographicCamera } from "three";
import type { Truck } from "../state/truck.ts";
import { useWorkbench } from "../state/useWorkbench.ts";
import { type Extent, extentOf } from "./extent.ts";
import { fitZoom } from "./fitZoom.ts";
import { VIEW_DIRECTIONS } from "./viewDirections.ts";

export type ViewCameraProps = {
  truck: Truck;
};

/** mm from the truck's middle to the eye. The projection is parallel: only what is cut off depends on it. */
const DISTANCE = 6000;

/** Stands where the chosen view is taken from, holds the whole truck, and lets a hand turn it from there. */
export function ViewCamera({ truck }: ViewCameraProps) {
  const camera = useThree((s) => s.camera) as OrthographicCamera;
  const size = useThree((s) => s.size);
  const invalidate = useThree((s) => s.invalidate);
  const view = useWorkbench((s) => s.view);
  const viewsAsked = useWorkbench((s) => s.viewsAsked);
  const controls = useRef<ComponentRef<typeof OrbitControls>>(null);
  const fitted = useRef<{ readonly extent: Extent; readonly zoom: number } | null>(null);
  const shown = useRef(truck);
  shown.current = truck;

  // A variant is looked at from where the truck it varies was; another file is looked at afresh.
  // biome-ignore lint/correctness/useExhaustiveDependencies: asking again, or opening another file, sets the view anew
  useLayoutEffect(() => {
    const extent = extentOf(shown.current);
    const { min, max } = extent;
    const [x, y, z] = VIEW_DIRECTIONS[view];
    const far = DISTANCE / Math.hypot(x, y, z);
    const middle = [0, 1, 2].map((i) => 0.5 * (min[i]! + max[i]!)) as [number, number, number];
    camera.up.set(0, 0, 1);
    camera.position.set(middle[0] + far * x, middle[1] + far * y, middle[2] + far * z);
    camera.lookAt(...middle);
    camera.updateMatrixWorld();
    camera.zoom = fitZoom(camera, extent, size.width, size.height);
    camera.updateProjectionMatrix();
    fitted.current = { extent, zoom: camera.zoom };
    controls.current?.target.set(...middle);
    controls.current?.update();
    invalidate();
  }, [camera, invalidate, view, viewsAsked, truck.file]);

  // A new size keeps the direction and how far in a hand has zoomed.
  useLayoutEffect(() => {
    const before = fitted.current;
    if (!before) return;
    camera.updateMatrixWorld();
    const zoom = fitZoom(camera, before.extent, size.width, size.height);
    camera.zoom *= zoom / before.zoom;
    camera.updateProjectionMatrix();
    fitted.current = { extent: before.extent, zoom };
    invalidate();
  }, [camera, invalidate, size]);

  return <OrbitControls ref={controls} makeDefault enableDamping={false} minZoom={0.05} maxZoom={20} />;
}
