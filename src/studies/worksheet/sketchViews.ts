import type { Place, SketchShape } from "../../geometry/sketch.ts";
import type { Vec3 } from "../../geometry/vec.ts";
import { SHAPE, sketchPlace } from "./sketchTruck.ts";

/** From where a sketch is looked at: from the front, from the left, from above; `track` shows both sides from the front. */
export type SketchView = "front" | "side" | "top" | "track";

/** px of a sketch. */
export const SKETCH_SIZE = { width: 320, height: 232 } as const;

/** What each view shows of the vehicle axes: px per mm, and where the origin lies in the picture. */
const FRAMES: Readonly<Record<SketchView, { readonly scale: number; readonly origin: Place }>> = {
  front: { scale: 0.215, origin: [66, 214] },
  track: { scale: 0.15, origin: [160, 186] },
  side: { scale: 0.215, origin: [160, 214] },
  top: { scale: 0.26, origin: [268, 116] },
};

/**
 * Puts a place of the vehicle axes into a view, px, y down. From the front the truck's left is to the right; from the left
 * its front is to the left; from above its front is up and its left to the left.
 */
export function placeIn(view: SketchView, [x, y, z]: Vec3): Place {
  const { scale, origin } = FRAMES[view];
  switch (view) {
    case "front":
    case "track":
      return [origin[0] + scale * y, origin[1] - scale * z];
    case "side":
      return [origin[0] - scale * x, origin[1] - scale * z];
    case "top":
      return [origin[0] - scale * y, origin[1] - scale * x];
  }
}

/** px per mm. */
function scaleOf(view: SketchView): number {
  return FRAMES[view].scale;
}

/** The truck in a view: what a tape is held to, in thin ink, with the lines everything is measured from. */
export function backdrop(view: SketchView): readonly SketchShape[] {
  switch (view) {
    case "front":
      return [...floorLine(view), centerLine(view, [0, 0, -20], [0, 0, 960]), ...sideFromFront(view, 1)];
    case "track":
      return [
        ...floorLine(view),
        centerLine(view, [0, 0, -60], [0, 0, 900]),
        ...sideFromFront(view, 1),
        ...sideFromFront(view, -1),
      ];
    case "side":
      return sideFromLeft();
    case "top":
      return sideFromAbove();
  }
}

function floorLine(view: SketchView): readonly SketchShape[] {
  const { width } = SKETCH_SIZE;
  const y = FRAMES[view].origin[1];
  return [
    {
      kind: "line",
      look: "datum",
      points: [
        [4, y],
        [width - 4, y],
      ],
    },
  ];
}

function centerLine(view: SketchView, from: Vec3, to: Vec3): SketchShape {
  return { kind: "line", look: "datum", points: [placeIn(view, from), placeIn(view, to)] };
}

const at = (name: string): Vec3 => sketchPlace(name)!;

/** Lines through places, one look. */
function line(view: SketchView, look: "part" | "thin", ...points: readonly Vec3[]): SketchShape {
  return { kind: "line", look, points: points.map((point) => placeIn(view, point)) };
}

function joint(view: SketchView, name: string, hand: 1 | -1 = 1): SketchShape {
  return { kind: "ring", look: "part", at: placeIn(view, handed(at(name), hand)), radius: 2.6 };
}

function handed([x, y, z]: Vec3, hand: 1 | -1): Vec3 {
  return [x, hand * y, z];
}

