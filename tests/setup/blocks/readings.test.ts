import { describe, expect, it } from "vitest";
import { newTruckDocument } from "../../../src/setup/newTruck.ts";
import { readReadings } from "../../../src/setup/readReadings.ts";
import { resolveSetup } from "../../../src/setup/resolveSetup.ts";
import { exampleDocument } from "../fixtures.ts";

const DEG = Math.PI / 180;
const read = (...readings: readonly unknown[]) =>
  readReadings({ ...newTruckDocument("in"), readings }, "truck.json");
const issuesOf = (...readings: readonly unknown[]) =>
  read(...readings).issues.map(({ key, mend }) => `${key}: ${mend}`);
const leftOutOf = (...readings: readonly unknown[]) =>
  read(...readings).leftOut.map(({ key, mend }) => `${key}: ${mend}`);
const [LOWER, UPPER] = ["lowerArm.ballJoint", "upperArm.ballJoint"];

describe("the readings block", () => {
  it("is read into mm and radians, of a truck that is no setup yet too", () => {
    const { readings, issues, units } = read(
      { between: ["truck.lowerArm.ballJoint", UPPER], is: "10 5/8" },
      { height: LOWER, is: 8.5, within: "1/8", side: "right" },
      { angle: "lowerArm", is: 3 },
      { offset: "A", from: "frame", is: "-2" },
      { plumb: LOWER, mark: "A" },
      { size: "wheelbase", is: "117 1/2" },
      { stations: [[0, 2, "1/2"]], stick: { offset: 38, height: 28 } },
    );
    expect([issues, units]).toEqual([[], "in"]);
    expect(readings).toMatchObject([
      { index: 0, kind: "between", points: [LOWER, UPPER], is: 269.875, within: 1.5875, side: "left" },
      { index: 1, kind: "height", point: LOWER, is: 215.9, within: 3.175, side: "right" },
      { index: 2, kind: "angle", arm: "lowerArm", is: expect.closeTo(3 * DEG, 12) },
      { index: 3, kind: "offset", point: "A", from: "frame", is: -50.8 },
      { index: 4, kind: "plumb", point: LOWER, mark: "A" },
      { index: 5, kind: "size", of: "wheelbase", is: 117.5 * 25.4 },
      {
        kind: "stations",
        part: "fender lip",
        stick: { offset: 965.2, height: 711.2 },
        stations: [[0, 50.8, 12.7]],
      },
    ]);
  });

  it("is part of a setup, which without it has none", () => {
    const setup = (patch: object) => resolveSetup({ ...exampleDocument(), ...patch }, "truck.json");
    expect(setup({})).toMatchObject({ ok: true, value: { readings: [] } });
    const readings = [{ height: LOWER, is: 8 }];
    expect(setup({ readings })).toMatchObject({ ok: true, value: { readings: [{ is: 203.2 }] } });
    expect(setup({ readings: [{ height: LOWER, is: "eight" }] })).toMatchObject({ ok: false });
  });

  it("keeps the sound readings beside those with mistakes, each told with what, where and mend", () => {
    const { readings, issues, leftOut } = read(
      { height: LOWER, is: "x" },
      { height: LOWER, is: -1 },
      { between: [LOWER, UPPER], is: 0 },
      { between: [LOWER, UPPER], is: 5000 },
      { height: LOWER, is: "" },
      { angle: "lowerArm", is: 75 },
      { height: UPPER, is: 18 },
    );
    expect(readings.map(({ index }) => index)).toEqual([6]);
    const at = (...places: number[]) => places.map((i) => `readings[${i}].is`);
    expect(issues.map(({ key }) => key)).toEqual(at(0, 4));
    expect(issues[0]).toMatchObject({ value: '"x"', mend: expect.stringContaining("no number found") });
    expect(issues[1]!.mend).toContain("empty");
    // What reads and no truck can have is left out.
    expect(leftOut.map(({ key }) => key)).toEqual(at(1, 2, 3, 5));
    expect(leftOut[0]!.mend).toContain("must be 0 or more");
    expect(leftOut[1]!.mend).toBe("must be more than 0");
    expect(leftOut[2]!.mend).toContain("more than any truck has");
    expect(leftOut[3]!.mend).toContain("no arm stands steeper");
  });

  it("that cannot be hold no setup back: it stands without them, and has each with its mend", () => {
    const readings = [
      { height: LOWER, is: 8 },
      { height: UPPER, is: 19 },
      { between: [LOWER, UPPER], is: 10 },
      { height: "wheelCenter", is: -13 },
    ];
    const read = resolveSetup({ ...exampleDocument(), readings }, "truck.json");
    expect(read).toMatchObject({
      ok: true,
      value: {
        readings: [{ index: 0 }, { index: 1 }],
        readingsLeftOut: [
          { file: "truck.json", key: "readings[3].is", value: "-13" },
          { key: "readings[2].is", mend: expect.stringContaining("read all three again") },
        ],
      },
    });
  });

  it("passes over what is asked for and not read yet, and what is left out on trial", () => {
    const { readings, issues } = read(
      { height: LOWER },
      { angle: "lowerArm" },
      { height: LOWER, is: 8, leftOut: true },
      { height: LOWER, is: 8, leftOut: false },
      { height: "lowerArm.balljont" },
    );
    expect(readings.map(({ index }) => index)).toEqual([3]);
    expect(issues.map(({ key }) => key)).toEqual(["readings[4].height"]);
  });

  it("take what is typed after a ± for how well it is known", () => {
    expect(read({ height: LOWER, is: "8 1/2 ± 1/8" }).readings).toMatchObject([{ is: 215.9, within: 3.175 }]);
    expect(read({ angle: "lowerArm", is: "3° ± 0.5°" }).readings).toMatchObject([
      { within: expect.closeTo(0.5 * DEG, 12) },
    ]);
    expect(issuesOf({ height: LOWER, is: "8 1/2 ±" })[0]).toContain("has nothing after the ±");
    expect(issuesOf({ height: LOWER, is: "8 ± 1/8", within: 1 })[0]).toContain("stands after the ± already");
  });

  it("tells a misspelled point from a mark, and knows parts by name and by number", () => {
    expect(issuesOf({ height: "lowerArm.balljont", is: 8 })[0]).toContain(
      'did you mean "lowerArm.ballJoint"',
    );
    expect(issuesOf({ height: "wheelCentre", is: 8 })[0]).toContain('did you mean "wheelCenter"');
    expect(issuesOf({ height: "left chalk cross", is: 0 })).toEqual([]);
    expect(issuesOf({ height: "floor.cross", is: 0 })[0]).toContain("a mark has no dots");
    expect(issuesOf({ plumb: LOWER, mark: UPPER })[0]).toContain("is a point of the truck");
    const document = {
      ...exampleDocument(),
      readings: [
        { height: 'body["fender lip"].points[0]', is: 16 },
        { height: "body[0].points[1]", is: 31 },
        { height: 'body["fendr lip"].points[1]', is: 31 },
        { height: "body[9].points[1]", is: 31 },
      ],
    };
    const { readings, issues } = readReadings(document, "truck.json");
    expect(readings).toMatchObject([
      { point: 'body["fender lip"].points[0]' },
      { point: expect.stringMatching(/^body\[".+"\]\.points\[1\]$/) },
    ]);
    expect(issues.map(({ mend }) => mend)).toEqual([
      expect.stringContaining('did you mean body["fender lip"]'),
      expect.stringContaining("is not there"),
    ]);
  });

  it("refuses a reading of nothing, of two things, and keys that do not go with it", () => {
    expect(issuesOf({ is: 8 })[0]).toContain("required: what was read");
    expect(issuesOf({ height: LOWER, offset: LOWER, is: 8 })[0]).toContain("a reading is of one thing");
    expect(issuesOf({ height: LOWER, is: 8, from: "frame" })[0]).toContain("goes with offset");
    expect(issuesOf({ height: LOWER, is: 8, side: "across" })[0]).toContain("goes with between alone");
    expect(issuesOf({ between: [LOWER, LOWER], is: 8 })[0]).toContain("is the same point");
    expect(issuesOf({ between: [LOWER, LOWER], is: 52, side: "across" })).toEqual([]);
    expect(issuesOf({ height: LOWER, is: 8, within: 0 })[0]).toContain("must be more than 0");
    expect(issuesOf({ height: LOWER, is: 8, within: 1e-9 })[0]).toContain("finer than anything");
    expect(issuesOf({ stations: [[0, 1, 2]] })[0]).toContain("readings[0].stick: required");
  });

  it("leaves out readings that no truck can give together, with what to read again", () => {
    const [short] = leftOutOf(
      { height: LOWER, is: 8 },
      { height: UPPER, is: 19 },
      { between: [LOWER, UPPER], is: 10 },
    );
    expect(short).toBe(
      "readings[2].is: is less than its two ends are apart in height by readings 1 and 2, 11 in; read all three again",
    );
    const [triangle] = leftOutOf(
      { between: [LOWER, UPPER], is: 10 },
      { between: [UPPER, "tieRodOuter"], is: 8 },
      { between: ["tieRodOuter", LOWER], is: 20 },
    );
    expect(triangle).toContain(
      "readings[2].is: makes no triangle with readings 1 and 2, which together are 18 in",
    );
    const [twice] = leftOutOf(
      { height: LOWER, is: 8 },
      { height: LOWER, is: "8 1/16" },
      { height: LOWER, is: 18 },
    );
    expect(twice).toContain("readings[2].is: is far from what reading 1 says of the same, 8 in");
    expect(leftOutOf({ between: [LOWER, UPPER], is: 10 }, { between: [UPPER, LOWER], is: 14 })).toHaveLength(
      1,
    );
  });

  it("has a limit on how many there are", () => {
    const many = Array.from({ length: 301 }, () => ({ height: LOWER, is: 8 }));
    expect(issuesOf(...many)).toEqual(["readings: must have at most 300 entries"]);
  });

  it("has a limit on the points they go to, stations apart", () => {
    const marks = (count: number) =>
      Array.from({ length: count }, (_, i) => ({ height: `mark ${i}`, is: i }));
    expect(issuesOf(...marks(40))).toEqual([]);
    expect(issuesOf(...marks(41))[0]).toContain("readings[40]: is one of more than 40 different points");
    const stick = { offset: 38, height: 20 };
    const stations = Array.from({ length: 100 }, (_, i) => [i, 1, 1]);
    const arches = (count: number) =>
      Array.from({ length: count }, (_, i) => ({ stations, stick, part: `lip ${i}` }));
    expect(issuesOf(...arches(3))).toEqual([]);
    expect(issuesOf(...arches(4))[0]).toContain("readings[3]: makes more than 300 stations");
  });

  it("needs the file's units, and says so", () => {
    expect(readReadings({ readings: [] }, "truck.json")).toMatchObject({
      units: null,
      issues: [{ key: "units" }],
    });
    expect(readReadings({ units: "in" }, "truck.json")).toEqual({
      units: "in",
      readings: [],
      issues: [],
      leftOut: [],
    });
    expect(readReadings(null, "truck.json").units).toBeNull();
  });
});
