import type { Vec3 } from "../../geometry/vec.ts";
import { overlapsAt } from "../../studies/reports/overlapsAt.ts";
import type { SolvedPose } from "../../suspension/solvePose.ts";
import { memoLast } from "../state/memoLast.ts";
import { shownGaps, shownPose } from "../state/shown.ts";
import type { Truck } from "../state/truck.ts";
import { svgElement, writeAttribute } from "./overlay/svgElement.ts";
import type { OverlayLayer } from "./overlayLayer.ts";

const overlaps = memoLast((truck: Truck, pose: SolvedPose) => overlapsAt(truck.model, pose));

/** Where the wheel is inside a part at the pose shown: filled and hatched, through whatever stands before it. */
export function overlapLayer(svg: SVGSVGElement): OverlayLayer {
  const group = svgElement(svg, "g", { class: "overlap" });
  const pattern = svgElement(group, "pattern", {
    id: "overlap-hatch",
    patternUnits: "userSpaceOnUse",
    width: "5",
    height: "5",
    patternTransform: "rotate(45)",
  });
  svgElement(pattern, "line", { class: "overlap-line", x1: "0", y1: "0", x2: "0", y2: "5" });
  const fill = svgElement(group, "path", { class: "overlap-fill" });
  const hatch = svgElement(group, "path", { fill: "url(#overlap-hatch)" });
  // A sixteenth of an inch is a line from here: about its edge it is as wide as a finger points.
  const halo = svgElement(group, "path", { class: "overlap-halo" });
  const border = svgElement(group, "path", { class: "overlap-border" });
  return {
    write({ truck, state, settings, toScreen }) {
      const pose = shownPose(state);
      const isTouching = settings.roll === 0 && shownGaps(state).some(({ gap }) => gap < 0);
      const shown = isTouching && pose?.ok ? overlaps(truck, pose) : [];
      const seen = shown.filter(({ part }) => !state.hiddenParts.includes(part));
      const at = (point: Vec3) => {
        const { x, y } = toScreen(point);
        return `${x.toFixed(1)} ${y.toFixed(1)}`;
      };
      const inside = seen
        .flatMap((one) => one.fill.map((corners) => `M${corners.map(at).join("L")}Z`))
        .join("");
      const around = seen.flatMap((one) => one.border.map(([a, b]) => `M${at(a)}L${at(b)}`)).join("");
      writeAttribute(fill, "d", inside);
      writeAttribute(hatch, "d", inside);
      writeAttribute(halo, "d", around);
      writeAttribute(border, "d", around);
    },
  };
}
