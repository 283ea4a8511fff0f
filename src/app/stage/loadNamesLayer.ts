import { addScaled, length } from "../../geometry/vec.ts";
import { forceText } from "../../studies/wording/loadsWords.ts";
import { loadsView, mmPerNewton } from "../state/loadsView.ts";
import { ARROW_HEAD } from "./LoadArrows.tsx";
import type { ScreenPoint } from "./overlay/gapMark.ts";
import { textReach } from "./overlay/layOutDimension.ts";
import { standFree } from "./overlay/standFree.ts";
import { svgElement, writeAttribute } from "./overlay/svgElement.ts";
import type { OverlayLayer } from "./overlayLayer.ts";

/** Pixels that a label is high, with what it keeps free. */
const LINE = 18;

/** Pixels from an arrow's tail to its label. */
const OFF = 3;

/** What each arrow of the loads is, and how large: at its tail, where nothing of the part lies, off arrows and dimensions. */
export function loadNamesLayer(svg: SVGSVGElement): OverlayLayer {
  const group = svgElement(svg, "g", { class: "load-names" });
  const labels: SVGTextElement[] = [];
  return {
    write({ toScreen, width: wide, height: high, format, taken, lines }) {
      const { arrows } = loadsView.getState();
      const mm = mmPerNewton(arrows);
      const shown = arrows
        .filter(({ force }) => length(force) * mm > ARROW_HEAD)
        .map(({ name, at, force }) => ({
          text: `${name} ${forceText(length(force), format.units)}`,
          tip: toScreen(at),
          tail: toScreen(addScaled(at, force, -mm)),
        }));
      const room = {
        ...{ width: wide, height: high, taken },
        lines: [...lines, ...shown.map(({ tail, tip }) => [tail, tip])],
      };
      while (labels.length < shown.length)
        labels.push(svgElement(group, "text", { "text-anchor": "middle", dy: "0.35em" }));
      for (const [i, label] of labels.entries()) {
        const arrow = shown[i];
        // Of an arrow that ends outside the picture nothing is named.
        const isSeen = arrow !== undefined && isInside(arrow.tip, wide, high);
        writeAttribute(label, "visibility", isSeen ? "visible" : "hidden");
        if (!arrow || !isSeen) continue;
        const { text, tip, tail } = arrow;
        if (label.textContent !== text) label.textContent = text;
        const width = label.getComputedTextLength();
        const far = Math.hypot(tail.x - tip.x, tail.y - tip.y) || 1;
        const way = { x: (tail.x - tip.x) / far, y: (tail.y - tip.y) / far };
        const reach = OFF + textReach(way, width);
        const wanted = { x: tail.x + reach * way.x, y: tail.y + reach * way.y };
        const { x, y } = standFree(wanted, width, LINE, room);
        writeAttribute(label, "x", x.toFixed(1));
        writeAttribute(label, "y", y.toFixed(1));
      }
    },
  };
}

function isInside({ x, y }: ScreenPoint, width: number, height: number): boolean {
  return x >= 0 && x <= width && y >= 0 && y <= height;
}
