import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { length, mirrorY, scale, sub, type Vec3 } from "../../src/geometry/vec.ts";
import type { ArmInput, FrontEndInput, SteeringInput, TurningArmInput } from "../../src/suspension/inputs.ts";
import { type SidePose, type SolvedPose, solvePose } from "../../src/suspension/solvePose.ts";
import { type GeneratedPose, plausibleTrucks, SEED, usualPoses } from "./plausibleTrucks.ts";
import { assembled } from "./trucks.ts";

const POINTS = [
  "wheelCenter",
  "hubFace",
  "upperBallJoint",
  "lowerBallJoint",
  "tieRodOuter",
  "tieRodInner",
  "contactPatch",
] as const;
const ANGLES = ["camber", "steerAngle", "toe", "caster", "kingpinInclination", "armAngle"] as const;
const LENGTHS = ["scrubRadius", "mechanicalTrail", "tieRodLength"] as const;
const TOLERANCE = 1e-9;

/** The front end with every point of the truck moved by `at`; the knuckle's own dimensions stay. */
function movedPoints(
  input: FrontEndInput,
  at: (p: Vec3) => Vec3,
  direction: (v: Vec3) => Vec3,
): FrontEndInput {
  const arm = (a: ArmInput) => ({
    frontPivot: at(a.frontPivot),
    rearPivot: at(a.rearPivot),
    ballJoint: at(a.ballJoint),
  });
  const turning = (a: TurningArmInput) => ({ pivot: at(a.pivot), axis: direction(a.axis), end: at(a.end) });
  const steering: SteeringInput =
    input.steering.type === "rack"
      ? { ...input.steering, innerEnd: at(input.steering.innerEnd) }
      : {
          ...input.steering,
          innerEnd: at(input.steering.innerEnd),
          innerEndRight: at(input.steering.innerEndRight),
          pitman: turning(input.steering.pitman),
          idler: turning(input.steering.idler),
        };
  return { ...input, upperArm: arm(input.upperArm), lowerArm: arm(input.lowerArm), steering };
}

/** Every length doubled, the knuckle's and the wheel's too. */
function doubled(input: FrontEndInput): FrontEndInput {
  const grown = movedPoints(
    input,
    (p) => scale(p, 2),
    (v) => v,
  );
  const { knuckle, steering } = grown;
  return {
    ...grown,
    steering: steering.type === "rack" ? { ...steering, stroke: 2 * steering.stroke } : steering,
    knuckle: {
      ...knuckle,
      span: 2 * knuckle.span,
      pinHeight: 2 * knuckle.pinHeight,
      pinLead: 2 * knuckle.pinLead,
      hubFace: 2 * knuckle.hubFace,
      steeringArm: scale(knuckle.steeringArm, 2),
    },
    wheelOffset: 2 * input.wheelOffset,
    loadedRadius: 2 * input.loadedRadius,
  };
}

interface Change {
  readonly point?: (p: Vec3) => Vec3;
  readonly axis?: (v: Vec3) => Vec3;
  readonly lengths?: number;
  readonly steerAngle?: 1 | -1;
}

/** Side `after` is side `before` with the change done to it. */
function expectChanged(before: SidePose, after: SidePose, change: Change) {
  const { point = (p: Vec3) => p, axis = (v: Vec3) => v, lengths = 1, steerAngle = 1 } = change;
  for (const name of POINTS) {
    expect(length(sub(after[name], point(before[name]))), name).toBeLessThan(TOLERANCE);
  }
  expect(length(sub(after.wheelAxis, axis(before.wheelAxis)))).toBeLessThan(TOLERANCE);
  for (const name of ANGLES) {
    const sign = name === "steerAngle" ? steerAngle : 1;
    expect(Math.abs(after[name] - sign * before[name]), name).toBeLessThan(TOLERANCE);
  }
  for (const name of LENGTHS) {
    expect(Math.abs(after[name] - lengths * before[name]), name).toBeLessThan(TOLERANCE);
  }
}

/** Compares a truck's poses with those of the truck made of it. Poses near a border of reach are left out. */
function compare(
  make: (input: FrontEndInput) => FrontEndInput,
  ask: (pose: GeneratedPose) => GeneratedPose,
  claim: (before: SolvedPose, after: SolvedPose) => void,
) {
  let compared = 0;
  fc.assert(
    fc.property(plausibleTrucks(), usualPoses(), ({ input, frontEnd }, pose) => {
      const before = solvePose(frontEnd, pose.travel, pose.steer);
      const further = solvePose(frontEnd, 1.02 * pose.travel, 1.02 * pose.steer);
      if (!before.ok || !further.ok) return;
      const asked = ask(pose);
      const after = solvePose(assembled(make(input)), asked.travel, asked.steer);
      if (!after.ok) throw new Error("the changed truck must reach what the first one does");
      claim(before, after);
      compared++;
    }),
    SEED,
  );
  expect(compared).toBeGreaterThan(0.8 * SEED.numRuns);
}

