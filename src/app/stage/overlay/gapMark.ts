import type { GapWord } from "../../../studies/wording/gapWord.ts";
import { svgElement } from "./svgElement.ts";

/** A point on the picture, CSS pixels from its top left. */
export interface ScreenPoint {
  readonly x: number;
  readonly y: number;
}

/** One marked gap on the picture: a mark on the part, a mark on the tire, and a label on a leader. */
export interface GapMark {
  readonly group: SVGGElement;
  hide(): void;
  /** Writes the label, and says how wide it is, pixels. */
  write(text: string): number;
  /** Shows the mark with its label where it belongs. @param kind `worst`: the worst of all; `elsewhere`: at another pose */
  show(
    word: GapWord,
    onPart: ScreenPoint,
    onRing: ScreenPoint,
    label: ScreenPoint,
    kind: "now" | "worst" | "elsewhere",
  ): void;
}

const LABEL_HEIGHT = 20;

/** Marks on the part differ by state in shape as well as in color; the mark on the tire is a diamond. */
const ON_PART: Readonly<Record<GapWord, string>> = {
  rubs: "M-6 -6 L6 6 M6 -6 L-6 6",
  close: "M0 -7 L7 5 L-7 5 Z",
  clear: "M-5 0 a5 5 0 1 0 10 0 a5 5 0 1 0 -10 0",
};

/** The worst of all is crossed, whatever its state. */
const WORST = "M-9 -9 L9 9 M9 -9 L-9 9";

/** Makes a mark, hidden until shown. It owns its elements and rewrites them in place. */
export function gapMark(parent: SVGElement): GapMark {
  const group = svgElement(parent, "g", { class: "gap-mark", visibility: "hidden" });
  const leader = svgElement(group, "polyline", { class: "leader" });
  const between = svgElement(group, "line", { class: "between" });
  const part = svgElement(group, "path", { class: "on-part" });
  const ring = svgElement(group, "path", { class: "on-ring", d: "M0 -5 L5 0 L0 5 L-5 0 Z" });
  const plate = svgElement(group, "rect", { class: "plate", height: String(LABEL_HEIGHT) });
  const label = svgElement(group, "text", { "text-anchor": "middle", dy: "0.35em" });
  let written = "";
  let width = 0;
  return {
    group,
    hide: () => group.setAttribute("visibility", "hidden"),
    write(text) {
      if (text === written) return width;
      label.textContent = text;
      width = label.getComputedTextLength() + 14;
      plate.setAttribute("width", String(width));
      written = text;
      return width;
    },
    show(word, onPart, onRing, at, kind) {
      group.setAttribute("visibility", "visible");
      group.setAttribute("class", `gap-mark gap-mark-${word} gap-mark-${kind}`);
      part.setAttribute("d", kind === "now" ? ON_PART[word] : WORST);
      ring.setAttribute("visibility", kind === "elsewhere" ? "hidden" : "inherit");
      part.setAttribute("transform", `translate(${onPart.x} ${onPart.y})`);
      ring.setAttribute("transform", `translate(${onRing.x} ${onRing.y})`);
      setLine(between, onPart, onRing);
      leader.setAttribute("points", `${onPart.x},${onPart.y} ${at.x},${at.y}`);
      plate.setAttribute("x", String(at.x - 0.5 * width));
      plate.setAttribute("y", String(at.y - 0.5 * LABEL_HEIGHT));
      label.setAttribute("x", String(at.x));
      label.setAttribute("y", String(at.y));
    },
  };
}

function setLine(line: SVGLineElement, from: ScreenPoint, to: ScreenPoint): void {
  line.setAttribute("x1", String(from.x));
  line.setAttribute("y1", String(from.y));
  line.setAttribute("x2", String(to.x));
  line.setAttribute("y2", String(to.y));
}
