import { describe, expect, it } from "vitest";
import { dot, vecAt } from "../../src/geometry/vec.ts";
import { POSE } from "../../src/suspension/poseRow.ts";
import { type SidePose, solvePose } from "../../src/suspension/solvePose.ts";
import { leanedAxisFrontEnd } from "./leanedAxis.ts";
import { assembled, wishbone } from "./trucks.ts";

const DEG = Math.PI / 180;
type Solver = ReturnType<typeof assembled>;

function sideAt(frontEnd: Solver, steer: number, side: "left" | "right" = "left", travel = 0): SidePose {
  const pose = solvePose(frontEnd, travel, steer);
  if (!pose.ok) throw new Error(`out of reach at steer ${steer}`);
  return pose[side];
}

/** Turns the steering until the wheel stands at `wanted` (rad, + = left), lower arm held; bisection. */
function steeredTo(frontEnd: Solver, wanted: number, side: "left" | "right" = "left"): SidePose {
  let [low, high] = [-1, 1];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (sideAt(frontEnd, middle, side).steerAngle > wanted) high = middle;
    else low = middle;
  }
  const found = sideAt(frontEnd, (low + high) / 2, side);
  expect(found.steerAngle).toBeCloseTo(wanted, 12);
  return found;
}

/** Section E: γ = asin[(sin γ0 + tan σ cos γ0)/√(1 + A²)] + atan A, A = tan τ sin δ − tan σ cos δ. */
function camberFormula(caster: number, inclination: number, camber0: number, steer: number): number {
  const a = Math.tan(caster) * Math.sin(steer) - Math.tan(inclination) * Math.cos(steer);
  const share = (Math.sin(camber0) + Math.tan(inclination) * Math.cos(camber0)) / Math.sqrt(1 + a * a);
  return Math.asin(share) + Math.atan(a);
}

/**
 * KI-40 … KI-44: camber against the angle a turntable reads, and the turn about the steering axis it takes.
 * Derived (the wheel axis keeps its angle to the steering axis); no published source for the exact form.
 */
describe("camber with steer is exact in the turntable angle", () => {
  it.each([
    // caster, inclination, camber at rest, steer, camber, turn about the steering axis
    [5, 0, 0, 20, 1.71394, 20.07031],
    [0, 10, 0, 20, 0.60982, 20.32084],
    [0, 10, 0, -20, 0.60982, -20.32084],
    [5, 10, 0, 20, 2.33081, 20.44131],
    [5, 10, 0, -20, -1.10317, -20.33905],
    [4, 8, -0.5, 30, 2.58772, 30.41491],
    [4, 8, -0.5, -30, -1.42212, -30.27336],
    [6, 12, 0, 35, 5.69818, 36.21147],
    [6, 12, 0, -35, -1.24853, -35.81924],
  ])(
    "caster %d°, inclination %d°, camber %d°, steered %d°",
    (caster, inclination, camber0, steer, camber, turn) => {
      const frontEnd = assembled(
        leanedAxisFrontEnd({ caster: caster * DEG, inclination: inclination * DEG, camber: camber0 * DEG }),
      );
      const rest = sideAt(frontEnd, 0);
      expect(rest.caster / DEG).toBeCloseTo(caster, 10);
      expect(rest.kingpinInclination / DEG).toBeCloseTo(inclination, 10);
      expect(rest.camber / DEG).toBeCloseTo(camber0, 10);
      const left = steeredTo(frontEnd, steer * DEG);
      expect(left.camber / DEG).toBeCloseTo(camber, 5);
      const x = vecAt(left.row, POSE.knuckleX);
      const turned = Math.atan2(
        dot(x, vecAt(rest.row, POSE.knuckleY)),
        dot(x, vecAt(rest.row, POSE.knuckleX)),
      );
      expect(turned / DEG).toBeCloseTo(turn, 5);
      // The right wheel is the mirror image: what the left one does turning left, it does turning right.
      const right = steeredTo(frontEnd, -steer * DEG, "right");
      expect(right.camber / DEG).toBeCloseTo(camber, 5);
    },
  );

  it("also on the worked double wishbone, lower arm held (KI-28)", () => {
    const frontEnd = assembled(wishbone);
    const rest = sideAt(frontEnd, 0);
    expect(rest.caster / DEG).toBeCloseTo(5.906141, 6);
    expect(rest.kingpinInclination / DEG).toBeCloseTo(11.689369, 6);
    for (const steer of [-1, -0.5, 0.25, 0.5, 1]) {
      const side = sideAt(frontEnd, steer);
      const wanted = camberFormula(rest.caster, rest.kingpinInclination, 0, side.steerAngle);
      expect(side.camber).toBeCloseTo(wanted, 12);
    }
  });

  /**
   * Section F: caster from ±20° sweeps; exact form derived from section E. The factor 1.5 of the shops is
   * common practice, no source.
   */
  it.each([
    [3, 0, 2.05378],
    [5, 10, 3.43398],
    [8, 12, 5.51829],
  ])(
    "a ±20° sweep of caster %d°, inclination %d° reads %d° of camber change (KI-50 … KI-52)",
    (caster, inclination, change) => {
      const frontEnd = assembled(
        leanedAxisFrontEnd({ caster: caster * DEG, inclination: inclination * DEG }),
      );
      const [in20, out20] = [steeredTo(frontEnd, 20 * DEG), steeredTo(frontEnd, -20 * DEG)];
      expect((in20.camber - out20.camber) / DEG).toBeCloseTo(change, 5);
    },
  );
});

/** AX-8. Derived: tan γ_V = tan γ_W / cos δ, camber about the vehicle's own X against the wheel's lean. */
it("a wheel leaning 5° and steered 30° about a plumb axis leans 5.76863° seen along the truck", () => {
  const frontEnd = assembled(leanedAxisFrontEnd({ caster: 0, inclination: 0, camber: 5 * DEG }));
  const side = steeredTo(frontEnd, 30 * DEG);
  expect(side.camber / DEG).toBeCloseTo(5, 10);
  const alongTruck = Math.atan2(-side.wheelAxis[2], side.wheelAxis[1]);
  expect(alongTruck / DEG).toBeCloseTo(5.76863, 5);
});
