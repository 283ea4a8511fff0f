import { describe, expect, it } from "vitest";
import { exampleFields, withMine } from "../../../src/setup/exampleMarks.ts";
import { type KeyPath, keyText } from "../../../src/setup/types/keyPath.ts";
import type { NextReading } from "../../../src/studies/measure/measured.ts";
import { assumedName, readInPart, stillAssumed } from "../../../src/studies/wording/assumedWords.ts";
import { nextSentence, residualWords } from "../../../src/studies/wording/readingsTold.ts";
import { ownTruckDocument } from "../../../src/studies/worksheet/ownTruck.ts";
import { withReadings } from "../../../src/studies/worksheet/withReadings.ts";

const LIP = 'body["fender lip"].points[3]';
const TWELVE = [
  { height: "wheelCenter", is: 12.75 },
  { height: LIP, is: 29.5 },
  { offset: LIP, is: 36 },
  { between: ["lowerArm.ballJoint", "upperArm.ballJoint"], is: 10.25 },
  { height: "lowerArm.ballJoint", is: 8 },
  { offset: "lowerArm.ballJoint", is: 26.25 },
  { height: "lowerArm.frontPivot", is: 9.25 },
  { offset: "lowerArm.frontPivot", is: 11 },
];
const FIELDS: readonly KeyPath[] = [
  ["tire", "size"],
  ["wheel", "rimWidth"],
  ["wheel", "backspacing"],
  ["knuckle", "hubFace"],
  ["readings"],
];
const begun = ownTruckDocument({ units: "in", steering: "rack", isFull: false });
const read = (readings: readonly object[]) => withReadings(withMine({ ...begun, readings }, FIELDS));

describe("what is still assumed after twelve readings", () => {
  const document = read(TWELVE);
  const fields = exampleFields(document);

  it("names no number that was read, and says of points read in part what of them is not", () => {
    expect(fields.map(keyText)).not.toContain("knuckle.span");
    expect(stillAssumed(fields, document)).toBe(
      "Still assumed: upper arm, front pivot; upper arm, rear pivot; upper ball joint; lower arm, front pivot, only how far ahead; lower arm, rear pivot; lower ball joint, only how far ahead; inner tie rod end; rack stroke, each way; body parts “fender lip”: radius; body parts “fender lip”: points, 6 of 7; body parts “frame rail”: lowest corner; body parts “frame rail”: highest corner; pin height; pin angle; outer tie rod end; full droop; full bump.",
    );
    expect(stillAssumed([], document)).toBe("Nothing is assumed any more.");
  });

  it("tells in its list what of each is read", () => {
    const part = (...path: KeyPath) => readInPart(path, document);
    expect(part("truck", "lowerArm", "ballJoint")).toBe(
      "how far out and its height are read; how far ahead is assumed",
    );
    expect(part("truck", "body", 0, "points")).toBe("1 of 7 points is read; the others follow");
    expect(part("truck", "upperArm", "frontPivot")).toBeNull();
    expect(part("knuckle", "pinAngle")).toBeNull();
    const some = read([{ height: "lowerArm.ballJoint", is: 8 }]);
    expect(readInPart(["truck", "lowerArm", "ballJoint"], some)).toBe(
      "its height is read; how far ahead and how far out are assumed",
    );
    expect(assumedName(["truck", "lowerArm", "ballJoint"], some)).toBe(
      "lower ball joint, only how far ahead and how far out",
    );
  });

  it("tells points of which a coordinate alone is read, alone and beside others", () => {
    const points: KeyPath = ["truck", "body", 0, "points"];
    const words = (readings: readonly object[]) => {
      const some = read(readings);
      return [readInPart(points, some), assumedName(points, some)];
    };
    expect(words([])).toEqual([null, "body parts “fender lip”: points"]);
    expect(words([{ height: LIP, is: 29.5 }])).toEqual([
      "1 of 7 points is read in part; the others follow",
      "body parts “fender lip”: points, 7 of 7, 1 of them only in part",
    ]);
    const other = (at: number) => ({ height: `body["fender lip"].points[${at}]`, is: 28 });
    const lip = TWELVE.slice(1, 3);
    expect(words([...lip, other(2)])).toEqual([
      "1 of 7 points is read, another in part; the others follow",
      "body parts “fender lip”: points, 6 of 7, 1 of them only in part",
    ]);
    expect(words([...lip, other(2), other(4)])[0]).toBe(
      "1 of 7 points is read, another 2 in part; the others follow",
    );
  });

  it("has the ball joint span among it again where that was not taped", () => {
    const without = read(TWELVE.filter((one) => !("between" in one)));
    expect(exampleFields(without).map(keyText)).toContain("knuckle.span");
  });
});

describe("the reading asked for next", () => {
  const next: NextReading = {
    ask: { kind: "height", point: 'body["fender lip"].points[1]', from: "centerline", side: "left" },
    from: 50,
    to: 40,
    tells: { point: 'body["fender lip"].points[1]', axis: 2, from: 100, to: 1.6 },
  };

  it("names a station of the lip by where it is, and how well it is known in plain words", () => {
    const name = "Fender lip ahead of the axle, up from the floor";
    expect(nextSentence(next, name, { units: "mm" }, true)).toBe(
      "What would help most next: fender lip ahead of the axle, up from the floor. It tells how high the fender lip ahead of the axle is to about 1.6 mm; so far it is known to about 100.0 mm: two times in three the truth is nearer than that.",
    );
    const reading = { kind: "height", point: LIP, is: 700, index: 0, side: "left", within: 1 } as const;
    expect(residualWords({ reading, off: 2, inSigmas: -2.34 } as never, { units: "mm" }).stands).toBe(
      "off the others by 2.3 times its usual error",
    );
    // On a truck with points of its own, a number is all that is known of one.
    expect(nextSentence(next, name, { units: "mm" })).toContain("how high the fender lip, point 2, is");
  });
});
