import { type Camera, Quaternion, Vector3 } from "three";
import { FRONT } from "../../studies/wording/stageTexts.ts";
import { svgElement, writeAttribute } from "./overlay/svgElement.ts";
import type { PlacedLabel } from "./overlayLayer.ts";

/** Pixels: length of an axis that lies in the picture, and how much of one must be seen to be worth a label. */
const LENGTH = 30;
const LEAST_SEEN = 10;
/** Pixels between two lines of text, and that a letter is wide at most on average. */
const LINE = 13;
const WIDTH = 6.6;

const AXES = [
  { name: FRONT.seen, way: [1, 0, 0] },
  { name: "Y left", way: [0, 1, 0] },
  { name: "Z up", way: [0, 0, 1] },
] as const;

// Leaf scratch.
const seen = new Vector3();
const turn = new Quaternion();

/** Of the arrow to the front: its head, and the ring it is seen as from its end. */
const HEAD = "M0 0 L-11 -5.5 L-8 0 L-11 5.5 Z";
const RING = 7;

/** A number to a hundredth: what a camera set anew is off by in its last digit is not written anew. */
const written = (n: number) => String(Math.round(100 * n) / 100);

/** The three vehicle axes in a corner of the picture; the one forward is an arrow, in every view. */
export interface AxesSketch {
  readonly group: SVGGElement;
  /**
   * Turns them the way the camera sees them, with their origin at (x, y), pixels. @param isCrowded the arrow to the front alone
   * @returns what they take of the picture, as labels that others keep off
   */
  write(camera: Camera, x: number, y: number, isCrowded: boolean): PlacedLabel[];
}

export function axesSketch(parent: SVGElement): AxesSketch {
  const group = svgElement(parent, "g", { class: "axes-sketch" });
  const drawn = AXES.map(({ name, way }) => {
    const line = svgElement(group, "line", { x1: "0", y1: "0" });
    const label = svgElement(group, "text", { dy: "0.35em" });
    label.textContent = name;
    return { way, line, label };
  });
  const head = svgElement(group, "path", { class: "axes-head", d: HEAD });
  const ring = svgElement(group, "circle", { class: "axes-ring", r: String(RING) });
  const end = svgElement(group, "path", { class: "axes-end" });
  /** The arrow along the way forward, or from its end a ring: a dot in it points to the eye, a cross away from it. */
  const writeFront = (tip: { readonly x: number; readonly y: number }, camera: Camera) => {
    const isOnEnd = Math.hypot(tip.x, tip.y) < LEAST_SEEN;
    const toEye = seen.set(1, 0, 0).applyQuaternion(turn.copy(camera.quaternion).conjugate()).z > 0;
    writeAttribute(head, "visibility", isOnEnd ? "hidden" : "inherit");
    writeAttribute(
      head,
      "transform",
      `translate(${written(tip.x)} ${written(tip.y)}) rotate(${written((Math.atan2(tip.y, tip.x) * 180) / Math.PI)})`,
    );
    for (const one of [ring, end]) writeAttribute(one, "visibility", isOnEnd ? "inherit" : "hidden");
    writeAttribute(
      end,
      "d",
      toEye ? "M-2.5 0 a2.5 2.5 0 1 0 5 0 a2.5 2.5 0 1 0 -5 0" : "M-4 -4 L4 4 M4 -4 L-4 4",
    );
    const name = !isOnEnd ? FRONT.seen : toEye ? FRONT.toward : FRONT.away;
    const { label } = drawn[0]!;
    if (label.textContent !== name) label.textContent = name;
  };
  return {
    group,
    write(camera, x, y, isCrowded) {
      writeAttribute(group, "transform", `translate(${written(x)} ${written(y)})`);
      turn.copy(camera.quaternion).conjugate();
      const tips = drawn.map(({ way, line }) => {
        seen.set(way[0], way[1], way[2]).applyQuaternion(turn);
        const tip = { x: LENGTH * seen.x, y: -LENGTH * seen.y };
        writeAttribute(line, "x2", written(tip.x));
        writeAttribute(line, "y2", written(tip.y));
        return tip;
      });
      writeFront(tips[0]!, camera);
      const taken: PlacedLabel[] = [];
      labelPlaces(tips).forEach((found, i) => {
        const { line, label } = drawn[i]!;
        const isFront = i === 0;
        const isLeftOut = isCrowded && !isFront;
        writeAttribute(line, "visibility", isLeftOut ? "hidden" : "inherit");
        const place = found ?? (isFront ? END_LABEL : null);
        writeAttribute(label, "visibility", place && !isLeftOut ? "inherit" : "hidden");
        if (!isLeftOut)
          for (const share of [0, 0.5, 1])
            taken.push({ x: x + share * tips[i]!.x, y: y + share * tips[i]!.y, width: 2 * RING });
        if (!place || isLeftOut) return;
        const width = WIDTH * label.textContent!.length;
        const toMiddle = { start: 0.5, middle: 0, end: -0.5 }[place.anchor] * width;
        taken.push({ x: x + place.x + toMiddle, y: y + place.y, width });
        writeAttribute(label, "text-anchor", place.anchor);
        writeAttribute(label, "x", written(place.x));
        writeAttribute(label, "y", written(place.y));
      });
      return taken;
    },
  };
}

/** Of the arrow to the front seen from its end: under it. */
const END_LABEL: LabelPlace = { anchor: "middle", x: 0, y: 20 };

export interface LabelPlace {
  readonly anchor: "start" | "middle" | "end";
  readonly x: number;
  /** Middle of the text. */
  readonly y: number;
}

/**
 * Where the names of axes stand: beside the tip of one that runs sideways, over or under the tip of one that runs up or
 * down, a line apart where two tips on one side are nearly level.
 *
 * @param tips pixels from the axes' origin, y down
 * @returns a place for each, null for an axis seen nearly from its end
 */
export function labelPlaces(
  tips: readonly { readonly x: number; readonly y: number }[],
): readonly (LabelPlace | null)[] {
  const places = tips.map(({ x, y }): { anchor: LabelPlace["anchor"]; x: number; y: number } | null => {
    const length = Math.hypot(x, y);
    if (length < LEAST_SEEN) return null;
    if (Math.abs(x) < 0.35 * length) return { anchor: "middle", x, y: y + Math.sign(y) * 12 };
    return { anchor: x > 0 ? "start" : "end", x: x + Math.sign(x) * 5, y };
  });
  for (const side of ["start", "end"] as const) {
    const level = places.filter((place) => place?.anchor === side).sort((a, b) => a!.y - b!.y);
    for (let i = 0; i + 1 < level.length; i++) {
      const [upper, lower] = [level[i]!, level[i + 1]!];
      const short = LINE - (lower.y - upper.y);
      if (short <= 0) continue;
      upper.y -= short / 2;
      lower.y += short / 2;
      // Beyond both tips: neither name lies on the other's axis.
      upper.x = lower.x = side === "start" ? Math.max(upper.x, lower.x) : Math.min(upper.x, lower.x);
    }
  }
  return places;
}
