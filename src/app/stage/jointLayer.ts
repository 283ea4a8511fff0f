import { addScaled, cross, dot, length, type Vec3 } from "../../geometry/vec.ts";
import { type JointCone, jointConesAt } from "../../studies/limits/jointCones.ts";
import { angleText } from "../../studies/wording/lengths.ts";
import type { SolvedPose } from "../../suspension/solvePose.ts";
import { memoLast } from "../state/memoLast.ts";
import type { Truck } from "../state/truck.ts";
import { svgElement, writeAttribute } from "./overlay/svgElement.ts";
import type { OverlayLayer } from "./overlayLayer.ts";
import { stagePose } from "./stagePose.ts";

/** Pixels that a label is high, with what it keeps free. */
const LINE = 19;

const passed = memoLast((truck: Truck, pose: SolvedPose) =>
  jointConesAt(truck.model, pose).filter((joint) => overOf(joint) > 1e-6),
);

/** Says in words which ball joints are past their cones, so that it is told by more than ink. */
export function jointLayer(svg: SVGSVGElement): OverlayLayer {
  const group = svgElement(svg, "g", { class: "joint-marks" });
  const labels: SVGTextElement[] = [];
  return {
    write(view) {
      const pose = view.settings.hasJoints ? stagePose(view.state) : null;
      const shown = pose?.ok ? passed(view.truck, pose) : [];
      while (labels.length < shown.length)
        labels.push(svgElement(group, "text", { "text-anchor": "middle", dy: "0.35em" }));
      for (const [i, label] of labels.entries()) {
        const joint = shown[i];
        writeAttribute(label, "visibility", joint ? "visible" : "hidden");
        if (!joint) continue;
        const text = `✕ ${joint.name} ${angleText(overOf(joint))} past its cone`;
        if (label.textContent !== text) label.textContent = text;
        const width = label.getComputedTextLength();
        const at = view.toScreen(addScaled(joint.center, [0, 0, 1] as Vec3, 40));
        const half = 0.5 * width;
        const x = Math.max(half, Math.min(view.width - half, at.x));
        let y = Math.max(LINE, Math.min(view.height - LINE, at.y));
        const isTaken = () =>
          view.taken.some(
            (other) => Math.abs(other.x - x) < half + 0.5 * other.width && Math.abs(other.y - y) < LINE,
          );
        for (let k = 0; k < 8 && isTaken(); k++) y += LINE;
        writeAttribute(label, "x", x.toFixed(1));
        writeAttribute(label, "y", y.toFixed(1));
        view.taken.push({ x, y, width });
      }
    },
  };
}

/** How far a stud is past its cone, radians; negative inside. */
function overOf({ housing, stud, cone }: JointCone): number {
  return Math.atan2(length(cross(housing, stud)), dot(housing, stud)) - cone;
}
