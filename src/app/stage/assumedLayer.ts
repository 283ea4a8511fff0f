import { addScaled, type Vec3 } from "../../geometry/vec.ts";
import { ASSUMED_KNUCKLE } from "../../studies/wording/stageTexts.ts";
import { measuredView } from "../state/measuredView.ts";
import { shownPose } from "../state/shown.ts";
import type { Truck } from "../state/truck.ts";
import type { WorkbenchState } from "../state/workbenchState.ts";
import { isGuess, MADE_OF } from "./guess.ts";
import { svgElement } from "./overlay/svgElement.ts";
import type { OverlayLayer } from "./overlayLayer.ts";

/** Pixels that a label is high, with what it keeps free. */
const LINE = 16;

/** The middle of the left knuckle where it is drawn as a guess, vehicle axes, mm; null = it is known, or stands nowhere. */
function knuckleAt({ setup }: Truck, state: WorkbenchState): Vec3 | null {
  const pose = isGuess(setup, ...MADE_OF.knuckle) ? shownPose(state) : null;
  if (!pose?.ok) return null;
  const { lowerBallJoint, upperBallJoint } = pose.left;
  return addScaled(addScaled([0, 0, 0], lowerBallJoint, 0.5), upperBallJoint, 0.5);
}

/** Names the points of the truck that are a guess still, so that it is told by more than dashes. */
export function assumedLayer(svg: SVGSVGElement): OverlayLayer {
  const group = svgElement(svg, "g", { class: "assumed-marks" });
  const labels: SVGTextElement[] = [];
  return {
    write({ truck, state, toScreen, taken, width: wide, height }) {
      const isMeasuredPose = state.travel === 0 && state.steer === 0;
      const points = isMeasuredPose
        ? measuredView.getState().ellipses.filter(({ isAssumed, name }) => isAssumed && name !== "")
        : [];
      const knuckle = knuckleAt(truck, state);
      const shown = knuckle ? [...points, { name: ASSUMED_KNUCKLE, at: knuckle }] : points;
      while (labels.length < shown.length)
        labels.push(svgElement(group, "text", { "text-anchor": "middle", dy: "0.35em" }));
      for (const [i, label] of labels.entries()) {
        const point = shown[i];
        label.setAttribute("visibility", point ? "visible" : "hidden");
        if (!point) continue;
        if (label.textContent !== point.name) label.textContent = point.name;
        const width = label.getComputedTextLength();
        const at = toScreen(point.at);
        const half = 0.5 * width;
        const x = Math.max(half, Math.min(wide - half, at.x));
        let y = Math.max(LINE, Math.min(height - LINE, at.y + LINE));
        const isTaken = () =>
          taken.some(
            (other) => Math.abs(other.x - x) < half + 0.5 * other.width && Math.abs(other.y - y) < LINE,
          );
        for (let k = 0; k < 8 && isTaken(); k++) y += LINE;
        label.setAttribute("x", x.toFixed(1));
        label.setAttribute("y", y.toFixed(1));
        taken.push({ x, y, width });
      }
    },
  };
}
