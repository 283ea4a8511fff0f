import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { length, sub, type Vec3 } from "../../../src/geometry/vec.ts";
import { lengthenedArm, lowerArmAt, movedArm } from "../../../src/studies/alignment/movedArm.ts";
import { plausibleTrucks, SEED } from "../../suspension/plausibleTrucks.ts";

const offset = fc.tuple(
  ...([0, 1, 2].map(() => fc.double({ min: -15, max: 15, noNaN: true })) as [
    fc.Arbitrary<number>,
    fc.Arbitrary<number>,
    fc.Arbitrary<number>,
  ]),
) as fc.Arbitrary<Vec3>;

const legs = (arm: { frontPivot: Vec3; rearPivot: Vec3; ballJoint: Vec3 }) => [
  length(sub(arm.frontPivot, arm.rearPivot)),
  length(sub(arm.frontPivot, arm.ballJoint)),
  length(sub(arm.rearPivot, arm.ballJoint)),
];

describe("an arm whose pivots are moved", () => {
  it("keeps its shape, its middle moves as told, and its shaft lies along the moved points", () => {
    fc.assert(
      fc.property(plausibleTrucks("rack"), offset, offset, ({ input: { upperArm } }, front, rear) => {
        const moved = movedArm(upperArm, { front, rear })!;
        legs(moved).forEach((leg, i) => {
          expect(leg).toBeCloseTo(legs(upperArm)[i]!, 9);
        });
        for (const i of [0, 1, 2]) {
          const middle = (arm: typeof upperArm) => 0.5 * (arm.frontPivot[i]! + arm.rearPivot[i]!);
          expect(middle(moved) - middle(upperArm)).toBeCloseTo(0.5 * (front[i]! + rear[i]!), 9);
          // The shaft is rigid: its ends miss the moved points by how much those are farther apart, half at each.
          const told = upperArm.frontPivot[i]! + front[i]!;
          expect(Math.abs(moved.frontPivot[i]! - told)).toBeLessThan(16);
        }
      }),
      { ...SEED, numRuns: 100 },
    );
  });

  it("moved alike at both ends is moved bodily, ball joint and all, and not moved is itself", () => {
    fc.assert(
      fc.property(plausibleTrucks("rack"), offset, ({ input: { upperArm } }, by) => {
        const moved = movedArm(upperArm, { front: by, rear: by })!;
        for (const key of ["frontPivot", "rearPivot", "ballJoint"] as const) {
          for (const i of [0, 1, 2]) expect(moved[key][i]! - upperArm[key][i]!).toBeCloseTo(by[i]!, 9);
        }
        expect(movedArm(upperArm, { front: [0, 0, 0], rear: [0, 0, 0] })).toBe(upperArm);
      }),
      { ...SEED, numRuns: 100 },
    );
  });

  it("is turned back to its ball joint's height with its shape kept", () => {
    fc.assert(
      fc.property(plausibleTrucks("rack"), offset, offset, ({ input: { lowerArm } }, front, rear) => {
        const set = lowerArmAt(movedArm(lowerArm, { front, rear })!, lowerArm.ballJoint[2])!;
        expect(set.ballJoint[2]).toBeCloseTo(lowerArm.ballJoint[2], 9);
        legs(set).forEach((leg, i) => {
          expect(leg).toBeCloseTo(legs(lowerArm)[i]!, 9);
        });
        // The near one of the two places at that height.
        expect(length(sub(set.ballJoint, lowerArm.ballJoint))).toBeLessThan(120);
      }),
      { ...SEED, numRuns: 100 },
    );
    const arm = {
      frontPivot: [100, 300, 200],
      rearPivot: [-100, 300, 200],
      ballJoint: [0, 700, 210],
    } as const;
    expect(lowerArmAt(arm, 700)).toBeNull();
  });
});

describe("an arm of adjustable length", () => {
  it("has legs longer by what was set, pivots where they were", () => {
    fc.assert(
      fc.property(plausibleTrucks("rack"), offset, ({ input: { upperArm } }, [front, rear]) => {
        const set = lengthenedArm(upperArm, front, rear)!;
        expect(set.frontPivot).toBe(upperArm.frontPivot);
        const [shaft, frontLeg, rearLeg] = legs(upperArm);
        const [nowShaft, nowFront, nowRear] = legs(set);
        expect(nowShaft).toBe(shaft);
        expect(nowFront! - frontLeg!).toBeCloseTo(front, 9);
        expect(nowRear! - rearLeg!).toBeCloseTo(rear, 9);
      }),
      { ...SEED, numRuns: 100 },
    );
  });

  it("cannot have legs that do not meet", () => {
    const arm = {
      frontPivot: [100, 300, 200],
      rearPivot: [-100, 300, 200],
      ballJoint: [0, 350, 210],
    } as const;
    expect(lengthenedArm(arm, -60, -60)).toBeNull();
  });
});
