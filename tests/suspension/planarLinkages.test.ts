import { describe, expect, it } from "vitest";
import { sub, type Vec3, vecAt } from "../../src/geometry/vec.ts";
import { POSE, POSE_ROW, poseRowTo } from "../../src/suspension/poseRow.ts";
import { PoseStatus } from "../../src/suspension/poseStatus.ts";
import { type SidePose, solvePose } from "../../src/suspension/solvePose.ts";
import { RATE, RATE_ROW, wheelRatesTo } from "../../src/suspension/wheelRates.ts";
import { knuckleFixedPoint } from "./knuckleFixedPoint.ts";
import {
  type FrontViewPoint,
  type PlanarWishbone,
  planarFrontEnd,
  TIE_ROD_X,
  UNEQUAL_ARMS,
} from "./planarWishbone.ts";
import { assembled } from "./trucks.ts";

const DEG = Math.PI / 180;

function leftAt(input: Parameters<typeof assembled>[0], travel: number): SidePose {
  const pose = solvePose(assembled(input), travel, 0);
  if (!pose.ok) throw new Error(`out of reach at ${travel}`);
  return pose.left;
}

/**
 * KI-1. Freudenstein's equation for the planar four-bar, K1 cos θ4 − K2 cos θ2 + K3 = cos(θ2 − θ4), set up as
 * a front view: crank = lower arm, coupler = knuckle, rocker = upper arm, ground = from lower to upper pivot.
 * Equation: Ghosal, "The Freudenstein Equation", Resonance, Aug. 2010. Values 20.30 / 57.33 and
 * −60.98 / −98.01: Norton, Design of Machinery, ch. 4 (from memory); further digits derived.
 */
describe("a double wishbone whose pivot lines run along X is a planar four-bar", () => {
  const [a, b, c, d] = [40, 120, 80, 100];
  const [k1, k2, k3] = [d / a, d / c, (a * a - b * b + c * c + d * d) / (2 * a * c)];
  const ground: FrontViewPoint = [300, 200];
  // The ground line stands upright and the four-bar's angles run clockwise from it in the front view.
  const along = (from: FrontViewPoint, r: number, theta: number): FrontViewPoint => [
    from[0] + r * Math.sin(theta),
    from[1] + r * Math.cos(theta),
  ];
  const angleOf = (from: readonly number[], to: readonly number[]) =>
    Math.atan2(to[1]! - from[1]!, to[2]! - from[2]!);
  const upperPivot = along(ground, d, 0);

  /** Assembled at crank angle 60°, the rocker drawn anywhere on the wanted branch, then cranked. */
  function crankedTo(crank: number, rockerDrawn: number) {
    const drawn = planarFrontEnd({
      lowerInner: ground,
      lowerOuter: along(ground, a, 60 * DEG),
      upperInner: upperPivot,
      upperOuter: along(upperPivot, c, rockerDrawn),
      wheelCenter: [420, 330],
    });
    const { left } = assembled({ ...drawn, knuckle: { ...drawn.knuckle, span: b } });
    const row = new Float64Array(POSE_ROW);
    // The arm rises as the crank angle falls toward the upright ground line.
    const up = 60 * DEG - crank;
    const status = poseRowTo(row, 0, left.row, Math.cos(up), Math.sin(up), ...left.innerAtRest);
    expect(status).toBe(PoseStatus.Ok);
    const lower = vecAt(row, POSE.lowerBallJoint);
    const upper = vecAt(row, POSE.upperBallJoint);
    return {
      theta2: angleOf([0, ...ground], lower),
      theta3: angleOf(lower, upper),
      theta4: angleOf([0, ...upperPivot], upper),
    };
  }

  it.each([
    ["open", 65, 20.297883, 57.32488],
    ["crossed", -110, -60.977967, -98.004964],
  ])("%s: coupler and rocker angle at crank 40°", (_, rockerDrawn, theta3, theta4) => {
    const found = crankedTo(40 * DEG, rockerDrawn * DEG);
    expect(found.theta2 / DEG).toBeCloseTo(40, 10);
    expect(found.theta3 / DEG).toBeCloseTo(theta3, 6);
    expect(found.theta4 / DEG).toBeCloseTo(theta4, 6);
  });

  it.each([65, -110])("the equation holds at every crank angle (rocker drawn at %d°)", (rockerDrawn) => {
    for (let crank = 20; crank <= 110; crank += 5) {
      const { theta2, theta4 } = crankedTo(crank * DEG, rockerDrawn * DEG);
      expect(theta2 / DEG).toBeCloseTo(crank, 10);
      expect(k1 * Math.cos(theta4) - k2 * Math.cos(theta2) + k3 - Math.cos(theta2 - theta4)).toBeCloseTo(
        0,
        12,
      );
    }
  });
});

