import type { ScreenPoint } from "./gapMark.ts";
import type { DimensionLayout } from "./layOutDimension.ts";
import { svgElement, writeAttribute } from "./svgElement.ts";

/** One dimension on the picture. */
export interface DimensionMark {
  hide(): void;
  /** Writes the text, and says how wide it is, pixels. */
  write(text: string): number;
  show(layout: DimensionLayout): void;
}

const HEIGHT = 17;

/** Makes a dimension, hidden until shown. It owns its elements and rewrites them in place. */
export function dimensionMark(parent: SVGElement): DimensionMark {
  const group = svgElement(parent, "g", { class: "dimension", visibility: "hidden" });
  const lines = svgElement(group, "path", { class: "dimension-lines" });
  const arrows = svgElement(group, "path", { class: "dimension-arrows" });
  const plate = svgElement(group, "rect", { class: "plate", height: String(HEIGHT) });
  const label = svgElement(group, "text", { "text-anchor": "middle", dy: "0.35em" });
  let written = "";
  let width = 0;
  return {
    hide: () => writeAttribute(group, "visibility", "hidden"),
    write(text) {
      if (text === written) return width;
      label.textContent = text;
      width = label.getComputedTextLength() + 8;
      writeAttribute(plate, "width", String(width));
      written = text;
      return width;
    },
    show(layout) {
      writeAttribute(group, "visibility", "visible");
      writeAttribute(lines, "d", layout.lines.map(pathOf).join(""));
      writeAttribute(arrows, "d", layout.arrows.map(({ at, way }) => arrowPath(at, way)).join(""));
      writeAttribute(plate, "x", String(layout.label.x - 0.5 * width));
      writeAttribute(plate, "y", String(layout.label.y - 0.5 * HEIGHT));
      writeAttribute(label, "x", String(layout.label.x));
      writeAttribute(label, "y", String(layout.label.y));
    },
  };
}

function pathOf(points: readonly ScreenPoint[]): string {
  return `M${points.map(({ x, y }) => `${x.toFixed(1)} ${y.toFixed(1)}`).join("L")}`;
}

/** A slim filled arrowhead with its tip at a point. */
function arrowPath({ x, y }: ScreenPoint, way: ScreenPoint): string {
  const [bx, by] = [x - 9 * way.x, y - 9 * way.y];
  return `M${x} ${y}L${bx - 2.6 * way.y} ${by + 2.6 * way.x}L${bx + 2.6 * way.y} ${by - 2.6 * way.x}Z`;
}
