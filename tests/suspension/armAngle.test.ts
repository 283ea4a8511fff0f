import fc from "fast-check";
import { expect, it } from "vitest";
import { armAngleFor } from "../../src/suspension/armAngle.ts";
import type { SideModel } from "../../src/suspension/frontEnd.ts";
import { POSE, POSE_ROW, poseRowTo } from "../../src/suspension/poseRow.ts";
import { PoseStatus } from "../../src/suspension/poseStatus.ts";
import { between } from "../reference/gapCases.ts";
import { plausibleTrucks, SEED } from "./plausibleTrucks.ts";

/** A side that counts how often its row is asked for: once to solve a pose, once for its rates. */
function counted(side: SideModel): { readonly side: SideModel; readonly asked: () => number } {
  let count = 0;
  return {
    side: {
      ...side,
      get row() {
        count++;
        return side.row;
      },
    },
    asked: () => count,
  };
}

it(`the arm stands where the wheel is at its travel, in a few of Newton's steps, from any guess (seed ${SEED.seed})`, () => {
  let solved = 0;
  let steps = 0;
  let most = 0;
  fc.assert(
    fc.property(plausibleTrucks(), between(0.03, 0.97), between(-1, 1), ({ frontEnd }, share, guess) => {
      const { side, asked } = counted(frontEnd.left);
      const { bump, droop } = side.reach;
      const travel = droop.travel + share * (bump.travel - droop.travel);
      const angle = armAngleFor(side, travel);
      steps += asked();
      most = Math.max(most, asked());
      solved++;
      const pose = new Float64Array(POSE_ROW);
      expect(poseRowTo(pose, 0, side.row, Math.cos(angle), Math.sin(angle), ...side.innerAtRest)).toBe(
        PoseStatus.Ok,
      );
      expect(Math.abs(pose[POSE.wheelCenter + 2]! - side.centerHeightAtRest - travel)).toBeLessThan(1e-10);
      expect(Math.abs(armAngleFor(side, travel, guess) - angle)).toBeLessThan(1e-9);
      expect([armAngleFor(side, bump.travel), armAngleFor(side, droop.travel)]).toEqual([
        bump.armAngle,
        droop.armAngle,
      ]);
      expect([armAngleFor(side, bump.travel + 1e-6), armAngleFor(side, droop.travel - 1e-6)]).toEqual([
        Number.NaN,
        Number.NaN,
      ]);
      expect(armAngleFor(side, 0, guess)).toBe(0);
    }),
    SEED,
  );
  // Each step asks twice, the last one once.
  expect(Math.abs(steps / solved - 9.295)).toBeLessThan(0.05);
  expect(most).toBeLessThan(22);
});

it(`near the ends of its reach, where the wheel's height runs out like a square root, a few steps more (seed ${SEED.seed})`, () => {
  let most = 0;
  fc.assert(
    fc.property(plausibleTrucks(), between(-7, -2), fc.boolean(), ({ frontEnd }, size, isBump) => {
      const { side, asked } = counted(frontEnd.left);
      const { bump, droop } = side.reach;
      const off = 10 ** size * (bump.travel - droop.travel);
      const travel = isBump ? bump.travel - off : droop.travel + off;
      const angle = armAngleFor(side, travel);
      most = Math.max(most, asked());
      const pose = new Float64Array(POSE_ROW);
      expect(poseRowTo(pose, 0, side.row, Math.cos(angle), Math.sin(angle), ...side.innerAtRest)).toBe(
        PoseStatus.Ok,
      );
      // A rounding of the angle moves the wheel by so much there.
      expect(Math.abs(pose[POSE.wheelCenter + 2]! - side.centerHeightAtRest - travel)).toBeLessThan(1e-6);
    }),
    SEED,
  );
  expect(most).toBeGreaterThan(20);
  expect(most).toBeLessThan(44);
});
