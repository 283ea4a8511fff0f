import { addScaled, length } from "../../geometry/vec.ts";
import { forceText } from "../../studies/wording/loadsWords.ts";
import { loadsView, mmPerNewton } from "../state/loadsView.ts";
import { ARROW_HEAD } from "./LoadArrows.tsx";
import { svgElement } from "./overlay/svgElement.ts";
import type { OverlayLayer } from "./overlayLayer.ts";

/** Pixels that a label is high, with what it keeps free. */
const LINE = 18;

/** Pixels from an arrow's tail to the middle of its label. */
const OFF = 12;

/** What each arrow of the loads is, and how large: at its tail, where nothing of the part lies. */
export function loadNamesLayer(svg: SVGSVGElement): OverlayLayer {
  const group = svgElement(svg, "g", { class: "load-names" });
  const labels: SVGTextElement[] = [];
  return {
    write({ toScreen, width: wide, height: high, format, taken }) {
      const { arrows } = loadsView.getState();
      const mm = mmPerNewton(arrows);
      const shown = arrows.filter(({ force }) => length(force) * mm > ARROW_HEAD);
      while (labels.length < shown.length)
        labels.push(svgElement(group, "text", { "text-anchor": "middle", dy: "0.35em" }));
      for (const [i, label] of labels.entries()) {
        const arrow = shown[i];
        const tip = arrow && toScreen(arrow.at);
        // Of an arrow that ends outside the picture nothing is named.
        const isSeen = tip !== undefined && tip.x >= 0 && tip.x <= wide && tip.y >= 0 && tip.y <= high;
        label.setAttribute("visibility", isSeen ? "visible" : "hidden");
        if (!arrow || !isSeen) continue;
        const text = `${arrow.name} ${forceText(length(arrow.force), format.units)}`;
        if (label.textContent !== text) label.textContent = text;
        const width = label.getComputedTextLength();
        const half = 0.5 * width;
        const tail = toScreen(addScaled(arrow.at, arrow.force, -mm));
        const way = Math.hypot(tail.x - tip.x, tail.y - tip.y) || 1;
        const at = {
          x: tail.x + ((tail.x - tip.x) / way) * (OFF + 0.4 * half),
          y: tail.y + ((tail.y - tip.y) / way) * OFF,
        };
        const x = Math.max(half + 4, Math.min(wide - half - 4, at.x));
        let y = Math.max(LINE, Math.min(high - LINE, at.y));
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
