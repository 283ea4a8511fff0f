import type { Vec3 } from "../../geometry/vec.ts";
import { type SectionPlane, sheetAxes } from "../../studies/section/outline.ts";
import type { StageSettings } from "../state/stageSettings.ts";
import type { Truck } from "../state/truck.ts";
import type { DrawnSection } from "../work/drawnSection.ts";
import { work } from "../work/work.ts";
import { svgElement, writeAttribute } from "./overlay/svgElement.ts";
import type { OverlayLayer } from "./overlayLayer.ts";

/** mm. Long enough that rounding on the picture does not turn the sheet. */
const UNIT = 1000;

/** What the section plane cuts, in heavy ink. The projection is parallel: one matrix lays the sheet on the picture. */
export function sectionLayer(svg: SVGSVGElement): OverlayLayer {
  const group = svgElement(svg, "g", { class: "section" });
  let drawn: DrawnSection | null = null;
  let hidden: readonly string[] = [];
  return {
    write({ toScreen, state, truck, settings }) {
      // Of another truck the section before stays until its own is there.
      const now = settings.section && (sectionOf(truck, settings) ?? drawn);
      if (now !== drawn || state.hiddenParts !== hidden) {
        drawn = now;
        hidden = state.hiddenParts;
        group.replaceChildren();
        for (const { kind, name, outline, hatch } of now?.figures ?? []) {
          if (kind === "part" && hidden.includes(name)) continue;
          if (hatch !== "") line(group, `section-hatch section-hatch-${kind}`, hatch);
          line(group, `section-line section-${kind}`, outline);
        }
      }
      if (drawn === null) return;
      const o = toScreen(onSheet(drawn.plane, 0, 0));
      const u = toScreen(onSheet(drawn.plane, UNIT, 0));
      const v = toScreen(onSheet(drawn.plane, 0, UNIT));
      const matrix = [u.x - o.x, u.y - o.y, v.x - o.x, v.y - o.y].map((value) => value / UNIT);
      writeAttribute(group, "transform", `matrix(${matrix.join(" ")} ${o.x} ${o.y})`);
    },
  };
}

/** The section asked for of a truck, as far as it is there: perhaps of the pose before. */
export function sectionOf(truck: Truck, { section: plane }: StageSettings): DrawnSection | null {
  if (plane === null) return null;
  return work.of({ job: "section", truck, question: { plane, travel: 0, steer: 0 }, given: null }).answer;
}

function line(parent: SVGElement, className: string, d: string): void {
  svgElement(parent, "path", { class: className, d, "vector-effect": "non-scaling-stroke" });
}

/** A point of the plane by its place on the sheet. */
function onSheet(plane: SectionPlane, across: number, along: number): Vec3 {
  const { normal, right, up } = sheetAxes(plane);
  const point: [number, number, number] = [0, 0, 0];
  point[normal] = plane.at;
  point[right] = across;
  point[up] = along;
  return point;
}
