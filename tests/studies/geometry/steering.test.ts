import { describe, expect, it } from "vitest";
import { addScaled, cross, dot, normalize, scale, sub, type Vec3 } from "../../../src/geometry/vec.ts";
import { ackermannAt } from "../../../src/studies/geometry/ackermannAt.ts";
import { jackingAt, steeringRatio } from "../../../src/studies/geometry/steeringRatio.ts";
import { CURB_HEIGHT, turningCircle } from "../../../src/studies/geometry/turningCircle.ts";
import type { FrontEndInput } from "../../../src/suspension/inputs.ts";
import { type SidePose, solvePose } from "../../../src/suspension/solvePose.ts";
import { drawnTrucks, inputOf } from "../../suspension/drawnTrucks.ts";
import { leanedAxisFrontEnd } from "../../suspension/leanedAxis.ts";
import { assembled } from "../../suspension/trucks.ts";
import { demoModel } from "../demoModel.ts";
import { BETWEEN_AXES, innerEndFor, levelSteering } from "./levelSteering.ts";
import { modelAround } from "./modelAround.ts";

const DEG = Math.PI / 180;
const WHEELBASE = 3000;

/** cot δo − cot δi = t / l, the fundamental equation of correct steering (ISO 8855:2011 7.1.9). */
const idealOuter = (inner: number) => Math.atan(1 / (1 / Math.tan(inner) + BETWEEN_AXES / WHEELBASE));

describe("Ackermann percentage", () => {
  it.each([
    [10, 23.88],
    [20, 45.5],
    [30, 64.97],
  ])("is 100 for a linkage laid out without scrub at %d° inside", (inner, slide) => {
    const end = innerEndFor(inner * DEG, idealOuter(inner * DEG), slide);
    for (const way of [1, -1]) {
      const found = ackermannAt(modelAround(levelSteering(end, slide)), 0, way)!;
      expect(found.inner / DEG).toBeCloseTo(inner, 6);
      expect(found.percent).toBeCloseTo(100, 4);
      expect(found.error).toBeCloseTo(0, 8);
    }
  });

  it("is 0 where both wheels turn alike, 50 halfway, less than 0 where the outer one turns more", () => {
    const inner = 20 * DEG;
    for (const share of [-0.3, 0, 0.5]) {
      const outer = inner - share * (inner - idealOuter(inner));
      const found = ackermannAt(modelAround(levelSteering(innerEndFor(inner, outer, 45.5), 45.5)), 0, 1)!;
      expect(found.percent).toBeCloseTo(100 * share, 4);
      expect(found.error).toBeCloseTo(outer - idealOuter(inner), 7);
    }
  });

  it("does not count static toe", () => {
    const end = innerEndFor(20 * DEG, idealOuter(20 * DEG), 45.5);
    const plain = ackermannAt(modelAround(levelSteering(end, 45.5)), 0, 0.3)!;
    const toed = ackermannAt(modelAround({ ...levelSteering(end, 45.5), toe: 0.3 * DEG }), 0, 0.3)!;
    expect(Math.abs(toed.percent - plain.percent)).toBeLessThan(8);
  });

  it("has no answer straight ahead or without a wheelbase", () => {
    expect(ackermannAt(demoModel(), 0, 0)).toBeNull();
    expect(ackermannAt(demoModel({ truck: { wheelbase: null } }), 0, 0.5)).toBeNull();
  });
});

