import type { FrontEndInput } from "../../../src/suspension/inputs.ts";

/** Between the steering axes, mm. */
export const BETWEEN_AXES = 1500;

/** Steering arm in plan, from the steering axis: back and a little inboard, as rear steering has it. */
const ARM: readonly [x: number, y: number] = [-150, -44];

/** Plumb steering axes, plumb wheels, and everything of the steering in one level plane: a planar linkage. */
export function levelSteering(
  innerEnd: readonly [number, number],
  stroke: number,
  scrubRadius = 110,
): FrontEndInput {
  const y = BETWEEN_AXES / 2;
  return {
    lowerArm: { frontPivot: [150, 300, 220], rearPivot: [-150, 300, 220], ballJoint: [0, y, 220] },
    upperArm: { frontPivot: [120, 400, 480], rearPivot: [-120, 400, 480], ballJoint: [0, y, 480] },
    steering: { type: "rack", innerEnd: [innerEnd[0], innerEnd[1], 260], stroke },
    knuckle: {
      span: 260,
      pinHeight: 120,
      pinLead: 0,
      pinAngle: 0,
      hubFace: scrubRadius,
      steeringArm: [...ARM, 40],
    },
    wheelOffset: 0,
    loadedRadius: 340,
    toe: 0,
  };
}

/**
 * The inner tie rod end for which a rack moved by `slide` turns the left wheel by `inner` and the right one by `outer`
 * (rad): the center of the circle through the steering arm's end at rest, turned in with the rack's motion taken off,
 * and turned out likewise (see tests/suspension/ackermann.test.ts).
 */
export function innerEndFor(inner: number, outer: number, slide: number): [number, number] {
  const [lx, ly] = armEnd(inner);
  const [rx, ry] = armEnd(-outer);
  return circumcenter(armEnd(0), [lx, ly + slide], [rx, ry - slide]);
}

function armEnd(angle: number): [number, number] {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return [cos * ARM[0] - sin * ARM[1], BETWEEN_AXES / 2 + sin * ARM[0] + cos * ARM[1]];
}

type Plan = readonly [number, number];

function circumcenter([ax, ay]: Plan, [bx, by]: Plan, [cx, cy]: Plan): [number, number] {
  const d = 2 * (ax * (by - cy) + bx * (cy - ay) + cx * (ay - by));
  const [a, b, c] = [ax * ax + ay * ay, bx * bx + by * by, cx * cx + cy * cy];
  return [
    (a * (by - cy) + b * (cy - ay) + c * (ay - by)) / d,
    (a * (cx - bx) + b * (ax - cx) + c * (bx - ax)) / d,
  ];
}
