import { describe, expect, it } from "vitest";
import { resolveSetup } from "../../../src/setup/resolveSetup.ts";
import { modelOf } from "../../../src/studies/model/model.ts";
import { faultAtReading, faultWords, noTruckSentence } from "../../../src/studies/wording/readingsTold.ts";
import { contradicting } from "../../../src/studies/worksheet/contradicting.ts";
import { ownTruckDocument } from "../../../src/studies/worksheet/ownTruck.ts";
import { withReadings } from "../../../src/studies/worksheet/withReadings.ts";

const begun = ownTruckDocument({ units: "in", steering: "rack", isFull: false });
const fits = (document: unknown) => {
  const read = resolveSetup(document, "truck.json");
  return read.ok && modelOf(read.value, "truck.json").ok;
};
const GOOD = [
  { height: "wheelCenter", is: 13.25 },
  { height: "lowerArm.ballJoint", is: 8.5 },
  { offset: "lowerArm.ballJoint", is: 26.375 },
  { offset: "upperArm.ballJoint", is: 24.75 },
  { height: "upperArm.ballJoint", is: 19 },
];
const withList = (readings: readonly object[]) => withReadings({ ...begun, readings });

describe("readings that make no truck together", () => {
  it.each([
    [0, 35],
    [1, 24],
    [2, 2],
    [2, 60],
  ])("are told by the one in the way: reading %d at %d in", (at, is) => {
    expect(fits(withList(GOOD))).toBe(true);
    const document = withList(GOOD.map((one, i) => (i === at ? { ...one, is } : one)));
    expect(fits(document)).toBe(false);
    expect(contradicting(document, fits)).toEqual([at]);
  });

  it("are none where no single one is in the way, one left out already, and in no worksheet", () => {
    const two = withList(
      GOOD.map((one, i) => (i === 0 ? { ...one, is: 35 } : i === 2 ? { ...one, is: 2 } : one)),
    );
    expect(contradicting(two, fits)).toEqual([]);
    const out = withList(GOOD.map((one, i) => (i === 0 ? { ...one, is: 35, leftOut: true } : one)));
    expect(fits(out)).toBe(true);
    expect(contradicting(out, () => true)).toEqual([1, 2, 3, 4]);
    expect(contradicting({ ...begun, readings: GOOD, fromExample: undefined }, fits)).toEqual([]);
  });

  it("are told in their own names, not in those of numbers that follow from them", () => {
    const high = withList(GOOD.map((one, i) => (i === 0 ? { ...one, is: 15 } : one)));
    const read = resolveSetup(high, "truck.json");
    const issue = read.ok ? null : read.issues[0]!;
    expect(issue?.key).toBe("tire.loadedRadius");
    expect(faultWords(issue!, high)).toMatch(
      /^“wheel center, up from the floor” must not be more than half the tire's diameter; that reading or the tire size is off$/,
    );
    expect(faultAtReading(issue!, high)).not.toMatch(/loaded radius/i);
    const other = { key: "knuckle.hubFace", mend: "must be more than 0" };
    expect(faultAtReading(other, high)).toBe(
      "does not go with the other readings: hub-face distance must be more than 0",
    );
  });

  it("get a sentence that says what and how to mend", () => {
    expect(noTruckSentence("hub face must be more than 0", ["Lower ball joint, up"])).toBe(
      "As read, these do not make a truck together: hub face must be more than 0. Without “lower ball joint, up” they do: read that again. Until then the picture and the answer show the last readings that did.",
    );
    expect(noTruckSentence("x", ["A b", "C d"])).toContain("Without any one of these they do: “a b”, “c d”.");
    expect(noTruckSentence("x", [])).toContain("No single reading is to blame");
  });
});
