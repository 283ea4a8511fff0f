import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { addScaled, cross, dot, normalize, sub, type Vec3 } from "../../../src/geometry/vec.ts";
import type { FloorSetup } from "../../../src/setup/types/floorTypes.ts";
import { floorAt } from "../../../src/studies/floor/floorAt.ts";
import { wheelTravelsInRoll } from "../../../src/studies/floor/wheelTravelsInRoll.ts";
import type { FloorPose } from "../../../src/studies/stances/floorPose.ts";
import { solveApart, solvePose } from "../../../src/suspension/solvePose.ts";
import { drawnTrucks, inputOf } from "../../suspension/drawnTrucks.ts";
import { LEVEL_ARMS, planarFrontEnd, UNEQUAL_ARMS } from "../../suspension/planarWishbone.ts";
import { SEED } from "../../suspension/plausibleTrucks.ts";
import { modelAround } from "../geometry/modelAround.ts";

const DEG = Math.PI / 180;

const FLOOR: FloorSetup = {
  rear: "follows",
  lip: [0, 900, 760],
  frame: [-100, 350, 400],
  points: [
    { name: "crossmember", side: "both", at: [60, 200, 180] },
    { name: "tailpipe", side: "right", at: [-900, 500, 210] },
  ],
};

function floorOf(...asked: Parameters<typeof floorAt>): FloorPose {
  const floor = floorAt(...asked);
  if (floor === null) throw new Error("out of reach");
  return floor;
}

describe("LEVEL_ARMS arms of equal length", () => {
  const model = modelAround(planarFrontEnd(LEVEL_ARMS), { floor: FLOOR });
  /** The patch moves inboard by L − √(L² − z²) as the wheel center rises by z. */
  const patchAt = (z: number) => 750 - (400 - Math.sqrt(400 ** 2 - z ** 2));

  it.each([
    [40, -40],
    [-25, 60],
    [0, 75],
  ])(
    "keep their camber to the body, so that on the floor it is the roll itself: %d and %d mm",
    (left, right) => {
      const floor = floorOf(model, { left, right }, 0);
      // By hand: the left patch is at (patchAt(left), left), the right one at (−patchAt(right), right).
      const roll = Math.atan((right - left) / (patchAt(left) + patchAt(right)));
      expect(floor.roll).toBeCloseTo(roll, 12);
      expect(floor.left.camber).toBeCloseTo(-roll, 12);
      expect(floor.right.camber).toBeCloseTo(roll, 12);
      expect(floor.pitch).toBe(0);
      expect(floor.track).toBeCloseTo(Math.hypot(patchAt(left) + patchAt(right), right - left), 9);
      // Distance of the crossmember from the line through both patches, by the two-point form.
      const [y, z] = [200, 180];
      const above = (z - left - (y - patchAt(left)) * -Math.tan(roll)) * Math.cos(roll);
      expect(floor.clearances[0]!.clearance).toBeCloseTo(above, 9);
    },
  );

  it("roll by the same up as down: tan(roll) × the patch's own place is the travel", () => {
    for (const roll of [3 * DEG, -1.2 * DEG]) {
      const found = wheelTravelsInRoll(model, 0, roll);
      if (!found.ok) throw new Error("out of reach");
      const half = found.travels.right;
      expect(found.travels.left).toBe(-half);
      expect(half).toBeCloseTo(patchAt(half) * Math.tan(roll), 9);
    }
  });

  it("tell how far they roll when a wheel runs out of reach before", () => {
    const found = wheelTravelsInRoll(model, 300, 20 * DEG);
    expect(found).toMatchObject({ ok: false, side: "right", joint: "lower ball joint" });
    if (found.ok || found.most === null) throw new Error("must end at the arm's reach");
    // The arms are 400 mm long and go up to a few degrees off the vertical.
    const { bump } = model.frontEnd.right.reach;
    expect(bump.travel).toBeLessThan(400);
    expect(found.most.travels.right).toBeCloseTo(bump.travel, 5);
    expect(found.most.roll).toBeLessThan(20 * DEG);
    expect(wheelTravelsInRoll(model, 500, 1 * DEG)).toMatchObject({ ok: false, most: null });
  });
});

/**
 * Camber and sideways place of the wheel center at ±25 and ±50 mm, worked out by another way (meeting of two circles,
 * bisection on the arm angle; the same table as in planarLinkages.test.ts). The floor by the two-point form from them.
 */
const BY_HAND = [
  { travel: -50, camber: 0.831926, centerShift: -2.944348 },
  { travel: -25, camber: 0.465367, centerShift: -0.683074 },
  { travel: 25, camber: -0.562553, centerShift: -0.85535 },
  { travel: 50, camber: -1.22385, centerShift: -3.230718 },
];