const same = (pose: GeneratedPose) => pose;

/** KI-33 (derived): mirror, translate, scale, swap the pivots of an arm. */
describe(`what does not depend on how the truck is drawn (seed ${SEED.seed}, ${SEED.numRuns} runs)`, () => {
  it("swapping front and rear pivots changes nothing", () => {
    for (const arm of ["upperArm", "lowerArm"] as const) {
      const swap = (input: FrontEndInput): FrontEndInput => ({
        ...input,
        [arm]: { ...input[arm], frontPivot: input[arm].rearPivot, rearPivot: input[arm].frontPivot },
      });
      compare(swap, same, (before, after) => {
        expectChanged(before.left, after.left, {});
        expectChanged(before.right, after.right, {});
      });
    }
  });

  it("moving the whole truck along X and Z moves every point as much and turns nothing", () => {
    const at = ([x, y, z]: Vec3): Vec3 => [x - 137, y, z + 59];
    compare(
      (input) => movedPoints(input, at, (v) => v),
      same,
      (before, after) => {
        expectChanged(before.left, after.left, { point: at });
        expectChanged(before.right, after.right, { point: at });
      },
    );
  });

  it("10 m from the origin lengths and angles are still exact to 1e-9", () => {
    const at = ([x, y, z]: Vec3): Vec3 => [x - 10_000, y, z + 10_000];
    compare(
      (input) => movedPoints(input, at, (v) => v),
      same,
      (before, after) => {
        for (const side of ["left", "right"] as const) {
          for (const angle of ANGLES)
            expect(Math.abs(after[side][angle] - before[side][angle])).toBeLessThan(TOLERANCE);
          const span = length(sub(after[side].upperBallJoint, after[side].lowerBallJoint));
          expect(
            Math.abs(span - length(sub(before[side].upperBallJoint, before[side].lowerBallJoint))),
          ).toBeLessThan(TOLERANCE);
          const rod = length(sub(after[side].tieRodOuter, after[side].tieRodInner));
          expect(Math.abs(rod - before[side].tieRodLength)).toBeLessThan(TOLERANCE);
        }
      },
    );
  });

  it("spreading the sides apart moves each side whole (with a rack)", () => {
    const apart = ([x, y, z]: Vec3): Vec3 => [x, y + 83, z];
    compare(
      (input) => (input.steering.type === "rack" ? movedPoints(input, apart, (v) => v) : input),
      same,
      (before, after) => {
        const moved = Math.abs(after.left.lowerBallJoint[1] - before.left.lowerBallJoint[1]) > 1 ? 83 : 0;
        expectChanged(before.left, after.left, { point: ([x, y, z]) => [x, y + moved, z] });
        expectChanged(before.right, after.right, { point: ([x, y, z]) => [x, y - moved, z] });
      },
    );
  });

  it("at twice the size every point is twice as far and every angle the same", () => {
    compare(
      doubled,
      ({ travel, steer }) => ({ travel: 2 * travel, steer }),
      (before, after) => {
        const change: Change = { point: (p) => scale(p, 2), lengths: 2 };
        expectChanged(before.left, after.left, change);
        expectChanged(before.right, after.right, change);
      },
    );
  });

  it("the mirrored truck steered the other way shows the mirrored pose, sides swapped", () => {
    // The left side's drawing stays (each side is drawn as a left one); what is asymmetric is the steering.
    const mirrored = (input: FrontEndInput): FrontEndInput => {
      const { steering } = input;
      if (steering.type === "rack") return input;
      // A turning arm's axis is turned, not reflected, by the mirror: (x, −y, z) with the sense of turn reversed.
      const flip = (a: TurningArmInput): TurningArmInput => ({
        pivot: mirrorY(a.pivot),
        axis: scale(mirrorY(a.axis), -1),
        end: mirrorY(a.end),
      });
      const swapped = {
        ...steering,
        innerEnd: mirrorY(steering.innerEndRight),
        innerEndRight: mirrorY(steering.innerEnd),
        pitman: flip(steering.pitman),
        idler: flip(steering.idler),
      };
      return { ...input, steering: swapped };
    };
    compare(
      mirrored,
      ({ travel, steer }) => ({ travel, steer: -steer }),
      (before, after) => {
        const change: Change = { point: mirrorY, axis: mirrorY, steerAngle: -1 };
        expectChanged(before.left, after.right, change);
        expectChanged(before.right, after.left, change);
      },
    );
  });
});
