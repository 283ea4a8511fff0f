import { describe, expect, it } from "vitest";
import { isGuess, MADE_OF } from "../../../src/app/stage/guess.ts";
import { resolveSetup } from "../../../src/setup/resolveSetup.ts";
import { ownTruckDocument } from "../../../src/studies/worksheet/ownTruck.ts";
import { withReadings } from "../../../src/studies/worksheet/withReadings.ts";

function setupOf(readings: readonly object[], of = "assumed layout") {
  const begun = ownTruckDocument({ units: "mm", steering: "rack", isFull: true });
  const read = resolveSetup(withReadings({ ...begun, readings, fromExample: { of } }), "truck.json");
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return read.value;
}

describe("what is drawn dashed", () => {
  it("is a part of which anything is the assumed layout's still, until all of it is read", () => {
    const points = ["frontPivot", "rearPivot", "ballJoint"].map((key) => `lowerArm.${key}`);
    const readings = points.flatMap((point, i) => [
      { height: point, is: 230 + i },
      { offset: point, is: [270, 265, 655][i] },
      { ahead: point, is: [190, -190, 8][i] },
    ]);
    expect(isGuess(setupOf(readings.slice(1)), ...MADE_OF.lowerArm)).toBe(true);
    const setup = setupOf(readings);
    expect(isGuess(setup, ...MADE_OF.lowerArm)).toBe(false);
    expect(isGuess(setup, ...MADE_OF.upperArm)).toBe(true);
    expect(isGuess(setup, ...MADE_OF.tieRod)).toBe(true);
  });

  it("is nothing of an example, whose numbers are a whole truck's", () => {
    expect(isGuess(setupOf([], "Shop half-ton"), ...MADE_OF.knuckle)).toBe(false);
  });
});