/** Closed form for upright axes: contact circle 2 (l / sin δo + r_s) (Reimpell, The Automotive Chassis, from memory). */
describe("the turning circle", () => {
  const end = innerEndFor(30 * DEG, idealOuter(30 * DEG), 64.97);
  const model = modelAround(levelSteering(end, 64.97, 50));

  it.each(["left", "right"] as const)(
    "%s is 14774.939 mm for 30° inside, 3000 mm of wheelbase, 50 mm of scrub",
    (way) => {
      const circle = turningCircle(model, way, 0)!;
      expect(circle.contact).toBeCloseTo(14774.939, 2);
      expect(circle.centersApart).toBeCloseTo(0, 2);
      expect(Math.abs(circle.center[1])).toBeCloseTo(5946.152, 2);
    },
  );

  it.each(["left", "right"] as const)(
    "%s has its centers apart by + where the inner wheel turns more than true, − where less",
    (way) => {
      for (const off of [2 * DEG, -2 * DEG]) {
        const outer = idealOuter(30 * DEG) - off;
        const ends = innerEndFor(30 * DEG, outer, 64.97);
        const { centersApart } = turningCircle(modelAround(levelSteering(ends, 64.97, 50)), way, 0)!;
        expect(Math.sign(centersApart)).toBe(Math.sign(off));
      }
    },
  );

  it("clears the outer edge of the tire, curbs to their height, walls to its full width", () => {
    const circle = turningCircle(model, "left", 0)!;
    const along = WHEELBASE / Math.sin(idealOuter(30 * DEG)) + 50;
    // Upright wheel: a point x outboard and a ahead of its axle stands √((along + x)² + a²) from the turn's center.
    const { profile } = model.tire;
    const edge = (lift: number) => {
      let most = 0;
      for (let i = 0; i < profile.length; i += 2) {
        const [x, r] = [profile[i]!, profile[i + 1]!];
        const drop = 340 - lift;
        if (drop < r) most = Math.max(most, Math.hypot(along + x, Math.sqrt(r * r - drop * drop)));
      }
      return 2 * most;
    };
    expect(circle.curbToCurb).toBeCloseTo(edge(CURB_HEIGHT), 1);
    expect(circle.wallToWall).toBeCloseTo(edge(340), 2);
    expect(circle.wallBy).toBe("outer front tire");
    expect(circle.curbToCurb).toBeLessThan(circle.wallToWall);
  });

  it("counts body parts that swing wider, on the side they are on", () => {
    const at = (side: "left" | "right" | "both") => ({
      ...model.setup.truck,
      body: [{ name: "bumper", kind: "path", side, radius: 10, points: [[900, 950, 500]] } as const],
    });
    const { center } = turningCircle(model, "left", 0)!;
    const wide = modelAround(levelSteering(end, 64.97, 50), { truck: at("right") });
    const circle = turningCircle(wide, "left", 0)!;
    expect(circle.wallBy).toBe("bumper");
    expect(circle.wallToWall).toBeCloseTo(2 * (Math.hypot(900 - center[0], -950 - center[1]) + 10), 9);
    const inside = modelAround(levelSteering(end, 64.97, 50), { truck: at("left") });
    expect(turningCircle(inside, "left", 0)!.wallBy).toBe("outer front tire");
    const both = modelAround(levelSteering(end, 64.97, 50), { truck: at("both") });
    expect(turningCircle(both, "right", 0)!.wallToWall).toBeCloseTo(circle.wallToWall, 6);
  });
});

describe("the steering ratio", () => {
  it.each(drawnTrucks.map((truck) => ({ name: truck.name, input: inputOf(truck) })))(
    "$name: is the finite difference of both wheels' steer angles",
    ({ input }) => {
      const frontEnd = assembled(input);
      const perSteer = input.steering.type === "rack" ? input.steering.stroke : input.steering.swing;
      for (const [travel, steer] of [
        [0, 0],
        [30, 0.5],
        [-30, -0.8],
      ] as const) {
        const ratio = steeringRatio(frontEnd, travel, steer)!;
        for (const side of ["left", "right"] as const) {
          const at = (by: number) => {
            const pose = solvePose(frontEnd, travel, steer + by);
            if (!pose.ok) throw new Error("out of reach");
            return pose[side].steerAngle;
          };
          const slope = (8 * (at(0.004) - at(-0.004)) - (at(0.008) - at(-0.008))) / (12 * 0.004);
          expect(ratio[side]).toBeCloseTo(slope / perSteer, 7);
          expect(ratio[side]).toBeGreaterThan(0);
        }
      }
    },
  );

  it("of a pitman arm as long as the steering arm, level and straight across, is one to one", () => {
    const base = levelSteering([-150, 300], 10);
    const turning = (side: 1 | -1) => ({
      pivot: [0, side * 300, 260] as Vec3,
      axis: [0, 0, 1] as Vec3,
      end: [-150, side * 300, 260] as Vec3,
    });
    const input: FrontEndInput = {
      ...base,
      knuckle: { ...base.knuckle, steeringArm: [-150, 0, 40] as Vec3 },
      steering: {
        type: "pitman",
        innerEnd: [-150, 250, 260],
        innerEndRight: [-150, -250, 260],
        swing: 35 * DEG,
        pitman: turning(1),
        idler: turning(-1),
      },
    };
    for (const steer of [-1, -0.4, 0, 0.7]) {
      // A parallelogram all through: pitman, idler and both steering arms stay parallel.
      const ratio = steeringRatio(assembled(input), 0, steer)!;
      expect(ratio.left).toBeCloseTo(1, 9);
      expect(ratio.right).toBeCloseTo(1, 9);
      const pose = solvePose(assembled(input), 0, steer);
      if (!pose.ok) throw new Error("out of reach");
      expect(pose.left.steerAngle).toBeCloseTo(steer * 35 * DEG, 9);
    }
  });
});