function sideFromFront(view: SketchView, hand: 1 | -1): readonly SketchShape[] {
  const on = (points: readonly Vec3[]) => points.map((point) => handed(point, hand));
  const { tireRadius: r, tireInboard: a, tireOutboard: b, rimRadius: rim } = SHAPE;
  const wheel = at("wheelCenter")[2];
  const corner = 46;
  const tire: readonly Vec3[] = [
    [0, a + corner, wheel - r],
    [0, b - corner, wheel - r],
    [0, b, wheel - r + corner],
    [0, b, wheel + r - corner],
    [0, b - corner, wheel + r],
    [0, a + corner, wheel + r],
    [0, a, wheel + r - corner],
    [0, a, wheel - r + corner],
    [0, a + corner, wheel - r],
  ];
  const rail: readonly Vec3[] = [
    [0, SHAPE.railInboard, SHAPE.railBottom],
    [0, SHAPE.railOutboard, SHAPE.railBottom],
    [0, SHAPE.railOutboard, SHAPE.railTop],
    [0, SHAPE.railInboard, SHAPE.railTop],
    [0, SHAPE.railInboard, SHAPE.railBottom],
  ];
  const top = SHAPE.lip[3]!;
  const lip: readonly Vec3[] = [top, [0, top[1] + 6, top[2] + 34], [0, top[1] - 36, top[2] + 70]];
  const pin: Vec3 = [0, 665, 408];
  const face: Vec3 = [0, 800, 401];
  return [
    line(view, "thin", ...on(tire)),
    ...[wheel + rim, wheel - rim].map((z) =>
      line(
        view,
        "thin",
        ...on([
          [0, a + 8, z],
          [0, b - 8, z],
        ]),
      ),
    ),
    line(view, "thin", ...on(rail)),
    line(view, "part", ...on(lip)),
    line(view, "part", ...on([at("lowerArm.frontPivot"), at("lowerArm.ballJoint")])),
    line(view, "part", ...on([at("upperArm.frontPivot"), at("upperArm.ballJoint")])),
    line(view, "part", ...on([at("lowerArm.ballJoint"), at("upperArm.ballJoint")])),
    line(view, "part", ...on([pin, face])),
    line(
      view,
      "part",
      ...on([
        [0, 797, face[2] - 70],
        [0, 803, face[2] + 70],
      ]),
    ),
    line(view, "thin", ...on([at("steering.innerEnd"), at("tieRodOuter")])),
    ...[
      "lowerArm.frontPivot",
      "lowerArm.ballJoint",
      "upperArm.frontPivot",
      "upperArm.ballJoint",
      "steering.innerEnd",
      "tieRodOuter",
    ].map((name) => joint(view, name, hand)),
  ];
}

function sideFromLeft(): readonly SketchShape[] {
  const view = "side";
  const wheel = placeIn(view, at("wheelCenter"));
  return [
    ...floorLine(view),
    centerLine(view, [0, 0, -20], [0, 0, 900]),
    { kind: "ring", look: "thin", at: wheel, radius: SHAPE.tireRadius * scaleOf(view) },
    { kind: "ring", look: "thin", at: wheel, radius: SHAPE.rimRadius * scaleOf(view) },
    line(view, "thin", [640, 0, SHAPE.railBottom], [-640, 0, SHAPE.railBottom]),
    line(view, "thin", [640, 0, SHAPE.railTop], [-640, 0, SHAPE.railTop]),
    line(view, "part", ...SHAPE.lip),
    line(view, "part", at("lowerArm.frontPivot"), at("lowerArm.ballJoint"), at("lowerArm.rearPivot")),
    line(view, "part", at("upperArm.frontPivot"), at("upperArm.ballJoint"), at("upperArm.rearPivot")),
    line(view, "part", at("lowerArm.ballJoint"), at("upperArm.ballJoint")),
    line(view, "thin", at("lowerArm.ballJoint"), at("tieRodOuter")),
    ...JOINTS.map((name) => joint(view, name)),
  ];
}

const JOINTS = [
  "lowerArm.frontPivot",
  "lowerArm.rearPivot",
  "lowerArm.ballJoint",
  "upperArm.frontPivot",
  "upperArm.rearPivot",
  "upperArm.ballJoint",
  "steering.innerEnd",
  "tieRodOuter",
] as const;

function sideFromAbove(): readonly SketchShape[] {
  const view = "top";
  const { tireRadius: r, tireInboard: a, tireOutboard: b } = SHAPE;
  return [
    centerLine(view, [430, 0, 0], [-430, 0, 0]),
    centerLine(view, [0, 985, 0], [0, -60, 0]),
    line(view, "thin", [r, a, 0], [r, b, 0], [-r, b, 0], [-r, a, 0], [r, a, 0]),
    line(view, "thin", [430, SHAPE.railOutboard, 0], [-430, SHAPE.railOutboard, 0]),
    line(view, "thin", [430, SHAPE.railInboard, 0], [-430, SHAPE.railInboard, 0]),
    line(view, "part", at("lowerArm.frontPivot"), at("lowerArm.ballJoint"), at("lowerArm.rearPivot")),
    line(view, "part", at("upperArm.frontPivot"), at("upperArm.ballJoint"), at("upperArm.rearPivot")),
    line(view, "thin", at("steering.innerEnd"), at("tieRodOuter")),
    line(view, "part", at("lowerArm.ballJoint"), at("tieRodOuter")),
    ...JOINTS.map((name) => joint(view, name)),
  ];
}
