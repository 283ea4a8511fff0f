import { addScaled, type Vec3 } from "../../geometry/vec.ts";
import { ASSUMED_KNUCKLE } from "../../studies/wording/stageTexts.ts";
import { measuredView } from "../state/measuredView.ts";
import { shownPose } from "../state/shown.ts";
import type { Truck } from "../state/truck.ts";
import type { WorkbenchState } from "../state/workbenchState.ts";
import { isGuess, MADE_OF } from "./guess.ts";
import type { ScreenPoint } from "./overlay/gapMark.ts";
import { placeLabels } from "./overlay/placeLabels.ts";
import { svgElement, writeAttribute } from "./overlay/svgElement.ts";
import type { OverlayLayer } from "./overlayLayer.ts";

/** Half a label's height, pixels: a leader ends there. */
const HALF = 8;

/** The middle of the left knuckle where it is drawn as a guess, vehicle axes, mm; null = it is known, or stands nowhere. */
function knuckleAt({ setup }: Truck, state: WorkbenchState): Vec3 | null {
  const pose = isGuess(setup, ...MADE_OF.knuckle) ? shownPose(state) : null;
  if (!pose?.ok) return null;
  const { lowerBallJoint, upperBallJoint } = pose.left;
  return addScaled(addScaled([0, 0, 0], lowerBallJoint, 0.5), upperBallJoint, 0.5);
}

/** Names what of the truck is a guess still, so that it is told by more than dashes, and matched points: each led to its name. */
export function assumedLayer(svg: SVGSVGElement): OverlayLayer {
  const group = svgElement(svg, "g", { class: "assumed-marks" });
  const labels: (readonly [SVGLineElement, SVGTextElement])[] = [];
  /** Where each name stood off its point, by name: kept while there is room. */
  let stood = new Map<string, ScreenPoint>();
  return {
    write({ truck, state, toScreen, taken, width, height }) {
      const isMeasuredPose = state.travel === 0 && state.steer === 0;
      const { ellipses, matched } = measuredView.getState();
      const told = [...ellipses, ...Object.values(matched).flat()];
      const points = isMeasuredPose ? told.filter(({ name }) => name !== "") : [];
      const knuckle = knuckleAt(truck, state);
      const shown = knuckle ? [{ name: ASSUMED_KNUCKLE, at: knuckle }, ...points] : points;
      while (labels.length < shown.length)
        labels.push([
          svgElement(group, "line"),
          svgElement(group, "text", { "text-anchor": "middle", dy: "0.35em" }),
        ]);
      const widths = shown.map(({ name }, i) => {
        const [, text] = labels[i]!;
        if (text.textContent !== name) text.textContent = name;
        return text.getComputedTextLength();
      });
      const marks = shown.map(({ at }) => toScreen(at));
      const before = shown.map(({ name }) => stood.get(name) ?? null);
      const found = placeLabels(marks, widths, { width, height, taken }, before);
      stood = new Map();
      for (const [i, [line, text]] of labels.entries()) {
        const at = found[i] ?? null;
        for (const one of [line, text]) writeAttribute(one, "visibility", at ? "visible" : "hidden");
        if (!at) continue;
        const mark = marks[i]!;
        place(text, { x: at.x, y: at.y });
        place(line, {
          x1: mark.x,
          y1: mark.y,
          x2: at.x,
          y2: at.y + HALF * Math.max(-1, Math.min(1, (mark.y - at.y) / HALF)),
        });
        stood.set(shown[i]!.name, { x: at.x - mark.x, y: at.y - mark.y });
        taken.push({ ...at, width: widths[i]! });
      }
    },
  };
}

function place(element: SVGElement, numbers: Readonly<Record<string, number>>): void {
  for (const [key, value] of Object.entries(numbers)) writeAttribute(element, key, value.toFixed(1));
}
