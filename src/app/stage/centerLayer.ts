import { addScaled, mirrorY, normalize, sub, type Vec3, vecAt } from "../../geometry/vec.ts";
import {
  instantCenterLabel,
  instantCenterName,
  rollCenterLabel,
  steeringAxisLabel,
} from "../../studies/wording/stageTexts.ts";
import { POSE } from "../../suspension/poseRow.ts";
import { instantCenter, rollCenter } from "../../suspension/rollCenter.ts";
import { type WheelMotion, wheelMotion } from "../../suspension/wheelMotion.ts";
import { memoLast } from "../state/memoLast.ts";
import { shownPose } from "../state/shown.ts";
import type { Truck } from "../state/truck.ts";
import type { ScreenPoint } from "./overlay/gapMark.ts";
import { standFree } from "./overlay/standFree.ts";
import { svgElement, writeAttribute } from "./overlay/svgElement.ts";
import type { OverlayLayer, OverlayView } from "./overlayLayer.ts";

/** Pixels that a label is high, with what it keeps free. */
const LINE = 19;

/** Pixels. In a picture no wider the instant centers go by their names; where they are stands in the table. */
const NARROW = 480;

/** Pixels inside the picture's edge at which what is farther off is pointed to. */
const INSET = 16;

/** Share of a length along the truck that may be seen of it where it is looked at from the front. */
const LEAN = 2e-3;

/** mm that a steering axis is drawn past its upper ball joint. */
const PAST = 120;

/** Pixels from a mark's middle to its ring, and to the middle of a label beside it. */
const RING = 7;
const ABOVE = 24;

/** A label, where its middle is to go, and the mark it is of; that of an axis stands at its end. */
interface Told {
  readonly text: string;
  readonly at: ScreenPoint;
  readonly of?: ScreenPoint;
}

/** What is drawn of the front view, straight ahead as the numbers beside the picture have it. */
const centersAt = memoLast((truck: Truck, travel: number) => {
  const { frontEnd } = truck.model;
  const motions = {
    left: wheelMotion(frontEnd, "left", travel, 0),
    right: wheelMotion(frontEnd, "right", travel, 0),
  };
  return { ...motions, roll: rollCenter(frontEnd, { left: travel, right: travel }, 0) };
});

