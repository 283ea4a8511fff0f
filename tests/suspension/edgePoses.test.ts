import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dot, length, normalize, sub, type Vec3, vecAt } from "../../src/geometry/vec.ts";
import { alignmentOf } from "../../src/suspension/alignment.ts";
import { armAngleFor } from "../../src/suspension/armAngle.ts";
import type { FrontEndInput } from "../../src/suspension/inputs.ts";
import { POSE, POSE_ROW, poseRowTo } from "../../src/suspension/poseRow.ts";
import { PoseStatus } from "../../src/suspension/poseStatus.ts";
import { solvePose } from "../../src/suspension/solvePose.ts";
import { leanedAxisFrontEnd } from "./leanedAxis.ts";
import { planarFrontEnd } from "./planarWishbone.ts";
import { plausibleTrucks, SEED } from "./plausibleTrucks.ts";
import { assembled, wishbone } from "./trucks.ts";

const DEG = Math.PI / 180;

describe("arms at exactly 90°", () => {
  // With the upper pivot inboard the linkage folds flat past 90° up, with it outboard past 90° down.
  it.each([
    { up: 1, upperY: 270 },
    { up: -1, upperY: 330 },
  ])("equal parallel arms turned by $up quarter turn still only translate the knuckle", ({ up, upperY }) => {
    const { left } = assembled(
      planarFrontEnd({
        lowerInner: [300, 230],
        lowerOuter: [700, 230],
        upperInner: [upperY, 510],
        upperOuter: [upperY + 400, 510],
        wheelCenter: [790, 360],
      }),
    );
    const row = new Float64Array(POSE_ROW);
    expect(poseRowTo(row, 0, left.row, 0, up, ...left.innerAtRest)).toBe(PoseStatus.Ok);
    const near = (at: number, wanted: Vec3) => expect(length(sub(vecAt(row, at), wanted))).toBeLessThan(1e-9);
    near(POSE.lowerBallJoint, [0, 300, 230 + up * 400]);
    near(POSE.upperBallJoint, [0, upperY, 510 + up * 400]);
    near(POSE.wheelCenter, [0, 390, 360 + up * 400]);
    near(POSE.wheelAxis, [0, 1, 0]);
  });

  it("an upper arm square to the line from its pivot to the lower ball joint stays where it was drawn", () => {
    // 3-4-5: upper arm 300 out, lower ball joint 400 straight below its pivot line, span 500.
    const input = planarFrontEnd({
      lowerInner: [100, 220],
      lowerOuter: [400, 200],
      upperInner: [400, 600],
      upperOuter: [700, 600],
      wheelCenter: [830, 360],
    });
    expect(input.knuckle.span).toBeCloseTo(500, 12);
    const pose = solvePose(assembled(input), 0, 0);
    if (!pose.ok) throw new Error("out of reach");
    expect(length(sub(pose.left.upperBallJoint, [0, 700, 600]))).toBeLessThan(1e-9);
    expect(length(sub(pose.left.wheelCenter, [0, 830, 360]))).toBeLessThan(1e-9);
  });
});

describe("a plumb steering axis", () => {
  const plumb = leanedAxisFrontEnd({ caster: 0, inclination: 0 });

  it("shows no caster, inclination, camber or trail at any steering angle", () => {
    const frontEnd = assembled(plumb);
    for (let steer = -1; steer <= 1; steer += 0.25) {
      const pose = solvePose(frontEnd, 0, steer);
      if (!pose.ok) throw new Error("out of reach");
      for (const side of [pose.left, pose.right]) {
        expect(side.caster).toBeCloseTo(0, 12);
        expect(side.kingpinInclination).toBeCloseTo(0, 12);
        expect(side.camber).toBeCloseTo(0, 12);
        expect(side.mechanicalTrail).toBeCloseTo(0, 9);
        expect(side.scrubRadius).toBeCloseTo(100, 9);
      }
    }
  });

  it("a wheel steered by exactly 90° heads left with its axis along the truck", () => {
    // Plan view: the arm's end goes from (−150, 750) to (0, 600); the inner end at x = 100 keeps the rod's length.
    const rod = Math.hypot(250, 470);
    const slide = 280 - (600 - Math.sqrt(rod * rod - 100 * 100));
    const input: FrontEndInput = {
      lowerArm: { frontPivot: [150, 300, 220], rearPivot: [-150, 300, 220], ballJoint: [0, 750, 220] },
      upperArm: { frontPivot: [120, 400, 480], rearPivot: [-120, 400, 480], ballJoint: [0, 750, 480] },
      steering: { type: "rack", innerEnd: [100, 280, 260], stroke: slide },
      knuckle: {
        span: 260,
        pinHeight: 120,
        pinLead: 0,
        pinAngle: 0,
        hubFace: 110,
        steeringArm: [-150, 0, 40],
      },
      wheelOffset: 0,
      loadedRadius: 340,
      toe: 0,
    };
    const { left } = assembled(input);
    const row = new Float64Array(POSE_ROW);
    expect(poseRowTo(row, 0, left.row, 1, 0, 100, 280 - slide, 260)).toBe(PoseStatus.Ok);
    expect(length(sub(vecAt(row, POSE.tieRodOuter), [0, 600, 260]))).toBeLessThan(1e-9);
    expect(length(sub(vecAt(row, POSE.wheelAxis), [-1, 0, 0]))).toBeLessThan(1e-12);
    expect(alignmentOf(row, 0, false).steerAngle).toBeCloseTo(90 * DEG, 12);
    // A little further the heading goes on turning instead of folding back.
    expect(poseRowTo(row, 0, left.row, 1, 0, 100, 280 - slide - 0.5, 260)).toBe(PoseStatus.Ok);
    expect(alignmentOf(row, 0, false).steerAngle).toBeGreaterThan(90 * DEG);
  });
});

