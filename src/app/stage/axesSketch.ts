import { type Camera, Quaternion, Vector3 } from "three";
import { svgElement } from "./overlay/svgElement.ts";

/** Pixels: length of an axis that lies in the picture, and how much of one must be seen to be worth a label. */
const LENGTH = 30;
const LEAST_SEEN = 10;

const AXES = [
  { name: "X forward", way: [1, 0, 0] },
  { name: "Y left", way: [0, 1, 0] },
  { name: "Z up", way: [0, 0, 1] },
] as const;

// Leaf scratch.
const seen = new Vector3();
const turn = new Quaternion();

/** The three vehicle axes in a corner of the picture. */
export interface AxesSketch {
  readonly group: SVGGElement;
  /** Turns them the way the camera sees them, with their origin at (x, y), pixels. */
  write(camera: Camera, x: number, y: number): void;
}

export function axesSketch(parent: SVGElement): AxesSketch {
  const group = svgElement(parent, "g", { class: "axes-sketch" });
  const drawn = AXES.map(({ name, way }) => {
    const line = svgElement(group, "line", { x1: "0", y1: "0" });
    const label = svgElement(group, "text", { dy: "0.35em" });
    label.textContent = name;
    return { way, line, label };
  });
  return {
    group,
    write(camera, x, y) {
      group.setAttribute("transform", `translate(${x} ${y})`);
      turn.copy(camera.quaternion).conjugate();
      for (const { way, line, label } of drawn) {
        seen.set(way[0], way[1], way[2]).applyQuaternion(turn);
        const dx = LENGTH * seen.x;
        const dy = -LENGTH * seen.y;
        const length = Math.hypot(dx, dy);
        const isSeen = length >= LEAST_SEEN;
        line.setAttribute("x2", String(dx));
        line.setAttribute("y2", String(dy));
        label.setAttribute("visibility", isSeen ? "inherit" : "hidden");
        if (!isSeen) continue;
        // Beside the tip of an axis that runs sideways, over or under the tip of one that runs up or down.
        const isUpright = Math.abs(dx) < 0.35 * length;
        label.setAttribute("text-anchor", isUpright ? "middle" : dx > 0 ? "start" : "end");
        label.setAttribute("x", String(dx + (isUpright ? 0 : Math.sign(dx) * 5)));
        label.setAttribute("y", String(dy + (isUpright ? Math.sign(dy) * 12 : 0)));
      }
    },
  };
}