/** Instant centers, roll center and steering axes, in the front view. */
export function centerLayer(svg: SVGSVGElement): OverlayLayer {
  const group = svgElement(svg, "g", { class: "centers" });
  const lines = svgElement(group, "path", { class: "center-lines" });
  const axes = svgElement(group, "path", { class: "center-axes" });
  const marks = svgElement(group, "path", { class: "center-marks" });
  const leaders = svgElement(group, "path", { class: "center-leaders" });
  const labels = Array.from({ length: 5 }, () =>
    svgElement(group, "text", { "text-anchor": "middle", dy: "0.35em" }),
  );
  return {
    write(view) {
      const { state, settings, truck, format, toScreen } = view;
      const isShown = settings.hasCenters && settings.roll === 0 && isFromFront(view);
      writeAttribute(group, "visibility", isShown ? "visible" : "hidden");
      if (!isShown) return;
      const told: Told[] = [];
      const rods: (readonly ScreenPoint[])[] = [];
      const drawn = { lines: "", axes: "", marks: "" };
      const found = centersAt(truck, state.travel);
      for (const side of ["left", "right"] as const) {
        const motion = found[side];
        const center = motion && instantCenter(motion);
        if (!motion || !center) continue;
        const sided = (point: Vec3) => toScreen(side === "left" ? point : mirrorY(point));
        const from = sided(patchOf(motion));
        const end = ended(from, sided([motion.contactPatch[0], center.y, center.z]), view);
        drawn.lines += `M${from.x} ${from.y}L${end.at.x} ${end.at.y}`;
        rods.push([from, end.at]);
        drawn.marks += end.isThere ? ring(end.at, 5) : arrow(from, end.at);
        const y = side === "left" ? center.y : -center.y;
        told.push({
          text:
            view.width < NARROW
              ? instantCenterName(side)
              : instantCenterLabel(side, y, center.z - motion.contactPatch[2], format),
          at: { x: end.at.x, y: end.at.y - ABOVE },
          of: end.at,
        });
      }
      const { roll } = found;
      if (roll) {
        const at = toScreen([0, roll.y, roll.z]);
        drawn.marks += ring(at, 6) + ring(at, 2);
        told.push({ text: rollCenterLabel(roll.height, format), at: { x: at.x, y: at.y + ABOVE }, of: at });
      }
      const pose = shownPose(state);
      if (pose?.ok)
        for (const side of ["left", "right"] as const) {
          const { row, kingpinInclination } = pose[side];
          const lower = vecAt(row, POSE.lowerBallJoint);
          const up = normalize(sub(vecAt(row, POSE.upperBallJoint), lower));
          const floor = vecAt(row, POSE.contactPatch)[2];
          const sided = (point: Vec3) => toScreen(side === "left" ? point : mirrorY(point));
          const foot = sided(addScaled(lower, up, (floor - lower[2]) / up[2]));
          const top = sided(addScaled(vecAt(row, POSE.upperBallJoint), up, PAST));
          drawn.axes += `M${foot.x} ${foot.y}L${top.x} ${top.y}`;
          const [outer, inner] = [vecAt(row, POSE.tieRodOuter), vecAt(row, POSE.tieRodInner)];
          // Tie rod, and the lower arm by its ball joint: what lies across the middle of the picture.
          rods.push([foot, top], [sided(outer), sided(inner), toScreen([inner[0], 0, inner[2]])]);
          rods.push([sided(lower), sided([lower[0], inner[1], lower[2]])]);
          told.push({ text: steeringAxisLabel(kingpinInclination), at: { x: top.x, y: top.y - 10 } });
        }
      writeAttribute(lines, "d", drawn.lines);
      writeAttribute(axes, "d", drawn.axes);
      writeAttribute(marks, "d", drawn.marks);
      const { width, height, taken } = view;
      const points = told.flatMap(({ of }) => of ?? []);
      const room = { width, height, taken, marks: points, lines: rods };
      let led = "";
      for (const [i, label] of labels.entries()) {
        const one = told[i];
        writeAttribute(label, "visibility", one ? "inherit" : "hidden");
        if (!one) continue;
        if (label.textContent !== one.text) label.textContent = one.text;
        const at = standFree(one.at, label.getComputedTextLength(), LINE, room);
        writeAttribute(label, "x", at.x.toFixed(1));
        writeAttribute(label, "y", at.y.toFixed(1));
        if (one.of) led += leader(at, one.of);
      }
      writeAttribute(leaders, "d", led);
    },
  };
}

/** From a label's edge to its mark, where it does not stand at it. */
function leader(label: ScreenPoint, mark: ScreenPoint): string {
  const way = Math.sign(mark.y - label.y);
  const from = label.y + way * 0.5 * LINE;
  const to = mark.y - way * RING;
  return (to - from) * way > 0.5 * LINE ? `M${mark.x} ${from}L${mark.x} ${to}` : "";
}

/** Whether the eye looks along the truck from its front, not turned by hand. */
function isFromFront({ toScreen }: Pick<OverlayView, "toScreen">): boolean {
  const [o, x, y] = [toScreen([0, 0, 0]), toScreen([1000, 0, 0]), toScreen([0, 1000, 0])];
  const across = y.x - o.x;
  return Math.hypot(x.x - o.x, x.y - o.y) < LEAN * across;
}

function patchOf({ contactPatch }: WheelMotion): Vec3 {
  return [contactPatch[0], contactPatch[1], contactPatch[2]];
}

/** A line's end, or where it leaves the picture. */
function ended(from: ScreenPoint, to: ScreenPoint, { width, height }: OverlayView) {
  const share = (at: number, way: number, most: number) =>
    way > 0 ? (most - INSET - at) / way : way < 0 ? (INSET - at) / way : Number.POSITIVE_INFINITY;
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const s = Math.max(0, Math.min(1, share(from.x, dx, width), share(from.y, dy, height)));
  return { at: { x: from.x + s * dx, y: from.y + s * dy }, isThere: s === 1 };
}

function ring({ x, y }: ScreenPoint, r: number): string {
  return `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`;
}

/** A head at the end of a line that goes on outside the picture. */
function arrow(from: ScreenPoint, to: ScreenPoint): string {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const [ux, uy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const wing = (side: number) =>
    `M${to.x} ${to.y}L${to.x - 11 * ux + side * 5 * uy} ${to.y - 11 * uy - side * 5 * ux}`;
  return wing(1) + wing(-1);
}
