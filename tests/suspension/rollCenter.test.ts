import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { forceLine, instantCenter, rollCenter } from "../../src/suspension/rollCenter.ts";
import { type SidePose, solvePose } from "../../src/suspension/solvePose.ts";
import { wheelMotion } from "../../src/suspension/wheelMotion.ts";
import { drawnTrucks, inputOf } from "./drawnTrucks.ts";
import { type FrontViewPoint, planarFrontEnd, UNEQUAL_ARMS } from "./planarWishbone.ts";
import { plausibleTrucks, SEED, usualPoses } from "./plausibleTrucks.ts";
import { assembled } from "./trucks.ts";

const DEG = Math.PI / 180;

const inFrontView = ([, y, z]: readonly [number, number, number]): FrontViewPoint => [y, z];

/** Where the lines a–b and c–d cross. */
function meet(a: FrontViewPoint, b: FrontViewPoint, c: FrontViewPoint, d: FrontViewPoint): FrontViewPoint {
  const [ux, uz, vx, vz] = [b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]];
  const t = ((c[0] - a[0]) * vz - (c[1] - a[1]) * vx) / (ux * vz - uz * vx);
  return [a[0] + t * ux, a[1] + t * uz];
}

/**
 * The textbook construction in the front view: instant center where the arm lines cross, roll center where the lines
 * from both contact patches through their instant centers cross (Gillespie, Fundamentals of Vehicle Dynamics, chapter 7,
 * and Milliken & Milliken, Race Car Vehicle Dynamics, chapter 17; both from memory). Numbers worked out by hand.
 */
describe("instant and roll center of a planar truck", () => {
  it("as measured are those of the construction", () => {
    const frontEnd = assembled(planarFrontEnd(UNEQUAL_ARMS));
    const motion = wheelMotion(frontEnd, "left", 0, 0)!;
    const center = instantCenter(motion)!;
    expect(center.y).toBeCloseTo(-1997.039474, 5);
    expect(center.z).toBeCloseTo(349.868421, 5);
    expect(motion.contactPatch[1] - center.y).toBeCloseTo(2787.039474, 5);
    expect(motion.camberGain).toBeCloseTo(-1 / 2787.039474, 10);
    expect((motion.camberGain / DEG) * 25.4).toBeCloseTo(-0.522172, 6);
    const roll = rollCenter(frontEnd, { left: 0, right: 0 }, 0)!;
    expect(roll.height).toBeCloseTo(99.171919, 5);
    expect(roll.y).toBeCloseTo(0, 8);
  });

  it.each([-75, -50, -25, 25, 50, 75])(
    "at %d mm of travel too, from the joints where they are then",
    (travel) => {
      const frontEnd = assembled(planarFrontEnd(UNEQUAL_ARMS));
      const pose = solvePose(frontEnd, travel, 0);
      if (!pose.ok) throw new Error("out of reach");
      const [icY, icZ] = meet(
        UNEQUAL_ARMS.lowerInner,
        inFrontView(pose.left.lowerBallJoint),
        UNEQUAL_ARMS.upperInner,
        inFrontView(pose.left.upperBallJoint),
      );
      const center = instantCenter(wheelMotion(frontEnd, "left", travel, 0)!)!;
      expect(center.y).toBeCloseTo(icY, 5);
      expect(center.z).toBeCloseTo(icZ, 5);
      const [, patchY, patchZ] = pose.left.contactPatch;
      const height = (-patchY * (icZ - patchZ)) / (icY - patchY);
      expect(rollCenter(frontEnd, { left: travel, right: travel }, 0)!.height).toBeCloseTo(height, 6);
    },
  );

  it("with the wheels at unlike heights cross off the center plane, as drawn", () => {
    const frontEnd = assembled(planarFrontEnd(UNEQUAL_ARMS));
    const drawn = (travel: number) => {
      const pose = solvePose(frontEnd, travel, 0);
      if (!pose.ok) throw new Error("out of reach");
      const { lowerBallJoint, upperBallJoint, contactPatch } = pose.left;
      const center = meet(
        UNEQUAL_ARMS.lowerInner,
        inFrontView(lowerBallJoint),
        UNEQUAL_ARMS.upperInner,
        inFrontView(upperBallJoint),
      );
      return { center, patch: inFrontView(contactPatch) };
    };
    const [bump, droop] = [drawn(40), drawn(-30)];
    const mirrored = ([y, z]: FrontViewPoint): FrontViewPoint => [-y, z];
    const [y, z] = meet(bump.patch, bump.center, mirrored(droop.patch), mirrored(droop.center));
    const roll = rollCenter(frontEnd, { left: 40, right: -30 }, 0)!;
    expect(roll.y).toBeCloseTo(y, 6);
    expect(roll.z).toBeCloseTo(z, 6);
    expect(Math.abs(roll.y)).toBeGreaterThan(10);
    const floor =
      bump.patch[1] +
      ((droop.patch[1] - bump.patch[1]) * (y - bump.patch[0])) / (-droop.patch[0] - bump.patch[0]);
    expect(roll.height).toBeCloseTo(z - floor, 6);
  });

  it("parallel arms have their instant center at infinity and a roll center all the same", () => {
    const sloped = assembled(
      planarFrontEnd({
        ...UNEQUAL_ARMS,
        lowerInner: [250, 275],
        lowerOuter: [700, 230],
        upperInner: [330, 551],
        upperOuter: [640, 520],
      }),
    );
    expect(instantCenter(wheelMotion(sloped, "left", 0, 0)!)).toBeNull();
    expect(rollCenter(sloped, { left: 0, right: 0 }, 0)!.height).toBeCloseTo(79, 8);
  });

  it("level parallel arms have it on the ground", () => {
    const level = assembled(
      planarFrontEnd({
        ...UNEQUAL_ARMS,
        lowerInner: [250, 230],
        upperInner: [330, 520],
      }),
    );
    const roll = rollCenter(level, { left: 0, right: 0 }, 0)!;
    expect(roll.y).toBeCloseTo(0, 6);
    expect(roll.height).toBeCloseTo(0, 6);
  });
});

