import { describe, expect, it } from "vitest";
import { dot, sub, vecAt } from "../../src/geometry/vec.ts";
import { POSE, POSE_ROW, poseRowTo } from "../../src/suspension/poseRow.ts";
import { PoseStatus } from "../../src/suspension/poseStatus.ts";
import { solvePose } from "../../src/suspension/solvePose.ts";
import { assembled, wishbone } from "./trucks.ts";

const DEG = 180 / Math.PI;
const frontEnd = assembled(wishbone);

function posed(travel: number, steer: number) {
  const pose = solvePose(frontEnd, travel, steer);
  if (!pose.ok) throw new Error(`out of reach at ${travel}, ${steer}`);
  return pose.left;
}

/**
 * KI-20 … KI-30: a spatial double wishbone in closed form. Values derived outside this project by a
 * separate six-unknown Newton solve and checked by a rigid-body engine; no published source.
 */
describe("the worked spatial double wishbone", () => {
  it.each([
    // travel, camber, toe-in, caster, inclination, Δx, Δy of the wheel center
    [-75, 1.11637, -0.207413, 5.398006, 10.583146, 2.839296, -6.16055],
    [-50, 0.848783, -0.139257, 5.591946, 10.848332, 1.870116, -2.469739],
    [-25, 0.474839, -0.069289, 5.760906, 11.218787, 0.925715, -0.437595],
    [0, 0, 0, 5.906141, 11.689369, 0, 0],
    [25, -0.574331, 0.066582, 6.028484, 12.258966, -0.911405, -1.119119],
    [50, -1.250091, 0.12875, 6.128433, 12.92978, -1.811582, -3.779072],
    [75, -2.032264, 0.185054, 6.206201, 13.707027, -2.702522, -7.98375],
  ])(
    "travel %d mm: camber, toe, caster, inclination and wheel center",
    (travel, camber, toe, caster, kpi, dx, dy) => {
      const side = posed(travel, 0);
      expect(side.camber * DEG).toBeCloseTo(camber, 5);
      expect(side.toe * DEG).toBeCloseTo(toe, 5);
      expect(side.caster * DEG).toBeCloseTo(caster, 5);
      expect(side.kingpinInclination * DEG).toBeCloseTo(kpi, 5);
      expect(side.wheelCenter[0]).toBeCloseTo(dx, 5);
      expect(side.wheelCenter[1] - 790).toBeCloseTo(dy, 5);
      expect(side.wheelCenter[2]).toBeCloseTo(360 + travel, 8);
    },
  );

  // KI-28: lower arm held, rack moved. The arm is behind the axis, so a left turn moves the rack toward −Y.
  it.each([
    [60, 22.942062, 3.263809],
    [30, 11.133547, 1.370744],
    [-30, -11.052922, -0.914847],
    [-60, -22.444592, -1.361349],
  ])("rack moved by −%d mm: steer and camber", (moved, steer, camber) => {
    const side = posed(0, moved / 60);
    expect(side.steerAngle * DEG).toBeCloseTo(steer, 5);
    expect(side.camber * DEG).toBeCloseTo(camber, 5);
  });

  it("has the derived scrub radius, trail and tilt at rest (KI-30, and the tilt of the axis)", () => {
    const side = posed(0, 0);
    expect(side.scrubRadius).toBeCloseTo(42.413793, 5);
    expect(side.mechanicalTrail).toBeCloseTo(33.793103, 5);
  });

  it("keeps the wheel center's distance from the steering axis and the true pin angle in every pose (CL-7)", () => {
    for (const [travel, steer] of [
      [-75, 1],
      [0, -0.5],
      [75, 1],
      [40, 0.3],
    ] as const) {
      const side = posed(travel, steer);
      const k = vecAt(side.row, POSE.knuckleZ);
      const toCenter = sub(side.wheelCenter, side.lowerBallJoint);
      const along = dot(toCenter, k);
      expect(Math.sqrt(dot(toCenter, toCenter) - along * along)).toBeCloseTo(114.476924, 6);
      expect(Math.asin(-dot(side.wheelAxis, k)) * DEG).toBeCloseTo(11.629014, 6);
    }
  });

  it("places every joint with travel and rack moved together (KI-29, wheel center height held)", () => {
    // KI-29 holds the wheel center at 410 with the rack moved, so its arm angle is found by bisection here.
    const row = new Float64Array(POSE_ROW);
    const inner = [-140, 320, 275] as const;
    let low = 0;
    let high = 0.5;
    for (let i = 0; i < 100; i++) {
      const angle = (low + high) / 2;
      expect(poseRowTo(row, 0, frontEnd.left.row, Math.cos(angle), Math.sin(angle), ...inner)).toBe(
        PoseStatus.Ok,
      );
      if (row[POSE.wheelCenter + 2]! > 410) high = angle;
      else low = angle;
    }
    const close = (at: number, [x, y, z]: readonly [number, number, number]) => {
      expect(row[at]).toBeCloseTo(x, 4);
      expect(row[at + 1]).toBeCloseTo(y, 4);
      expect(row[at + 2]).toBeCloseTo(z, 4);
    };
    close(POSE.lowerBallJoint, [8.44306, 699.21027, 275.9185]);
    close(POSE.upperBallJoint, [-22.504, 633.29783, 564.53214]);
    close(POSE.tieRodOuter, [-147.66908, 727.92436, 318.67949]);
    close(POSE.wheelCenter, [34.56358, 779.45907, 410]);
  });
});