it("pivot lines parallel to each other but to no axis keep both ball joints in planes square to them", () => {
  const along: Vec3 = [1, 0.12, -0.07];
  const line = normalize(along);
  const step = (p: Vec3, s: number): Vec3 => [p[0] + s * along[0], p[1] + s * along[1], p[2] + s * along[2]];
  const lower: Vec3 = [-20, 270, 240];
  const upper: Vec3 = [-30, 380, 500];
  const frontEnd = assembled({
    ...wishbone,
    lowerArm: { ...wishbone.lowerArm, frontPivot: step(lower, 150), rearPivot: step(lower, -150) },
    upperArm: { ...wishbone.upperArm, frontPivot: step(upper, 110), rearPivot: step(upper, -130) },
  });
  const rest = solvePose(frontEnd, 0, 0);
  if (!rest.ok) throw new Error("out of reach");
  for (const travel of [-80, -35, 20, 80]) {
    const pose = solvePose(frontEnd, travel, 0);
    if (!pose.ok) throw new Error("out of reach");
    for (const joint of ["lowerBallJoint", "upperBallJoint"] as const) {
      const moved = sub(pose.left[joint], rest.left[joint]);
      expect(length(moved)).toBeGreaterThan(10);
      expect(Math.abs(dot(moved, line))).toBeLessThan(1e-9);
    }
  }
});

describe(`the arm angle for a travel (seed ${SEED.seed}, ${SEED.numRuns} runs)`, () => {
  it("does not depend on where the search starts", () => {
    fc.assert(
      fc.property(
        plausibleTrucks(),
        fc.integer({ min: -90, max: 90 }),
        fc.integer({ min: -100, max: 100 }),
        (truck, travel, percent) => {
          const { left } = truck.frontEnd;
          const found = armAngleFor(left, travel);
          if (Number.isNaN(found)) return;
          const guess =
            (percent / 100) * (percent > 0 ? left.reach.bump.armAngle : -left.reach.droop.armAngle);
          expect(Math.abs(armAngleFor(left, travel, guess) - found)).toBeLessThan(1e-11);
        },
      ),
      SEED,
    );
  });

  it("grows with the travel through the whole reach", () => {
    fc.assert(
      fc.property(plausibleTrucks(), ({ frontEnd: { left } }) => {
        const { droop, bump } = left.reach;
        let last = droop.armAngle;
        for (let share = 0.01; share < 1; share += 0.07) {
          const angle = armAngleFor(left, droop.travel + share * (bump.travel - droop.travel));
          expect(angle).toBeGreaterThan(last);
          last = angle;
        }
        expect(bump.armAngle).toBeGreaterThan(last);
      }),
      SEED,
    );
  });

  it("is exactly 0 at travel 0, and the measured ball joint is met to rounding", () => {
    const pose = solvePose(assembled(wishbone), 0, 0);
    if (!pose.ok) throw new Error("out of reach");
    expect(pose.left.armAngle).toBe(0);
    expect(length(sub(pose.left.lowerBallJoint, wishbone.lowerArm.ballJoint))).toBeLessThan(1e-12);
  });
});

it("a travel or steer that is not a number has no pose", () => {
  const frontEnd = assembled(wishbone);
  for (const [travel, steer] of [
    [Number.NaN, 0],
    [0, Number.NaN],
    [Number.NaN, Number.NaN],
    [Number.POSITIVE_INFINITY, 0],
  ] as const) {
    const pose = solvePose(frontEnd, travel, steer);
    expect(pose.ok).toBe(false);
    if (!pose.ok) expect(Number.isFinite(pose.startsAt)).toBe(true);
  }
});
