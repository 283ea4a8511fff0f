import { describe, expect, it } from "vitest";
import { cross, dot, length, scale, sub, vecAt } from "../../src/geometry/vec.ts";
import type { FrontEndInput } from "../../src/suspension/inputs.ts";
import { POSE, POSE_ROW, poseRowTo } from "../../src/suspension/poseRow.ts";
import { PoseStatus } from "../../src/suspension/poseStatus.ts";
import { type SidePose, solvePose } from "../../src/suspension/solvePose.ts";
import { type LeanedAxis, leanedAxisFrontEnd } from "./leanedAxis.ts";
import { assembled } from "./trucks.ts";

const DEG = Math.PI / 180;

function restOf(input: FrontEndInput): SidePose {
  const pose = solvePose(assembled(input), 0, 0);
  if (!pose.ok) throw new Error("out of reach at rest");
  return pose.left;
}

const axis = (caster: number, inclination: number, more: Partial<LeanedAxis> = {}): LeanedAxis => ({
  caster: caster * DEG,
  inclination: inclination * DEG,
  ...more,
});

/** KI-64, KI-65, KI-67. Derived: scrub q − R tan σ, trail R tan τ − p, tilt atan √(tan²τ + tan²σ). */
describe("where the steering axis meets the ground", () => {
  it("lies as the two projected angles say", () => {
    const side = restOf(leanedAxisFrontEnd(axis(5, 10)));
    expect(side.scrubRadius).toBeCloseTo(38.2856, 4);
    expect(side.mechanicalTrail).toBeCloseTo(30.621, 4);
    expect(Math.hypot(side.scrubRadius, side.mechanicalTrail)).toBeCloseTo(49.0248, 4);
    const k = vecAt(side.row, POSE.knuckleZ);
    expect(Math.atan2(Math.hypot(k[0], k[1]), k[2]) / DEG).toBeCloseTo(11.13566, 5);
  });

  it("comes nearer to the patch when the hub stands ahead of the axis", () => {
    expect(restOf(leanedAxisFrontEnd(axis(5, 10, { hubAhead: 10 }))).mechanicalTrail).toBeCloseTo(20.621, 4);
  });

  it("passes outboard of the patch on a narrow hub under a leaned axis", () => {
    const narrow = axis(5, 12, { hubOutboard: 60, wheelRadius: 355.5 });
    expect(restOf(leanedAxisFrontEnd(narrow)).scrubRadius).toBeCloseTo(-15.5639, 4);
  });
});

const DROP = 50.8;

/** CL-6. Derived: spindle raised by h at equal x and y moves the axis h tan σ inboard and h tan τ back under it. */
describe("a spindle raised 50.8 mm straight up", () => {
  const raised = (h: number) => {
    const { knuckle, ...truck } = leanedAxisFrontEnd(axis(5, 10));
    // Same ball joints; the wheel center of the plain knuckle moved straight up by h.
    const higher = leanedAxisFrontEnd({
      ...axis(5, 10),
      wheelRadius: 350 + h,
      hubOutboard: 100 + h * Math.tan(10 * DEG),
      hubAhead: h * Math.tan(5 * DEG),
    });
    expect(knuckle.span).toBeCloseTo(higher.knuckle.span, 9);
    return restOf({ ...truck, knuckle: higher.knuckle, loadedRadius: 350 });
  };

  it("sets the body lower by as much and moves scrub and trail by the derived amounts", () => {
    const [plain, dropped] = [raised(0), raised(DROP)];
    expect(dropped.wheelCenter[0]).toBeCloseTo(plain.wheelCenter[0], 9);
    expect(dropped.wheelCenter[1]).toBeCloseTo(plain.wheelCenter[1], 9);
    expect(dropped.contactPatch[2] - plain.contactPatch[2]).toBeCloseTo(DROP, 9);
    expect(dropped.scrubRadius - plain.scrubRadius).toBeCloseTo(8.9574, 4);
    expect(dropped.mechanicalTrail - plain.mechanicalTrail).toBeCloseTo(-4.4444, 4);
  });
});

/** A drop as the knuckle block writes it: the pin carried higher along the steering axis, all else the same. */
describe("a drop knuckle, pinHeight grown by 50.8 mm", () => {
  const plain = leanedAxisFrontEnd(axis(5, 10, { camber: -0.5 * DEG }));
  const dropped: FrontEndInput = {
    ...plain,
    knuckle: { ...plain.knuckle, pinHeight: plain.knuckle.pinHeight + DROP },
  };
  const [from, to] = [assembled(plain), assembled(dropped)];

  it("leaves the ball joints, the tie rod and the wheel's angles alone at equal arm angle, bit for bit", () => {
    const [a, b] = [new Float64Array(POSE_ROW), new Float64Array(POSE_ROW)];
    for (let degrees = -15; degrees <= 15; degrees += 1.5) {
      const [cos, sin] = [Math.cos(degrees * DEG), Math.sin(degrees * DEG)];
      for (const slide of [-60, 0, 45]) {
        const [x, y, z] = from.left.innerAtRest;
        expect(poseRowTo(a, 0, from.left.row, cos, sin, x, y + slide, z)).toBe(PoseStatus.Ok);
        expect(poseRowTo(b, 0, to.left.row, cos, sin, x, y + slide, z)).toBe(PoseStatus.Ok);
        expect(b.slice(0, POSE.wheelCenter)).toEqual(a.slice(0, POSE.wheelCenter));
        expect(vecAt(b, POSE.wheelAxis)).toEqual(vecAt(a, POSE.wheelAxis));
      }
    }
  });

  it("sets the body lower by the drop along the steering axis, which is a little less than the drop", () => {
    const [before, after] = [restOf(plain), restOf(dropped)];
    const lowered = after.contactPatch[2] - before.contactPatch[2];
    // The axis tilts by atan √(tan²5° + tan²10°) = 11.13566° (KI-67).
    expect(lowered).toBeCloseTo(DROP * Math.cos(11.13566 * DEG), 5);
    expect(lowered).toBeGreaterThan(0.98 * DROP);
  });

  it("moves neither scrub radius nor trail: the wheel slides along the axis it turns about", () => {
    const [before, after] = [restOf(plain), restOf(dropped)];
    expect(after.scrubRadius).toBeCloseTo(before.scrubRadius, 9);
    expect(after.mechanicalTrail).toBeCloseTo(before.mechanicalTrail, 9);
  });
});

/** CL-7. Derived: the ball joint line to the mounting face center, norm((P − L) × k), is the knuckle's own. */
it("the mounting face keeps its distance from the ball joint line in every pose", () => {
  const offset = -25;
  const plain = leanedAxisFrontEnd(axis(6, 12));
  const frontEnd = assembled({ ...plain, wheelOffset: offset });
  const { hubFace, pinAngle } = plain.knuckle;
  for (const [travel, steer] of [
    [0, 0],
    [-80, 1],
    [-40, -1],
    [60, 0.7],
    [80, -1],
  ] as const) {
    const pose = solvePose(frontEnd, travel, steer);
    if (!pose.ok) throw new Error("out of reach");
    for (const side of [pose.left, pose.right]) {
      const line = scale(sub(side.upperBallJoint, side.lowerBallJoint), 1 / plain.knuckle.span);
      const away = length(cross(sub(side.hubFace, side.lowerBallJoint), line));
      expect(away).toBeCloseTo(Math.hypot(hubFace * Math.cos(pinAngle), plain.knuckle.pinLead), 9);
      expect(Math.asin(-dot(side.wheelAxis, line))).toBeCloseTo(pinAngle, 12);
    }
  }
});
