import { OrbitControls } from "@react-three/drei/core/OrbitControls.js";
import { useThree } from "@react-three/fiber";
import { type ComponentRef, useLayoutEffect, useRef } from "react";
import type { OrthographicCamera } from "three";
import { pressedPart, useScanPick } from "../state/scanPick.ts";
import { useStage } from "../state/stageSettings.ts";
import type { Truck } from "../state/truck.ts";
import { useWorkbench } from "../state/useWorkbench.ts";
import { workbench } from "../state/workbench.ts";
import { type Extent, extentOf, partExtent, wellExtent } from "./extents.ts";
import { knuckleExtent } from "./knuckleExtent.ts";
import { fitZoom, isOutgrown, isUntouched, type SetView, standAt, viewDirection } from "./viewFit.ts";

/** Pixels of the picture's width that dimensions take around the truck. */
const DIMENSION_WIDTH = 120;

export type ViewCameraProps = {
  truck: Truck;
  /** Only one knuckle is drawn, always with its dimensions. */
  isAlone: boolean;
};

/** mm from the truck's middle to the eye. The projection is parallel: only what is cut off depends on it. */
const DISTANCE = 6000;

/** From the tire's middle to an eye in its wheel well, in free radii: nearer than the frame, clear of the tire at lock. */
const WELL_DISTANCE = 1.3;

/** Stands where the chosen view is taken from, holds the whole truck, and lets a hand turn it from there. */
export function ViewCamera({ truck, isAlone }: ViewCameraProps) {
  const camera = useThree((s) => s.camera) as OrthographicCamera;
  const size = useThree((s) => s.size);
  const invalidate = useThree((s) => s.invalidate);
  const view = useWorkbench((s) => s.view);
  const viewsAsked = useWorkbench((s) => s.viewsAsked);
  const side = useStage((s) => s.side);
  const hasDimensions = useStage((s) => s.hasDimensions) || isAlone;
  const room = hasDimensions ? Math.max(0.6, 1 - DIMENSION_WIDTH / size.width) : 1;
  const pressed = useScanPick(pressedPart);
  const controls = useRef<ComponentRef<typeof OrbitControls>>(null);
  const fitted = useRef<SetView | null>(null);
  const shown = useRef(truck);
  shown.current = truck;
  const isGesturing = useWorkbench((s) => s.isGesturing);

  const lookAt = useRef((_extent: Extent, _distance: number) => {});
  lookAt.current = (extent, distance) => {
    const middle = standAt(camera, extent, viewDirection(view, side), distance);
    camera.zoom = room * fitZoom(camera, extent, size.width, size.height);
    camera.updateProjectionMatrix();
    controls.current?.target.set(...middle);
    controls.current?.update();
    const { x, y, z } = camera.position;
    fitted.current = { extent, zoom: camera.zoom, eye: [x, y, z] };
    invalidate();
  };

  // A variant is looked at from where the truck it varies was; another file is looked at afresh.
  // biome-ignore lint/correctness/useExhaustiveDependencies: asking again, or opening another file, sets the view anew
  useLayoutEffect(() => {
    const isWell = view === "well" && !isAlone && pressed === null;
    const part = pressed === null ? undefined : shown.current.setup.truck.body[pressed];
    const extent = part
      ? partExtent(part)
      : isAlone
        ? knuckleExtent(shown.current, side, workbench.getState())
        : isWell
          ? wellExtent(shown.current, side)
          : extentOf(shown.current);
    lookAt.current(extent, isWell ? WELL_DISTANCE * shown.current.model.tire.freeRadius : DISTANCE);
  }, [camera, view, viewsAsked, side, truck.file, isAlone, pressed]);

  // A new size, or room for dimensions, keeps the direction and how far in a hand has zoomed.
  useLayoutEffect(() => {
    const before = fitted.current;
    if (!before) return;
    camera.updateMatrixWorld();
    const zoom = room * fitZoom(camera, before.extent, size.width, size.height);
    camera.zoom *= zoom / before.zoom;
    camera.updateProjectionMatrix();
    fitted.current = { ...before, zoom };
    invalidate();
  }, [camera, invalidate, size, room]);

  // A knuckle that has become another part is held whole again, once it rests; a view that a hand has set stays its own.
  useLayoutEffect(() => {
    const before = fitted.current;
    if (!isAlone || isGesturing || pressed !== null || !before) return;
    const extent = knuckleExtent(truck, side, workbench.getState());
    if (isOutgrown(before.extent, extent) && isUntouched(camera, before)) lookAt.current(extent, DISTANCE);
  }, [camera, truck, side, isAlone, isGesturing, pressed]);

  return <OrbitControls ref={controls} makeDefault enableDamping={false} minZoom={0.05} maxZoom={20} />;
}
