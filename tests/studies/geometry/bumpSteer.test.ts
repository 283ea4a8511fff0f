import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bumpSteer } from "../../../src/studies/geometry/bumpSteer.ts";
import { flatTieRod, movedTieRod } from "../../../src/studies/geometry/flatTieRod.ts";
import { assembleFrontEnd } from "../../../src/suspension/frontEnd.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import { runs } from "../../runs.ts";
import { drawnTrucks, inputOf } from "../../suspension/drawnTrucks.ts";
import { planarFrontEnd, UNEQUAL_ARMS } from "../../suspension/planarWishbone.ts";
import { plausibleTrucks, SEED } from "../../suspension/plausibleTrucks.ts";
import { assembled } from "../../suspension/trucks.ts";

const DEG = Math.PI / 180;
const RANGE = { droop: -60, bump: 60 };

describe("the bump steer curve", () => {
  it("is the pose's toe less that at travel 0, on both sides", () => {
    for (const truck of drawnTrucks) {
      const frontEnd = assembled(inputOf(truck));
      const rest = solvePose(frontEnd, 0, 0);
      for (const side of ["left", "right"] as const) {
        const found = bumpSteer(frontEnd, side, RANGE)!;
        for (const { travel, toeChange } of found.curve) {
          const pose = solvePose(frontEnd, travel, 0);
          if (!pose.ok || !rest.ok) throw new Error("out of reach");
          expect(toeChange).toBeCloseTo(pose[side].toe - rest[side].toe, 12);
        }
        const most = Math.max(...found.curve.map(({ toeChange }) => Math.abs(toeChange)));
        expect(Math.abs(found.most.toeChange)).toBe(most);
        expect(found.rms).toBeLessThan(most);
        expect(found.rms).toBeGreaterThan(0);
      }
    }
  });

  it("has no answer where the wheel cannot follow", () => {
    expect(bumpSteer(assembled(planarFrontEnd(UNEQUAL_ARMS)), "left", { droop: -900, bump: 0 })).toBeNull();
  });
});

/**
 * Derived by hand: in a planar truck a tie rod is flat to first order when its line runs through the instant center
 * (270, 275.457), and to second order with its inner end at the center of curvature of the outer end's path,
 * (254.350, 275.971); the line to the instant center is the textbook rule (Milliken & Milliken, from memory).
 */
describe("the tie rod height that flattens it", () => {
  const outer = [680, 262] as const;
  const frontEnd = (y: number, z: number) =>
    assembled(planarFrontEnd({ ...UNEQUAL_ARMS, tieRod: { inner: [y, z], outer } }));

  it("brings the inner end back to the center of curvature's height", () => {
    // Little travel, so that the third order does not draw the best height off.
    for (const wrong of [-22, 13, 60]) {
      const flat = flatTieRod(frontEnd(254.3497, 275.9711 + wrong), "inner", { droop: -15, bump: 15 })!;
      expect(flat.height).toBeCloseTo(275.9711, 1);
      expect(flat.move).toBeCloseTo(-wrong, 1);
      expect(flat.rmsAfter).toBeLessThan(flat.rmsBefore / 300);
    }
  });

  it("leaves at the instant center's height what the rod's wrong length leaves", () => {
    const flat = flatTieRod(frontEnd(270, 300), "inner", { droop: -10, bump: 10 })!;
    expect(flat.height).toBeCloseTo(275.457423, 1);
    expect(flat.rmsAfter).toBeGreaterThan(0);
  });

  it.each(["inner", "outer"] as const)(
    "no height of the %s end tried one by one is flatter, on any truck",
    (end) => {
      fc.assert(
        fc.property(plausibleTrucks(), fc.double({ min: -100, max: 100, noNaN: true }), (truck, move) => {
          const flat = flatTieRod(truck.frontEnd, end, RANGE);
          if (flat === null) return;
          const moved = assembleFrontEnd(movedTieRod(truck.input, end, move));
          if (!moved.ok) return;
          const sides = (["left", "right"] as const).map((side) => bumpSteer(moved.frontEnd, side, RANGE));
          if (sides.some((side) => side === null)) return;
          const rms = Math.sqrt(0.5 * sides.reduce((sum, side) => sum + side!.rms ** 2, 0));
          expect(flat.rmsAfter).toBeLessThanOrEqual(rms + 1e-9);
          expect(flat.rmsAfter).toBeLessThanOrEqual(flat.rmsBefore + 1e-12);
        }),
        { ...SEED, numRuns: runs(16, 40) },
      );
    },
  );

  it("moves the end it says, keeps the toe, and the truck then has what is left", () => {
    for (const truck of drawnTrucks) {
      const { input } = assembled(inputOf(truck));
      for (const end of ["inner", "outer"] as const) {
        const flat = flatTieRod(assembled(input), end, RANGE)!;
        const moved = movedTieRod(input, end, flat.move);
        const z = end === "inner" ? moved.steering.innerEnd[2] : moved.knuckle.steeringArm[2];
        expect(flat.height).toBe(z);
        const again = assembled(moved);
        const rest = solvePose(again, 0, 0);
        if (!rest.ok) throw new Error("out of reach");
        expect(rest.left.toe).toBeCloseTo(input.toe, 12);
        const [left, right] = [bumpSteer(again, "left", RANGE)!, bumpSteer(again, "right", RANGE)!];
        expect(Math.sqrt(0.5 * (left.rms ** 2 + right.rms ** 2))).toBeCloseTo(flat.rmsAfter, 12);
        expect(flat.rmsAfter / DEG).toBeLessThan(flat.rmsBefore / DEG);
      }
    }
  });
});
