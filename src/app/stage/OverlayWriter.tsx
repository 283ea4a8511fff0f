import { useFrame, useThree } from "@react-three/fiber";
import { type RefObject, useEffect, useRef } from "react";
import { Vector3 } from "three";
import type { Vec3 } from "../../geometry/vec.ts";
import { lengthFormatOf } from "../state/preferences.ts";
import { stageSettings } from "../state/stageSettings.ts";
import type { Truck } from "../state/truck.ts";
import { workbench } from "../state/workbench.ts";
import { work } from "../work/work.ts";
import { assumedLayer } from "./assumedLayer.ts";
import { axesSketch } from "./axesSketch.ts";
import { centerLayer } from "./centerLayer.ts";
import { dimensionLayer } from "./dimensionLayer.ts";
import { gapLayer } from "./gapLayer.ts";
import { handleStore } from "./handles/handleStore.ts";
import { jointLayer } from "./jointLayer.ts";
import { loadNamesLayer } from "./loadNamesLayer.ts";
import { loadScaleLayer } from "./loadScaleLayer.ts";
import { overlapLayer } from "./overlapLayer.ts";
import type { ScreenPoint } from "./overlay/gapMark.ts";
import type { OverlayLayer, PlacedLabel } from "./overlayLayer.ts";
import { sectionLayer, sectionOf } from "./sectionLayer.ts";
import { wipeLayer } from "./wipeLayer.ts";
import { worstOf } from "./worst.ts";

export type OverlayWriterProps = {
  truck: Truck;
  /** The knuckle is drawn alone: nothing of the truck around it is written. */
  isAlone: boolean;
  /** The drawing laid over the canvas; this component owns what is in it. */
  overlay: RefObject<SVGSVGElement | null>;
  /** The button that goes to the worst pose; it is placed and named here. */
  toWorst: RefObject<HTMLButtonElement | null>;
  /** Told after the first frame. */
  onDrawn: () => void;
};

interface Layers {
  readonly axes: ReturnType<typeof axesSketch>;
  readonly layers: readonly OverlayLayer[];
}

/** Pixels from the lower left corner; the longest label fits on either side. */
const AXES_AT = { x: 88, y: 44 };

const CROWDED_AT = { x: 70, y: 34 };

/** Share of the picture's width at which they stand between the wheels: left of the centerline, or on it. */
const BETWEEN = 0.46;

/** Cosine off it up to which the way across the truck counts as the way across the picture. */
const ACROSS = 0.97;

/** Pixels. In a picture no wider the arrow to the front stands for the axes. */
const NARROW = 480;

/** Buttons for the wheel looked at, in the upper left corner, as labels that others keep off; pixels. */
const WHEEL_BUTTONS: readonly PlacedLabel[] = [20, 40].map((y) => ({ x: 68, y, width: 130 }));

// Leaf scratch.
const projected = new Vector3();

/** Writes on the picture, with each frame that is drawn: the section, dimensions, marks of gaps, and the axes. */
export function OverlayWriter({ truck, isAlone, overlay, toWorst, onDrawn }: OverlayWriterProps) {
  const invalidate = useThree((s) => s.invalidate);
  const written = useRef<Layers | null>(null);
  const hasDrawn = useRef(false);

  useEffect(() => {
    const svg = overlay.current;
    const button = toWorst.current;
    if (!svg || !button) return;
    const axes = axesSketch(svg);
    written.current = {
      axes,
      layers: isAlone
        ? [loadScaleLayer(svg), dimensionLayer(svg, true), loadNamesLayer(svg)]
        : [
            sectionLayer(svg),
            overlapLayer(svg),
            dimensionLayer(svg, false),
            wipeLayer(svg),
            centerLayer(svg),
            jointLayer(svg),
            gapLayer(svg, button),
            assumedLayer(svg),
          ],
    };
    invalidate();
    return () => {
      svg.replaceChildren();
      button.hidden = true;
      written.current = null;
    };
  }, [overlay, toWorst, isAlone, invalidate]);

  // The pose asks for its own frames; these have none but what is asked for here.
  useEffect(() => {
    const unfollow = workbench.subscribe((now, before) => {
      const { selection, preferences } = before;
      if (now.selection !== selection || now.preferences !== preferences) invalidate();
    });
    let seen: readonly unknown[] = [];
    const unfollowWork = work.subscribe(() => {
      const now = [worstOf(truck), sectionOf(truck, stageSettings.getState())];
      if (now.some((one, i) => one !== seen[i])) invalidate();
      seen = now;
    });
    const unfollowStage = stageSettings.subscribe(() => invalidate());
    const unfollowHandles = handleStore.subscribe((now, before) => {
      if (now.marks !== before.marks && (now.marks.length > 0 || before.marks.length > 0)) invalidate();
    });
    return () => {
      unfollow();
      unfollowWork();
      unfollowStage();
      unfollowHandles();
    };
  }, [invalidate, truck]);

  useFrame(({ camera, size }) => {
    if (!written.current) return;
    if (!hasDrawn.current) {
      hasDrawn.current = true;
      // This one is drawn when the next comes.
      requestAnimationFrame(onDrawn);
    }
    const { axes, layers } = written.current;
    camera.updateMatrixWorld();
    const isCrowded = size.width < NARROW;
    const { hasDimensions, hasCenters } = stageSettings.getState();
    const at = isCrowded ? CROWDED_AT : AXES_AT;
    // From the front and from above the corners are the wheels', and the middle is free but for what is drawn on request.
    const isBetween =
      Math.abs(camera.matrixWorld.elements[1]!) > ACROSS && !isAlone && !hasDimensions && !hasCenters;
    const x = isBetween ? (isCrowded ? 0.5 : BETWEEN) * size.width : at.x;
    const taken = axes.write(camera, x, size.height - at.y, isCrowded);
    const state = workbench.getState();
    if (state.truck !== truck) return;
    const toScreen = (point: Vec3): ScreenPoint => {
      projected.set(point[0], point[1], point[2]).project(camera);
      return { x: 0.5 * (projected.x + 1) * size.width, y: 0.5 * (1 - projected.y) * size.height };
    };
    const settings = stageSettings.getState();
    if (isAlone || state.view === "well" || settings.hasDimensions) taken.push(...WHEEL_BUTTONS);
    const view = {
      truck,
      state,
      toScreen,
      zoom: camera.zoom,
      width: size.width,
      height: size.height,
      taken,
      lines: [],
      settings,
      format: lengthFormatOf(state.preferences.lengths, truck.setup.units),
    };
    for (const layer of layers) layer.write(view);
  });
  return null;
}