/** A point turned about an axis (Rodrigues). */
function turned(point: Vec3, on: Vec3, axis: Vec3, angle: number): Vec3 {
  const v = sub(point, on);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const across = addScaled(scale(v, cos), cross(axis, v), sin);
  return addScaled(on, addScaled(across, axis, dot(axis, v) * (1 - cos)), 1);
}

describe("jacking", () => {
  it.each([
    [5, 10],
    [0, 12],
    [8, 0],
  ])(
    "with %d° of caster and %d° of inclination is that of wheels turned about their axes",
    (caster, inclination) => {
      const frontEnd = assembled(
        leanedAxisFrontEnd({ caster: caster * DEG, inclination: inclination * DEG }),
      );
      const rest = solvePose(frontEnd, 0, 0);
      if (!rest.ok) throw new Error("out of reach");
      // Height of the contact patch of a wheel turned about its steering axis until it stands at a steer angle.
      const heightAt = (side: SidePose, angle: number) => {
        const axis = normalize(sub(side.upperBallJoint, side.lowerBallJoint));
        const at = (turn: number) => {
          const center = turned(side.wheelCenter, side.lowerBallJoint, axis, turn);
          const spin = turned(side.wheelAxis, [0, 0, 0], axis, turn);
          const out = Math.sign(side.wheelCenter[1]);
          return {
            steer: Math.atan2(-out * spin[0], out * spin[1]),
            z: center[2] - 350 * Math.sqrt(1 - spin[2] ** 2),
          };
        };
        let [low, high] = [-1, 1];
        for (let i = 0; i < 60; i++) {
          const middle = 0.5 * (low + high);
          if (at(middle).steer < angle) low = middle;
          else high = middle;
        }
        return at(low).z;
      };
      for (const steer of [-0.7, 0.3, 0.8]) {
        const pose = solvePose(frontEnd, 0, steer);
        if (!pose.ok) throw new Error("out of reach");
        const left = heightAt(rest.left, pose.left.steerAngle);
        const right = heightAt(rest.right, pose.right.steerAngle);
        const [ly, ry] = [pose.left.contactPatch[1], pose.right.contactPatch[1]];
        const found = jackingAt(frontEnd, 0, steer)!;
        const slope = (left - right) / (ly - ry);
        expect(found.rise).toBeCloseTo(-(left - slope * ly), 8);
        expect(found.roll).toBeCloseTo(-Math.atan(slope), 10);
      }
      expect(jackingAt(frontEnd, 0, 0)).toEqual({ rise: 0, roll: 0 });
    },
  );

  it("inclination alone lifts the body both ways, caster alone rolls it", () => {
    const inclined = assembled(leanedAxisFrontEnd({ caster: 0, inclination: 12 * DEG }));
    for (const steer of [-0.6, 0.6]) expect(jackingAt(inclined, 0, steer)!.rise).toBeGreaterThan(1);
    const leaned = assembled(leanedAxisFrontEnd({ caster: 8 * DEG, inclination: 0 }));
    // In a left turn caster sets the left wheel down and lifts the right one: the left side of the body rises.
    expect(jackingAt(leaned, 0, 0.6)!.roll).toBeGreaterThan(0.3 * DEG);
    expect(jackingAt(leaned, 0, -0.6)!.roll).toBeLessThan(-0.3 * DEG);
  });
});
