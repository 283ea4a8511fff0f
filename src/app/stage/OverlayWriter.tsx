import { useFrame, useThree } from "@react-three/fiber";
import { type RefObject, useEffect, useRef } from "react";
import { Vector3 } from "three";
import type { Vec3 } from "../../geometry/vec.ts";
import { shownGaps } from "../state/shown.ts";
import type { Truck } from "../state/truck.ts";
import { workbench } from "../state/workbench.ts";
import { isSamePart } from "../state/viewActions.ts";
import { gapWord } from "../words/gapWord.ts";
import { markText } from "../words/markText.ts";
import { type AxesSketch, axesSketch } from "./axesSketch.ts";
import { type GapMark, gapMark, type ScreenPoint } from "./gapMark.ts";
import { placeLabels } from "./placeLabels.ts";

export type OverlayWriterProps = {
  truck: Truck;
  /** The drawing laid over the canvas; this component owns what is in it. */
  overlay: RefObject<SVGSVGElement | null>;
};

/** Pixels from the lower left corner; the longest label fits on either side. */
const AXES_AT = { x: 88, y: 44 };

// Leaf scratch.
const projected = new Vector3();

/** Writes on the picture, with each frame that is drawn: marks where something is too near, and the axes. */
export function OverlayWriter({ truck, overlay }: OverlayWriterProps) {
  const invalidate = useThree((s) => s.invalidate);
  const drawn = useRef<{ readonly axes: AxesSketch; readonly marks: GapMark[] } | null>(null);

  useEffect(() => {
    const svg = overlay.current;
    if (!svg) return;
    drawn.current = { axes: axesSketch(svg), marks: [] };
    invalidate();
    return () => {
      svg.replaceChildren();
      drawn.current = null;
    };
  }, [overlay, invalidate]);

  // The pose asks for its own frames; the selection has none but these.
  useEffect(
    () =>
      workbench.subscribe((now, before) => {
        if (now.selection !== before.selection) invalidate();
      }),
    [invalidate],
  );

  useFrame(({ camera, size }) => {
    const svg = overlay.current;
    if (!drawn.current || !svg) return;
    const { axes, marks } = drawn.current;
    camera.updateMatrixWorld();
    axes.write(camera, AXES_AT.x, size.height - AXES_AT.y);

    const state = workbench.getState();
    if (state.truck !== truck) return;
    const { setup } = truck;
    const shown = shownGaps(state).filter(
      (entry) => gapWord(entry.gap, setup.allowance) !== "clear" || isSamePart(entry, state.selection),
    );
    const toScreen = (point: Vec3): ScreenPoint => {
      projected.set(...point).project(camera);
      return { x: 0.5 * (projected.x + 1) * size.width, y: 0.5 * (1 - projected.y) * size.height };
    };
    while (marks.length < shown.length) marks.push(gapMark(svg));
    for (const unused of marks.slice(shown.length)) unused.hide();
    const words = shown.map((entry) => gapWord(entry.gap, setup.allowance));
    const widths = shown.map((entry, i) => marks[i]!.write(markText(entry.gap, words[i]!, setup)));
    const onPart = shown.map((entry) => toScreen(entry.point));
    const labels = placeLabels(onPart, widths, size.width, size.height);
    for (const [i, entry] of shown.entries()) {
      marks[i]!.show(words[i]!, onPart[i]!, toScreen(entry.onRing), labels[i]!);
    }
  });
  return null;
}
