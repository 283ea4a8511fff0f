import { describe, expect, it } from "vitest";
import type { FrontEndInput } from "../../src/suspension/inputs.ts";
import { solvePose } from "../../src/suspension/solvePose.ts";
import { assembled } from "./trucks.ts";

const DEG = Math.PI / 180;
const WHEELBASE = 3000;
const BETWEEN_AXES = 1500;
/** Steering arm in plan, from the steering axis: back and a little inboard, as rear steering has it. */
const ARM: readonly [x: number, y: number] = [-150, -44];

/** Plan view (x, y) of the left steering arm's end when the knuckle has turned left by `angle`. */
function armEnd(angle: number): [number, number] {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return [cos * ARM[0] - sin * ARM[1], BETWEEN_AXES / 2 + sin * ARM[0] + cos * ARM[1]];
}

function circumcenter([ax, ay]: number[], [bx, by]: number[], [cx, cy]: number[]): [number, number] {
  const d = 2 * (ax! * (by! - cy!) + bx! * (cy! - ay!) + cx! * (ay! - by!));
  const [a, b, c] = [ax! * ax! + ay! * ay!, bx! * bx! + by! * by!, cx! * cx! + cy! * cy!];
  return [
    (a * (by! - cy!) + b * (cy! - ay!) + c * (ay! - by!)) / d,
    (a * (cx! - bx!) + b * (ax! - cx!) + c * (bx! - ax!)) / d,
  ];
}

/**
 * The inner tie rod end for which a rack moved by `slide` turns the left wheel by `inner` and the right one
 * by `outer`. The left end must stay one tie rod length from the arm at rest, turned left by `inner` with the
 * rack to −Y, and (the mirror image of the right side) turned right by `outer` with the rack to +Y; with the
 * rack's motion taken off the arm's end that is the center of a circle through three points. Any slide will
 * do; those below put the inner end where a rack has it, about 300 mm from the center plane.
 */
function innerEndFor(inner: number, outer: number, slide: number): [number, number] {
  const [lx, ly] = armEnd(inner);
  const [rx, ry] = armEnd(-outer);
  return circumcenter(armEnd(0), [lx, ly + slide], [rx, ry - slide]);
}

/** Plumb steering axes and everything of the steering in one level plane: a planar linkage. */
function levelSteering(innerEnd: readonly [number, number], stroke: number): FrontEndInput {
  const y = BETWEEN_AXES / 2;
  return {
    lowerArm: { frontPivot: [150, 300, 220], rearPivot: [-150, 300, 220], ballJoint: [0, y, 220] },
    upperArm: { frontPivot: [120, 400, 480], rearPivot: [-120, 400, 480], ballJoint: [0, y, 480] },
    steering: { type: "rack", innerEnd: [innerEnd[0], innerEnd[1], 260], stroke },
    knuckle: { span: 260, pinHeight: 120, pinLead: 0, pinAngle: 0, hubFace: 110, steeringArm: [...ARM, 40] },
    wheelOffset: 0,
    loadedRadius: 340,
    toe: 0,
  };
}

/** Left wheel angle of the planar linkage with the rack at −Y `slide`, by bisection on the tie rod length. */
function planarAngle(innerEnd: readonly [number, number], slide: number): number {
  const stretch = (angle: number) => {
    const [x, y] = armEnd(angle);
    const [x0, y0] = armEnd(0);
    return (
      Math.hypot(x - innerEnd[0], y - innerEnd[1] + slide) - Math.hypot(x0 - innerEnd[0], y0 - innerEnd[1])
    );
  };
  let [low, high] = [-55 * DEG, 55 * DEG];
  const sign = Math.sign(stretch(high));
  expect(Math.sign(stretch(low))).toBe(-sign);
  for (let i = 0; i < 80; i++) {
    const middle = (low + high) / 2;
    if (Math.sign(stretch(middle)) === sign) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

/**
 * KI-60: cot δo − cot δi = t/L, L = 3000, t = 1500 between the steering axes. Relation as found in textbooks
 * on the "fundamental equation of correct steering"; ISO 8855:2011 cl. 7.1.9 defines the geometry. Angles
 * derived from it.
 */
describe("Ackermann geometry", () => {
  it.each([
    [10, 9.20426, 23.88],
    [20, 17.11524, 45.5],
    [30, 24.13326, 64.97],
    [40, 30.58745, 82.48],
  ])(
    "a linkage laid out for %d° inside steers %d° outside, and both wheel axes meet over the rear axle",
    (inner, outer, slide) => {
      const exact = Math.atan(1 / (1 / Math.tan(inner * DEG) + BETWEEN_AXES / WHEELBASE));
      const innerEnd = innerEndFor(inner * DEG, exact, slide);
      expect(innerEnd[1]).toBeGreaterThan(240);
      expect(innerEnd[1]).toBeLessThan(330);
      const frontEnd = assembled(levelSteering(innerEnd, slide));
      for (const steer of [1, -1]) {
        const pose = solvePose(frontEnd, 0, steer);
        if (!pose.ok) throw new Error("out of reach");
        const [inside, outside] = steer > 0 ? [pose.left, pose.right] : [pose.right, pose.left];
        expect((steer * inside.steerAngle) / DEG).toBeCloseTo(inner, 9);
        expect((steer * outside.steerAngle) / DEG).toBeCloseTo(outer, 5);
        const relation = 1 / Math.tan(steer * outside.steerAngle) - 1 / Math.tan(steer * inside.steerAngle);
        expect(relation).toBeCloseTo(BETWEEN_AXES / WHEELBASE, 9);
        // KI-61's construction: each wheel axis, from its steering axis, crosses the rear axle line at one center.
        const centers = [pose.left, pose.right].map(({ lowerBallJoint: [x, y], wheelAxis: [nx, ny] }) => {
          const along = (-WHEELBASE - x) / nx;
          return y + along * ny;
        });
        expect(centers[0]).toBeCloseTo(centers[1]!, 4);
        expect(steer * centers[0]!).toBeGreaterThan(0);
      }
    },
  );

  it("30° inside turns about a center 5946.152 mm from the middle of the rear axle (KI-61, derived)", () => {
    const exact = Math.atan(1 / (1 / Math.tan(30 * DEG) + BETWEEN_AXES / WHEELBASE));
    const pose = solvePose(assembled(levelSteering(innerEndFor(30 * DEG, exact, 64.97), 64.97)), 0, 1);
    if (!pose.ok) throw new Error("out of reach");
    const { lowerBallJoint, wheelAxis } = pose.left;
    const center = lowerBallJoint[1] + ((-WHEELBASE - lowerBallJoint[0]) / wheelAxis[0]) * wheelAxis[1];
    expect(center).toBeCloseTo(5946.152, 3);
  });

  it("every rack position agrees with the planar linkage solved by bisection", () => {
    const innerEnd = [-165, 280] as const;
    const frontEnd = assembled(levelSteering(innerEnd, 80));
    for (let steer = -1; steer <= 1; steer += 0.125) {
      const pose = solvePose(frontEnd, 0, steer);
      if (!pose.ok) throw new Error("out of reach");
      expect(pose.left.steerAngle).toBeCloseTo(planarAngle(innerEnd, 80 * steer), 12);
      expect(pose.right.steerAngle).toBeCloseTo(-planarAngle(innerEnd, -80 * steer), 12);
      expect(pose.left.camber).toBeCloseTo(0, 12);
    }
  });
});
