import { loadsView, mmPerNewton } from "../state/loadsView.ts";
import { loadScale } from "./overlay/loadScale.ts";
import { svgElement, writeAttribute } from "./overlay/svgElement.ts";
import type { OverlayLayer } from "./overlayLayer.ts";

/** Pixels from the lower right corner; height of the bar's ends. */
const AT = { x: 14, y: 14 };
const END = 5;

/** To what scale the arrows of the loads are drawn: a bar, as a map has one. */
export function loadScaleLayer(svg: SVGSVGElement): OverlayLayer {
  const group = svgElement(svg, "g", { class: "load-scale", visibility: "hidden" });
  const bar = svgElement(group, "path");
  const label = svgElement(group, "text", { "text-anchor": "end", y: "-9" });
  return {
    write({ zoom, width, height, format, taken }) {
      const { arrows } = loadsView.getState();
      const scale = arrows.length === 0 ? null : loadScale(zoom * mmPerNewton(arrows), format.units);
      writeAttribute(group, "visibility", scale ? "visible" : "hidden");
      if (!scale) return;
      const [x, y] = [width - AT.x, height - AT.y];
      writeAttribute(group, "transform", `translate(${x} ${y})`);
      const from = -scale.pixels;
      writeAttribute(bar, "d", `M${from.toFixed(1)} ${-END}V${END}M${from.toFixed(1)} 0H0M0 ${-END}V${END}`);
      if (label.textContent !== scale.text) label.textContent = scale.text;
      const labelWidth = label.getComputedTextLength();
      taken.push({ x: x - 0.5 * labelWidth, y: y - 9, width: labelWidth });
    },
  };
}