/** KI-2, KI-3. Derived: a parallelogram's coupler only translates; inward shift L − √(L² − z²). */
describe("equal and parallel arms", () => {
  const parallelogram = planarFrontEnd({
    lowerInner: [300, 230],
    lowerOuter: [700, 230],
    upperInner: [270, 510],
    upperOuter: [670, 510],
    wheelCenter: [790, 360],
  });
  const rest = leftAt(parallelogram, 0);

  it.each([
    [25, 0.782014],
    [50, 3.137303],
    [75, 7.094159],
    [100, 12.701665],
  ])("at %d mm the wheel only shifts inward by %d mm", (travel, inward) => {
    for (const moved of [travel, -travel]) {
      const side = leftAt(parallelogram, moved);
      expect(790 - side.wheelCenter[1]).toBeCloseTo(inward, 6);
      for (const angle of ["camber", "caster", "kingpinInclination", "toe"] as const) {
        expect(Math.abs(side[angle] - rest[angle])).toBeLessThan(1e-10);
      }
    }
  });
});

/** Where two front-view lines meet, each through two points (x ignored). */
function meet(p: Vec3, q: Vec3, r: Vec3, s: Vec3): FrontViewPoint {
  const [dy, dz] = [q[1] - p[1], q[2] - p[2]];
  const [ey, ez] = [s[1] - r[1], s[2] - r[2]];
  const t = ((r[1] - p[1]) * ez - (r[2] - p[2]) * ey) / (dy * ez - dz * ey);
  return [p[1] + t * dy, p[2] + t * dz];
}

/** KI-10 … KI-16, KI-31, KI-32. Derived: two-circle intersection, bisection on the arm angle. */
describe.each([0, 35])("UNEQUAL_ARMS planar arms, axle line at x = %d", (x) => {
  const input = planarFrontEnd(UNEQUAL_ARMS, x);
  const restPatch: Vec3 = [x, 790, 0];

  it.each([
    // travel, lower arm angle, camber, Δy wheel center, Δy knuckle-fixed patch, roll center above the patch
    [-75, -11.948651, 1.09415, -6.84932, -13.72365, 188.2567],
    [-50, -8.770136, 0.831926, -2.944348, -8.171308, 158.2087],
    [-25, -5.639503, 0.465367, -0.683074, -3.607026, 128.4678],
    [0, -2.544804, 0, 0, 0, 99.1719],
    [25, 0.524399, -0.562553, -0.85535, 2.679215, 70.4328],
    [50, 3.577538, -1.22385, -3.230718, 4.458376, 42.3567],
    [75, 6.623419, -1.988311, -7.126789, 5.363631, 15.0575],
  ])(
    "travel %d mm: arm angle, camber, shifts, roll center, and nothing along X",
    (travel, arm, camber, dy, patchDy, roll) => {
      const side = leftAt(input, travel);
      const lowerInner: Vec3 = [x, ...UNEQUAL_ARMS.lowerInner];
      const upperInner: Vec3 = [x, ...UNEQUAL_ARMS.upperInner];
      const fromPivot = sub(side.lowerBallJoint, lowerInner);
      expect(Math.atan2(fromPivot[2], fromPivot[1]) / DEG).toBeCloseTo(arm, 5);
      expect(side.armAngle / DEG).toBeCloseTo(arm + 2.544804, 5);
      expect(side.camber / DEG).toBeCloseTo(camber, 5);
      expect(side.wheelCenter[1] - 790).toBeCloseTo(dy, 5);
      const patch = knuckleFixedPoint(restPatch, leftAt(input, 0).row, side.row);
      expect(patch[1] - 790).toBeCloseTo(patchDy, 5);
      const [icY, icZ] = meet(lowerInner, side.lowerBallJoint, upperInner, side.upperBallJoint);
      const slope = (icZ - patch[2]) / (icY - patch[1]);
      expect(-slope * patch[1]).toBeCloseTo(roll, 3);
      for (const point of [side.wheelCenter, side.lowerBallJoint, side.upperBallJoint]) {
        expect(Math.abs(point[0] - x)).toBeLessThan(1e-9);
      }
      // The tie rod is a copy of the lower arm, so the toe cannot change.
      expect(Math.abs(side.toe)).toBeLessThan(1e-10);
    },
  );
});

