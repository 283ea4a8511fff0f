import { otherTruck, variantLabel } from "./otherTruck.ts";
import { freeRow } from "./overlay/freeRow.ts";
import { svgElement, writeAttribute } from "./overlay/svgElement.ts";
import type { OverlayLayer } from "./overlayLayer.ts";

/** Pixels between the wipe's line and the names on either side of it. */
const OFF = 8;

/** The wipe's line, with what stands on either side of it. */
export function wipeLayer(svg: SVGSVGElement): OverlayLayer {
  const group = svgElement(svg, "g", { class: "wipe", visibility: "hidden" });
  const line = svgElement(group, "line", { y1: "0" });
  const left = svgElement(group, "text", { "text-anchor": "end", dy: "0.35em" });
  const right = svgElement(group, "text", { dy: "0.35em" });
  return {
    write({ truck, state, settings, width, height, taken, lines }) {
      const { ghost, wipe } = settings;
      const other = ghost && wipe !== null ? otherTruck(state, ghost.variant) : null;
      const isShown = wipe !== null && other !== null && other.setup.variant !== truck.setup.variant;
      writeAttribute(group, "visibility", isShown ? "visible" : "hidden");
      if (!isShown) return;
      const x = Math.round(wipe * width);
      writeAttribute(line, "x1", String(x));
      writeAttribute(line, "x2", String(x));
      writeAttribute(line, "y2", String(height));
      const names = [variantLabel(other), variantLabel(truck)];
      for (const [i, text] of [left, right].entries())
        if (text.textContent !== names[i]) text.textContent = names[i]!;
      const widths = [left, right].map((text) => text.getComputedTextLength());
      const middles = [x - OFF - 0.5 * widths[0]!, x + OFF + 0.5 * widths[1]!];
      const y = freeRow(middles, widths, { height, taken, lines });
      writeAttribute(left, "x", String(x - OFF));
      writeAttribute(right, "x", String(x + OFF));
      for (const text of [left, right]) writeAttribute(text, "y", String(y));
      // Not noted as taken: labels of gaps stand still while the wipe is dragged under them.
    },
  };
}
