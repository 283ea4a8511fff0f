import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { addScaled, dot, sub, type Vec3, vecAt } from "../../../src/geometry/vec.ts";
import { jigReadingsOf } from "../../../src/studies/jig/jigReadings.ts";
import { jigSheetOf } from "../../../src/studies/jig/jigSheet.ts";
import { POSE } from "../../../src/suspension/poseRow.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import { setupCases } from "../../reference/setupCases.ts";
import { DEG, jig, ordered } from "./jigCases.ts";

describe("what the jig reads", () => {
  it("is the hub face on both tapes at pin height, without toe", () => {
    const { front, behind } = jigReadingsOf(ordered, jig, ordered.pinHeight);
    expect(front).toBeCloseTo(155.6, 12);
    expect(behind).toBeCloseTo(155.6, 12);
  });

  // By hand, 8.4° pin angle: sin 8.4° = 0.146083, tan 8.4° = 0.147667; 1/4 in × 0.146083 = 0.036521 in = 0.927629 mm.
  it("is 0.0365 in more on the tape for a straightedge clamped a quarter inch too high", () => {
    const high = jigReadingsOf(ordered, jig, ordered.pinHeight + 6.35);
    const low = jigReadingsOf(ordered, jig, ordered.pinHeight - 6.35);
    expect(high.front - 155.6).toBeCloseTo(0.927629, 5);
    expect(low.behind - 155.6).toBeCloseTo(-0.927629, 5);
    const { offHeight } = jigSheetOf({ knuckle: ordered, jig, order: null });
    expect(offHeight.costs).toBeCloseTo(0.927629, 5);
    expect(offHeight.costsLevel).toBeCloseTo(0.937685, 5);
  });

  // By hand: 0.5° of toe at 10 in: 254 × sin 0.5° × cos 8.4° = 254 × 0.00872654 × 0.98927233 = 2.192763 mm.
  it("is less in front and more behind for a toe built in, by as much", () => {
    const { front, behind, faceAngle } = jigReadingsOf({ ...ordered, toe: 0.5 * DEG }, jig, 142.2);
    expect(front).toBeCloseTo(155.6 - 2.192763, 5);
    expect(behind).toBeCloseTo(155.6 + 2.192763, 5);
    expect(faceAngle).toBe(ordered.pinAngle);
  });

  // By hand: 142.2 − 155.6 × 0.146083 = 119.469485; at 3 in farther out 142.2 − 231.8 × 0.146083 = 108.337961.
  it("has the pin's heights from the table where the joint stands above it", () => {
    const read = jigReadingsOf(ordered, { ...jig, jointHeight: 100 }, ordered.pinHeight);
    expect(read.faceHeight).toBeCloseTo(219.4695, 3);
    expect(read.pinEndHeight).toBeCloseTo(208.338, 3);
    expect(read.armUp).toBe(133);
  });

  it("is the distance from a mark to the plane of the hub face where the pose kernel puts it, on any truck", () => {
    const cases = fc.record({
      model: setupCases("rack"),
      travel: fc.double({ min: -40, max: 40, noNaN: true }),
      steer: fc.double({ min: -0.8, max: 0.8, noNaN: true }),
      toe: fc.double({ min: -5 * DEG, max: 5 * DEG, noNaN: true }),
      off: fc.double({ min: -30, max: 30, noNaN: true }),
    });
    let compared = 0;
    fc.assert(
      fc.property(cases, ({ model, travel, steer, toe, off }) => {
        const pose = solvePose(model.frontEnd, travel, steer);
        if (!pose.ok) return;
        compared++;
        const { row, lowerBallJoint, hubFace, wheelAxis, tieRodOuter } = pose.left;
        const [x, y, up] = [POSE.knuckleX, POSE.knuckleY, POSE.knuckleZ].map((at) => vecAt(row, at)) as [
          Vec3,
          Vec3,
          Vec3,
        ];
        // The straightedge runs so that the pin is turned from square to it by the toe, its front end inboard.
        const along = addScaled(addScaled([0, 0, 0], x, Math.cos(toe)), y, Math.sin(toe));
        const across = addScaled(addScaled([0, 0, 0], y, Math.cos(toe)), x, -Math.sin(toe));
        const { knuckle } = model.setup;
        const clamped = knuckle.pinHeight + off;
        const read = jigReadingsOf({ ...knuckle, toe }, jig, clamped);
        const onAxis = addScaled(lowerBallJoint, up, clamped);
        const tape = (mark: Vec3) => dot(sub(hubFace, mark), wheelAxis);
        expect(read.front).toBeCloseTo(tape(addScaled(onAxis, along, jig.halfLength)), 8);
        expect(read.behind).toBeCloseTo(tape(addScaled(onAxis, along, -jig.halfLength)), 8);
        const fromJoint = sub(hubFace, lowerBallJoint);
        expect(read.lead).toBeCloseTo(dot(fromJoint, along), 8);
        expect(read.faceHeight).toBeCloseTo(dot(fromJoint, up), 8);
        expect(read.pinEndHeight).toBeCloseTo(dot(fromJoint, up) + jig.pinEnd * dot(wheelAxis, up), 8);
        expect(read.faceAngle).toBeCloseTo(-Math.asin(dot(wheelAxis, up)), 9);
        const toArm = sub(tieRodOuter, lowerBallJoint);
        expect([read.armAhead, read.armOut, read.armUp].map((v) => v.toFixed(6))).toEqual(
          [along, across, up].map((axis) => (dot(toArm, axis) + 0).toFixed(6)),
        );
      }),
      { seed: 1972, numRuns: 60 },
    );
    expect(compared).toBeGreaterThan(40);
  });
});
