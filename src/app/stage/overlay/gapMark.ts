import type { GapWord } from "../../../studies/wording/gapTexts.ts";
import { svgElement, writeAttribute } from "./svgElement.ts";

/** A point on the picture, CSS pixels from its top left. */
export interface ScreenPoint {
  readonly x: number;
  readonly y: number;
}

export type MarkKind = "now" | "worst" | "elsewhere";

/** One marked gap on the picture: a mark on the part, a mark on the tire, and a label on a leader. */
export interface GapMark {
  readonly group: SVGGElement;
  hide(): void;
  /** Writes the label, and says how wide it is, pixels. @param kind `worst`: the worst of all; `elsewhere`: at another pose */
  write(text: string, kind: MarkKind): number;
  /** Shows the mark, with its label where there is room for one (null = none). */
  show(
    word: GapWord,
    onPart: ScreenPoint,
    onRing: ScreenPoint,
    label: ScreenPoint | null,
    kind: MarkKind,
  ): void;
}

const LABEL_HEIGHT = 20;

/**
 * Marks on the part differ by state in shape as well as in color; the mark on the tire is a diamond. The cross where it rubs is
 * open: the overlap itself is seen in its middle.
 */
const ON_PART: Readonly<Record<GapWord, string>> = {
  rubs: "M-13 -13 L-7 -7 M13 13 L7 7 M13 -13 L7 -7 M-13 13 L-7 7",
  close: "M0 -7 L7 5 L-7 5 Z",
  clear: "M-5 0 a5 5 0 1 0 10 0 a5 5 0 1 0 -10 0",
};

/** The worst of all is crossed, whatever its state. */
const WORST = "M-9 -9 L9 9 M9 -9 L-9 9";

/** Makes a mark, hidden until shown. It owns its elements and rewrites them in place. */
export function gapMark(parent: SVGElement): GapMark {
  const group = svgElement(parent, "g", { class: "gap-mark", visibility: "hidden" });
  const rim = svgElement(group, "polyline", { class: "leader-rim" });
  const leader = svgElement(group, "polyline", { class: "leader" });
  const between = svgElement(group, "line", { class: "between" });
  const part = svgElement(group, "path", { class: "on-part" });
  const ring = svgElement(group, "path", { class: "on-ring", d: "M0 -5 L5 0 L0 5 L-5 0 Z" });
  const plate = svgElement(group, "rect", { class: "plate", height: String(LABEL_HEIGHT) });
  const label = svgElement(group, "text", { "text-anchor": "middle", dy: "0.35em" });
  let written = "";
  let sort: MarkKind = "now";
  let width = 0;
  return {
    group,
    hide: () => writeAttribute(group, "visibility", "hidden"),
    write(text, kind) {
      if (text === written && kind === sort) return width;
      // Of another sort it is written in another weight, and is as wide as that.
      writeAttribute(group, "class", `gap-mark gap-mark-${kind}`);
      sort = kind;
      label.textContent = text;
      width = label.getComputedTextLength() + 14;
      writeAttribute(plate, "width", String(width));
      written = text;
      return width;
    },
    show(word, onPart, onRing, at, kind) {
      writeAttribute(group, "visibility", "visible");
      writeAttribute(group, "class", `gap-mark gap-mark-${word} gap-mark-${kind}`);
      const isOverlap = word === "rubs" && kind !== "elsewhere";
      writeAttribute(part, "d", kind === "now" || isOverlap ? ON_PART[word] : WORST);
      for (const one of [ring, between])
        writeAttribute(one, "visibility", kind === "elsewhere" || isOverlap ? "hidden" : "inherit");
      writeAttribute(part, "transform", `translate(${onPart.x} ${onPart.y})`);
      writeAttribute(ring, "transform", `translate(${onRing.x} ${onRing.y})`);
      setLine(between, onPart, onRing);
      for (const one of [rim, leader, plate, label])
        writeAttribute(one, "visibility", at ? "inherit" : "hidden");
      if (at === null) return;
      for (const one of [rim, leader])
        writeAttribute(one, "points", `${onPart.x},${onPart.y} ${at.x},${at.y}`);
      writeAttribute(plate, "x", String(at.x - 0.5 * width));
      writeAttribute(plate, "y", String(at.y - 0.5 * LABEL_HEIGHT));
      writeAttribute(label, "x", String(at.x));
      writeAttribute(label, "y", String(at.y));
    },
  };
}

function setLine(line: SVGLineElement, from: ScreenPoint, to: ScreenPoint): void {
  writeAttribute(line, "x1", String(from.x));
  writeAttribute(line, "y1", String(from.y));
  writeAttribute(line, "x2", String(to.x));
  writeAttribute(line, "y2", String(to.y));
}
