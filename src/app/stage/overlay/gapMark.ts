import type { GapWord } from "../../../studies/wording/gapTexts.ts";
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

/** Pixels a label stands off its mark, its height with what it keeps free, and what it keeps off the edges. */
const LEADER = 46;
const LINE = 25;
const EDGE = 4;

/**
 * Where the middles of labels go: up and away from the picture's middle, moved up or down until none covers
 * another, inside the picture. In the order given: the first gets the place it wants.
 * @param widths of the labels, pixels; @param taken other labels' middles and widths, to keep clear of
 */
export function placeLabels(
  marks: readonly ScreenPoint[],
  widths: readonly number[],
  width: number,
  height: number,
  taken: readonly (ScreenPoint & { readonly width: number })[] = [],
): ScreenPoint[] {
  const placed: ScreenPoint[] = [];
  const clampY = (y: number) => Math.min(height - EDGE - 0.5 * LINE, Math.max(EDGE + 0.5 * LINE, y));
  for (const [i, mark] of marks.entries()) {
    const half = 0.5 * (widths[i] ?? 0);
    const outward = mark.x < 0.5 * width ? -1 : 1;
    const x = Math.min(width - EDGE - half, Math.max(EDGE + half, mark.x + outward * LEADER));
    const wanted = clampY(mark.y - LEADER);
    const keepsOff = (other: ScreenPoint, width: number, y: number) =>
      Math.abs(other.x - x) >= half + 0.5 * width || Math.abs(other.y - y) >= LINE;
    const isFree = (y: number) =>
      placed.every((other, k) => keepsOff(other, widths[k] ?? 0, y)) &&
      taken.every((other) => keepsOff(other, other.width, y));
    let y = wanted;
    // Down, up, further down, further up … by half lines, as far as the picture is high.
    for (let k = 1; !isFree(y) && k <= (4 * height) / LINE; k++) {
      y = clampY(wanted + (k % 2 === 1 ? 1 : -1) * Math.ceil(k / 2) * 0.5 * LINE);
    }
    placed.push({ x, y });
  }
  return placed;
}