describe("UNEQUAL_ARMS arms", () => {
  const model = modelAround(planarFrontEnd(UNEQUAL_ARMS));
  const patchOf = ({ travel, camber, centerShift }: (typeof BY_HAND)[number]) => ({
    // A wheel that leans outward by γ has its patch R sin γ inboard of its center, R cos γ below.
    y: 790 + centerShift - 360 * Math.sin(camber * DEG),
    z: 360 + travel - 360 * Math.cos(camber * DEG),
  });

  it.each([
    [0, 3],
    [1, 2],
    [2, 0],
  ])(
    "stand on the floor of their hand-worked patches and lean on it by camber ∓ roll: rows %d, %d",
    (l, r) => {
      const [left, right] = [BY_HAND[l]!, BY_HAND[r]!];
      const [a, b] = [patchOf(left), patchOf(right)];
      const roll = Math.atan((b.z - a.z) / (a.y + b.y));
      const floor = floorOf(model, { left: left.travel, right: right.travel }, 0);
      expect(floor.roll / DEG).toBeCloseTo(roll / DEG, 6);
      expect(floor.left.camber / DEG).toBeCloseTo(left.camber - roll / DEG, 5);
      expect(floor.right.camber / DEG).toBeCloseTo(right.camber + roll / DEG, 5);
    },
  );
});

/** Height over the floor of the lowest of many points of a wheel's circle, and of a finer look about it. */
function lowestOfCircle(center: Vec3, axis: Vec3, radius: number, { plane }: FloorPose): number {
  const u = normalize(cross(axis, [0, 0, 1]));
  const v = cross(u, axis);
  const at = (angle: number) =>
    dot(
      plane.normal,
      addScaled(addScaled(center, u, radius * Math.cos(angle)), v, radius * Math.sin(angle)),
    ) - plane.offset;
  let [best, span] = [0, Math.PI];
  for (let round = 0; round < 9; round++) {
    const angles = Array.from({ length: 41 }, (_, i) => best + (span * (i - 20)) / 20);
    best = angles.reduce((least, angle) => (at(angle) < at(least) ? angle : least));
    span /= 10;
  }
  return at(best);
}

const TRUCKS = drawnTrucks.map((truck) => [truck.name, { ...inputOf(truck), loadedRadius: 345 }] as const);

describe.each(TRUCKS)("%s", (_, input) => {
  const rears = ["follows", "stays"] as const;
  const models = rears.map((rear) => modelAround(input, { floor: { ...FLOOR, rear } }));

  it("touches a floor with both tires' lowest places, wherever the wheels and the steering are", () => {
    const travel = fc.double({ min: -60, max: 60, noNaN: true });
    const steer = fc.double({ min: -0.9, max: 0.9, noNaN: true });
    fc.assert(
      fc.property(travel, travel, steer, fc.constantFrom(...models), (left, right, s, model) => {
        const pose = solveApart(model.frontEnd, { left, right }, s);
        fc.pre(pose.ok);
        if (!pose.ok) return;
        const floor = floorOf(model, { left, right }, s);
        const { normal, offset } = floor.plane;
        for (const side of ["left", "right"] as const) {
          const { wheelCenter, wheelAxis } = pose[side];
          expect(Math.abs(lowestOfCircle(wheelCenter, wheelAxis, 345, floor))).toBeLessThan(1e-7);
          const patch = floor[side].contactPatch;
          expect(dot(normal, patch) - offset).toBeCloseTo(0, 9);
          expect(Math.hypot(...sub(patch, wheelCenter))).toBeCloseTo(345, 9);
          expect(dot(sub(patch, wheelCenter), wheelAxis)).toBeCloseTo(0, 9);
          expect(Math.sin(floor[side].camber)).toBeCloseTo(-dot(wheelAxis, normal), 12);
        }
        if (model.setup.floor!.rear === "follows") expect(normal[0]).toBe(0);
        // The point of the measured floor under the rear axle, 3000 mm behind.
        else expect(dot(normal, [-3000, 0, 0]) - offset).toBeCloseTo(0, 9);
      }),
      { ...SEED, numRuns: 60 },
    );
  });

  it("is its own mirror image with a rack: wheels and steering swapped, the roll turns its sign", () => {
    if (input.steering.type !== "rack") return;
    for (const model of models) {
      const floor = floorOf(model, { left: 35, right: -20 }, 0.4);
      const turned = floorOf(model, { left: -20, right: 35 }, -0.4);
      expect(turned.roll).toBeCloseTo(-floor.roll, 11);
      expect(turned.pitch).toBeCloseTo(floor.pitch, 11);
      expect(turned.left.camber).toBeCloseTo(floor.right.camber, 11);
      expect(turned.track).toBeCloseTo(floor.track, 8);
      expect(turned.lip!.left).toBeCloseTo(floor.lip!.right, 8);
      expect(turned.frame!.right).toBeCloseTo(floor.frame!.left, 8);
    }
  });
});

