import { describe, expect, it } from "vitest";
import { truckOf } from "../../../src/app/state/truck.ts";
import { unusualAt } from "../../../src/app/state/useDoubts.ts";
import { ownTruckDocument } from "../../../src/studies/worksheet/ownTruck.ts";
import { withReadings } from "../../../src/studies/worksheet/withReadings.ts";

const JOINTS = ["lowerArm.ballJoint", "upperArm.ballJoint"];

/** A worksheet on which nothing but the ball joint span is read, and where it stands. */
function worksheetWith(span: string) {
  const begun = ownTruckDocument({ units: "in", steering: "rack", isFull: false }) as {
    readings: readonly { between?: readonly string[] }[];
  };
  const isSpan = ({ between }: { between?: readonly string[] }) =>
    JSON.stringify(between) === JSON.stringify(JOINTS);
  const readings = begun.readings.map((one) => (isSpan(one) ? { ...one, is: span } : one));
  const made = truckOf(JSON.stringify(withReadings({ ...begun, readings })), "mine.json", null);
  if (!made.ok) throw new Error(JSON.stringify(made.issues));
  return {
    state: { truck: made.value, document: null, preferences: { lengths: "file" } } as never,
    at: ["readings", readings.findIndex(isSpan), "is"],
  };
}

describe("what is unusual of a number that nobody typed", () => {
  it("is told at the reading it comes of, and nothing is where it is usual", () => {
    const slip = worksheetWith("5 3/8");
    expect(unusualAt(slip.state, slip.at).map(({ text }) => text)).toEqual([
      expect.stringMatching(/^Ball joint span of 5 3\/8 in is unusual: .*6 in to 20 in\. .*read it again\.$/),
    ]);
    expect(unusualAt(slip.state, ["readings", 0, "is"])).toEqual([]);
    const right = worksheetWith("10 3/8");
    expect(unusualAt(right.state, right.at)).toEqual([]);
  });
});