/** KI-6 … KI-9, KI-34. Derived from the instant center: the arm lines' crossing, or none for parallel arms. */
describe("first-order motion about the instant center", () => {
  /** Per mm of wheel rise at rest: camber and toe (rad), sideways motion of the floor point below the wheel. */
  function perRise(drawn: PlanarWishbone) {
    const { left } = assembled(planarFrontEnd(drawn));
    const pose = new Float64Array(POSE_ROW);
    const rates = new Float64Array(RATE_ROW);
    poseRowTo(pose, 0, left.row, 1, 0, ...left.innerAtRest);
    wheelRatesTo(rates, 0, left.row, pose, 0, 1, 0, 0, 0, 0);
    const rise = rates[RATE.armSlide + 2]!;
    const [turnX, , turnZ] = vecAt(rates, RATE.armTurn);
    // Camber falls as the wheel turns about +X; the floor point hangs wheelCenter z below the center.
    const floorY = rates[RATE.armSlide + 1]! + turnX * drawn.wheelCenter[1];
    return { camber: -turnX / rise, toe: -turnZ / rise, floorY: floorY / rise };
  }

  it("camber gain is the reciprocal of the swing arm length, and the roll center follows", () => {
    const { camber, floorY } = perRise(UNEQUAL_ARMS);
    expect(camber).toBeCloseTo(-1 / 2787.039474, 9);
    expect(camber / DEG).toBeCloseTo(-0.02055794, 7);
    expect((camber / DEG) * 25.4).toBeCloseTo(-0.522172, 6);
    expect(floorY).toBeCloseTo(0.12553407, 7);
    expect(790 * floorY).toBeCloseTo(99.171919, 5);
  });

  it("parallel arms sloping 1 in 10 have their roll center at 79 mm", () => {
    const sloped = perRise({
      ...UNEQUAL_ARMS,
      lowerInner: [250, 275],
      lowerOuter: [700, 230],
      upperInner: [330, 551],
      upperOuter: [640, 520],
    });
    expect(sloped.camber).toBeCloseTo(0, 12);
    expect(790 * sloped.floorY).toBeCloseTo(79, 9);
  });

  it("a tie rod on the line to the instant center has no bump steer to first order", () => {
    const outer: FrontViewPoint = [680, 262];
    const aimed = perRise({ ...UNEQUAL_ARMS, tieRod: { inner: [270, 275.457423], outer } });
    const raised = perRise({ ...UNEQUAL_ARMS, tieRod: { inner: [270, 280.457423], outer } });
    expect(Math.abs(aimed.toe)).toBeLessThan(1e-9);
    expect(Math.abs(raised.toe)).toBeGreaterThan(1e-5);
  });
});

/** KI-34, KI-35. Derived: how far the outer end would drift from the inner one if the toe could not change. */
describe("the tie rod that bump steers least", () => {
  const outer: Vec3 = [TIE_ROD_X, 680, 262];

  function drift(inner: FrontViewPoint, travel: number): number {
    // Toe held by the copy of the lower arm: the knuckle carries the outer end along its own path.
    const input = planarFrontEnd(UNEQUAL_ARMS);
    const [, nowY, nowZ] = knuckleFixedPoint(outer, leftAt(input, 0).row, leftAt(input, travel).row);
    const distance = (y: number, z: number) => Math.hypot(y - inner[0], z - inner[1]);
    return distance(nowY, nowZ) - distance(outer[1], outer[2]);
  }

  it.each([
    ["aimed at the instant center", [270, 275.457423], 0.2614, 0.20702],
    ["at the center of curvature", [254.3497, 275.9711], 0.02005, -0.02099],
  ] as const)("%s", (_, inner, atDroop, atBump) => {
    expect(drift(inner, -75)).toBeCloseTo(atDroop, 4);
    expect(drift(inner, 75)).toBeCloseTo(atBump, 4);
  });
});
