import { Matrix4, Vector3 } from "three";
import { describe, expect, it } from "vitest";
import { knuckleFrameTo, wheelFrameTo } from "../../src/app/stage/frames.ts";
import { frameTo } from "../../src/app/stage/frameTo.ts";
import { mirrorY, type Vec3 } from "../../src/geometry/vec.ts";
import { solvePose } from "../../src/suspension/solvePose.ts";
import { assembled, wishbone } from "../suspension/trucks.ts";

const poses = [
  [0, 0],
  [60, 0.7],
  [-80, -1],
] as const;

/** A point of a moving body's own frame, where the picture puts it. */
function drawnAt(point: Vec3, matrix: Matrix4): Vec3 {
  const { x, y, z } = new Vector3(...point).applyMatrix4(matrix);
  return [x, y, z];
}

function expectSamePlace(a: Vec3, b: Vec3): void {
  expect(Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])).toBeLessThan(1e-6);
}

describe.each(poses)("the picture at travel %d mm, steer %d", (travel, steer) => {
  const input = { ...wishbone, wheelOffset: 12 };
  const pose = solvePose(assembled(input), travel, steer);
  if (!pose.ok) throw new Error("the test's own truck must reach its poses");

  it.each(["left", "right"] as const)("draws the %s knuckle and wheel where the solver has them", (name) => {
    const side = pose[name];
    // The right side is drawn as a left one and mirrored.
    const seen = (point: Vec3) => (name === "right" ? mirrorY(point) : point);
    const knuckle = knuckleFrameTo(new Matrix4(), side.row);
    expectSamePlace(seen(drawnAt([0, 0, input.knuckle.span], knuckle)), side.upperBallJoint);
    expectSamePlace(seen(drawnAt(input.knuckle.steeringArm, knuckle)), side.tieRodOuter);
    const wheel = wheelFrameTo(new Matrix4(), side.row);
    expectSamePlace(seen(drawnAt([0, 0, 0], wheel)), side.wheelCenter);
    expectSamePlace(seen(drawnAt([0, input.wheelOffset, 0], wheel)), side.hubFace);
    expect(wheel.determinant()).toBeCloseTo(1, 12);
  });

  it("turns a control arm about its pivots without stretching it", () => {
    const { frontPivot, rearPivot, ballJoint } = input.lowerArm;
    const atRest = frameTo(new Matrix4(), frontPivot, rearPivot, ballJoint);
    const now = frameTo(new Matrix4(), frontPivot, rearPivot, pose.left.lowerBallJoint);
    const inArm = (point: Vec3) => drawnAt(point, atRest.clone().invert());
    expectSamePlace(drawnAt(inArm(ballJoint), now), pose.left.lowerBallJoint);
    expectSamePlace(drawnAt(inArm(rearPivot), now), rearPivot);
    expect(now.determinant()).toBeCloseTo(1, 12);
  });
});