describe("a truck whose rear stays", () => {
  const model = modelAround(planarFrontEnd(LEVEL_ARMS), { floor: { ...FLOOR, rear: "stays" } });

  it("goes nose down by the angle of its front patches' height over the wheelbase", () => {
    for (const travel of [-70, 20, 80]) {
      const floor = floorOf(model, { left: travel, right: travel }, 0);
      // Upright wheels pitch about their own axis: the patch swings by R sin θ, so the center is what the floor is R below.
      const pitch = floor.pitch;
      expect(3000 * Math.sin(pitch) + 360).toBeCloseTo((360 + travel) * Math.cos(pitch), 9);
      expect(Math.sign(pitch)).toBe(Math.sign(travel));
      expect(floor.roll).toBe(0);
    }
  });

  it("has what lies behind the front axle sink less", () => {
    const [low, high] = [70, 0].map((travel) => floorOf(model, { left: travel, right: travel }, 0));
    const sunk = (name: string) => {
      const of = ({ clearances }: FloorPose) => clearances.find((one) => one.name === name)!.clearance;
      return of(high!) - of(low!);
    };
    expect(sunk("crossmember")).toBeGreaterThan(70);
    // 900 of 3000 mm back: about seven tenths of it.
    expect(sunk("tailpipe")).toBeCloseTo(70 * 0.7, 0);
  });
});

describe("named points", () => {
  const model = modelAround(planarFrontEnd(LEVEL_ARMS), { floor: FLOOR });

  it("stand on the sides they have, mirrored, and a right one typed where it is stays there", () => {
    const of = (at: Vec3, side: "both" | "left" | "right") =>
      floorOf(
        modelAround(planarFrontEnd(LEVEL_ARMS), { floor: { ...FLOOR, points: [{ name: "p", side, at }] } }),
        { left: 10, right: 0 },
        0,
      ).clearances.map((one) => [one.side, ...one.at]);
    expect(of([1, 5, 9], "both")).toEqual([
      ["left", 1, 5, 9],
      ["right", 1, -5, 9],
    ]);
    expect(of([1, 5, 9], "right")).toEqual([["right", 1, -5, 9]]);
    expect(of([1, -5, 9], "right")).toEqual([["right", 1, -5, 9]]);
    expect(of([1, 5, 9], "left")).toEqual([["left", 1, 5, 9]]);
  });

  it("sink by what the wheels rise, level", () => {
    const floor = floorOf(model, { left: 55, right: 55 }, 0);
    expect(floor.clearances.map(({ clearance }) => clearance)).toEqual([
      expect.closeTo(180 - 55, 9),
      expect.closeTo(180 - 55, 9),
      expect.closeTo(210 - 55, 9),
    ]);
    expect(floor.lip).toEqual({ left: expect.closeTo(705, 9), right: expect.closeTo(705, 9) });
    expect(floor.frame).toEqual({ left: expect.closeTo(345, 9), right: expect.closeTo(345, 9) });
  });

  it("are none, and nothing is measured, without a floor block", () => {
    const bare = floorOf(modelAround(planarFrontEnd(LEVEL_ARMS)), { left: 0, right: 0 }, 0);
    expect(bare).toMatchObject({ clearances: [], lip: null, frame: null });
  });
});

describe("sides that differ", () => {
  it("each stand as on a truck of their own, and the floor goes through both", () => {
    const drawn = drawnTrucks[0]!;
    const [a, b] = [0, 15].map((more) => {
      const input = { ...inputOf(drawn), loadedRadius: 345 };
      const { upperArm } = input;
      const moved = (p: Vec3): Vec3 => [p[0], p[1] - more, p[2]];
      // As a shim of 15 mm moves the upper arm.
      const { frontPivot, rearPivot, ballJoint } = upperArm;
      const arm = { frontPivot: moved(frontPivot), rearPivot: moved(rearPivot), ballJoint: moved(ballJoint) };
      return modelAround({ ...input, upperArm: arm });
    });
    const mixed = { setup: a!.setup, frontEnd: { ...a!.frontEnd, right: b!.frontEnd.right } };
    const floor = floorOf(mixed, { left: 12, right: 12 }, 0);
    const [own, other] = [a!, b!].map(({ frontEnd }) => solvePose(frontEnd, 12, 0));
    if (!own!.ok || !other!.ok) throw new Error("out of reach");
    const [l, r] = [own!.left.contactPatch, other!.right.contactPatch];
    const roll = Math.atan((r[2] - l[2]) / (l[1] - r[1]));
    expect(Math.abs(roll)).toBeGreaterThan(1e-6);
    expect(floor.roll).toBeCloseTo(roll, 8);
    // 15 mm of shim at arms some 250 mm apart: degrees of camber between the sides.
    expect(Math.abs(floor.left.camber - floor.right.camber)).toBeGreaterThan(2 * DEG);
    expect(floor.left.camber).toBeCloseTo(own!.left.camber - roll, 6);
    expect(floor.right.camber).toBeCloseTo(other!.right.camber + roll, 6);
  });
});

it("has no floor where a wheel is out of reach, nor where the rear stays and there is no wheelbase", () => {
  const model = modelAround(planarFrontEnd(LEVEL_ARMS), { floor: { ...FLOOR, rear: "stays" } });
  expect(floorAt(model, { left: 0, right: 900 }, 0)).toBeNull();
  const { setup, frontEnd } = model;
  const without = { ...setup, truck: { ...setup.truck, wheelbase: null } };
  expect(floorAt({ setup: without, frontEnd }, { left: 0, right: 0 }, 0)).toBeNull();
});
