import { otherTruck, variantLabel } from "./otherTruck.ts";
import { svgElement } from "./overlay/svgElement.ts";
import type { OverlayLayer } from "./overlayLayer.ts";

/** Pixels between the wipe's line and the names on either side of it. */
const OFF = 8;

/** The wipe's line, with what stands on either side of it. */
export function wipeLayer(svg: SVGSVGElement): OverlayLayer {
  const group = svgElement(svg, "g", { class: "wipe", visibility: "hidden" });
  const line = svgElement(group, "line", { y1: "0" });
  const left = svgElement(group, "text", { "text-anchor": "end" });
  const right = svgElement(group, "text");
  return {
    write({ truck, state, settings, width, height }) {
      const { ghost, wipe } = settings;
      const other = ghost && wipe !== null ? otherTruck(state, ghost.variant) : null;
      const isShown = wipe !== null && other !== null && other.setup.variant !== truck.setup.variant;
      group.setAttribute("visibility", isShown ? "visible" : "hidden");
      if (!isShown) return;
      const x = Math.round(wipe * width);
      line.setAttribute("x1", String(x));
      line.setAttribute("x2", String(x));
      line.setAttribute("y2", String(height));
      left.textContent = variantLabel(other);
      right.textContent = variantLabel(truck);
      left.setAttribute("x", String(x - OFF));
      right.setAttribute("x", String(x + OFF));
      for (const text of [left, right]) text.setAttribute("y", String(height - 12));
    },
  };
}
