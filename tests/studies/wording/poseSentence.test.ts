import { describe, expect, it } from "vitest";
import { type Truck, truckOf } from "../../../src/app/state/truck.ts";
import { keepTogether } from "../../../src/app/words/keyWords.ts";
import type { Vec3 } from "../../../src/geometry/vec.ts";
import type { GapEntry } from "../../../src/studies/reports/gapsAt.ts";
import { amountText } from "../../../src/studies/wording/lengths.ts";
import { poseSentence } from "../../../src/studies/wording/poseSentence.ts";
import { type SolvedPose, solvePose } from "../../../src/suspension/solvePose.ts";
import { exampleText } from "../../app/exampleText.ts";

const IN = 25.4;

function exampleTruck(): Truck {
  const made = truckOf(exampleText, "test.json", null);
  if (!made.ok) throw new Error(made.issues.map(({ mend }) => mend).join("; "));
  return made.value;
}

function poseOf(truck: Truck, travel: number, steer: number): SolvedPose {
  const pose = solvePose(truck.model.frontEnd, travel, steer);
  if (!pose.ok) throw new Error("the test's own truck must reach its poses");
  return pose;
}

/** A gap to the lip at a place 2 in behind the axle line and 20 in over the floor of a pose. */
function gapAt(pose: SolvedPose, side: "left" | "right", gap: number): GapEntry {
  const floor = 0.5 * (pose.left.contactPatch[2] + pose.right.contactPatch[2]);
  const point: Vec3 = [-2 * IN, pose[side].wheelCenter[1], floor + 20 * IN];
  return { part: "lip", side, gap, point, onRing: point };
}

describe("the sentence for a pose", () => {
  const truck = exampleTruck();
  const rest = poseOf(truck, 0, 0);
  const low = poseOf(truck, 3.25 * IN, -0.5);

  it("says what touches what, how deep, where, at which height and steering angle", () => {
    const angle = ((Math.abs(low.right.steerAngle) * 180) / Math.PI).toFixed(0);
    expect(poseSentence([gapAt(low, "right", (-3 / 8) * IN)], low, truck.model, truck.setup)).toBe(
      `At the “aired out” stance, steered to 50% of right lock (right wheel ${angle}°): the right tire rubs the lip by 3/8 in, 2 in behind the axle line, 20 in above the floor.`,
    );
  });

  it("says how near, when it is nearer than the allowance, and counts the others", () => {
    const gaps = [gapAt(rest, "left", IN / 8), gapAt(rest, "right", 0.2 * IN)];
    expect(poseSentence(gaps, rest, truck.model, truck.setup)).toBe(
      "At the “driving” stance, with the wheels straight ahead: the left tire is 1/8 in from the lip, 2 in behind the axle line, 20 in above the floor; you asked for 1/4 in. 1 more place is too near.",
    );
  });

  it("names the nearest when all is clear, and calls nothing safe", () => {
    const text = poseSentence([gapAt(rest, "left", 1.5 * IN)], rest, truck.model, truck.setup);
    expect(text).toBe(
      "At the “driving” stance, with the wheels straight ahead: everything clears, the lip closest at 1 1/2 in from the left tire.",
    );
    expect(text).not.toMatch(/safe/i);
  });

  it("says which joint cannot go further when there is no such pose", () => {
    const far = solvePose(truck.model.frontEnd, 2000, 0);
    expect(far.ok).toBe(false);
    expect(poseSentence([], far, truck.model, truck.setup)).toMatch(
      /^The left .* cannot reach this pose; it goes as far as .* of bump\.$/,
    );
  });
});

describe("amounts", () => {
  const { setup } = exampleTruck();
  it("never read as nothing when they are something", () => {
    expect(amountText(0.3, setup)).toBe("less than 1/16 in");
    expect(amountText(-0.3, setup, true)).toBe("< 1/16 in");
    expect(amountText(-0.9, setup)).toBe("1/16 in");
  });

  it("stay on one line", () => {
    expect(keepTogether("2 1/2 in behind, 20 in above, in 3 places")).toBe(
      "2\u00a01/2\u00a0in behind, 20\u00a0in above, in 3 places",
    );
  });
});