/** Central difference of what a pose says, per mm of travel or per unit of steer. */
function difference(read: (by: number) => number, step: number): number {
  return (8 * (read(step) - read(-step)) - (read(2 * step) - read(-2 * step))) / (12 * step);
}

describe("the motion of a wheel in space", () => {
  const trucks = drawnTrucks.map((truck) => ({ name: truck.name, frontEnd: assembled(inputOf(truck)) }));

  it.each(trucks)("$name: has the finite differences of the pose, virtual work and all", ({ frontEnd }) => {
    for (const side of ["left", "right"] as const) {
      for (const [travel, steer] of [
        [0, 0],
        [-40, 0],
        [45, 0.4],
        [10, -0.7],
      ] as const) {
        const at = (t: number, s: number): SidePose => {
          const pose = solvePose(frontEnd, t, s);
          if (!pose.ok) throw new Error("out of reach");
          return pose[side];
        };
        const motion = wheelMotion(frontEnd, side, travel, steer)!;
        const perTravel = (read: (pose: SidePose) => number) =>
          difference((by) => read(at(travel + by, steer)), 0.5);
        const perSteer = (read: (pose: SidePose) => number) =>
          difference((by) => read(at(travel, steer + by)), 0.005);
        const sign = side === "left" ? 1 : -1;
        expect(motion.camberGain).toBeCloseTo(
          perTravel((pose) => pose.camber),
          9,
        );
        expect(motion.toeGain).toBeCloseTo(
          perTravel((pose) => pose.toe),
          9,
        );
        expect(motion.turnPerSteer).toBeCloseTo(
          perSteer((pose) => -pose.toe),
          6,
        );
        const rates = [0, 1, 2].map((i) => perTravel((pose) => (i === 1 ? sign : 1) * pose.contactPatch[i]!));
        for (const i of [0, 1, 2]) expect(motion.contactVelocity[i]).toBeCloseTo(rates[i]!, 7);
        // A force along the line moves nothing: its work over a small travel is nil.
        const { slope } = forceLine(motion);
        expect(rates[1]! + slope * rates[2]!).toBeCloseTo(0, 7);
      }
    }
  });

  it("the force line runs through the instant center, on any truck and at any pose", () => {
    fc.assert(
      fc.property(plausibleTrucks(), usualPoses(), ({ frontEnd }, { travel, steer }) => {
        const motion = wheelMotion(frontEnd, "left", travel, steer);
        const center = motion && instantCenter(motion);
        if (motion === null || center === null) return;
        const { y, z, slope } = forceLine(motion);
        const off = z + slope * (center.y - y) - center.z;
        expect(Math.abs(off)).toBeLessThan(1e-6 * (1 + Math.abs(center.y) + Math.abs(center.z)));
      }),
      SEED,
    );
  });

  it("a rack-steered truck has its roll center on the center plane, straight ahead", () => {
    fc.assert(
      fc.property(plausibleTrucks("rack"), usualPoses(), ({ frontEnd }, { travel }) => {
        const roll = rollCenter(frontEnd, { left: travel, right: travel }, 0);
        if (roll !== null) expect(Math.abs(roll.y)).toBeLessThan(1e-6);
      }),
      SEED,
    );
  });
});

describe("the contact that instant and roll center follow", () => {
  it.each(drawnTrucks.map((truck) => [truck.name, truck] as const))(
    "is that of each pose, not a point fixed to the wheel: %s",
    (_, truck) => {
      const frontEnd = assembled(inputOf(truck));
      const [travel, steer, step] = [20, 0.6, 1e-3];
      const at = (t: number) => {
        const pose = solvePose(frontEnd, t, steer);
        if (!pose.ok) throw new Error("out of reach");
        return pose.left.contactPatch;
      };
      const motion = wheelMotion(frontEnd, "left", travel, steer)!;
      const center = instantCenter(motion)!;
      const [low, patch, high] = [at(travel - step), at(travel), at(travel + step)];
      const up = (high[2] - low[2]) / (2 * step);
      const sideways = (high[1] - low[1]) / (2 * step);
      // About (y, z), turning at ω_x: v_y = −ω_x (patch z − z), v_z = ω_x (patch y − y).
      expect(motion.turn[0] * (patch[1] - center.y)).toBeCloseTo(up, 6);
      expect(-motion.turn[0] * (patch[2] - center.z)).toBeCloseTo(sideways, 6);
    },
  );

  it("has its height along the vertical above the line of both patches, where it stands itself", () => {
    const frontEnd = assembled(planarFrontEnd(UNEQUAL_ARMS));
    const [left, right] = [40, -30];
    const roll = rollCenter(frontEnd, { left, right }, 0)!;
    const [a, b] = [solvePose(frontEnd, left, 0), solvePose(frontEnd, right, 0)];
    if (!a.ok || !b.ok) throw new Error("out of reach");
    const [[, ya, za], [, yb, zb]] = [a.left.contactPatch, b.right.contactPatch];
    expect(Math.abs(za - zb)).toBeGreaterThan(50);
    expect(roll.height).toBeCloseTo(roll.z - (zb + ((za - zb) * (roll.y - yb)) / (ya - yb)), 9);
  });
});
