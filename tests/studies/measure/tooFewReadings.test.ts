import { describe, expect, it } from "vitest";
import type { Vec3 } from "../../../src/geometry/vec.ts";
import type { PointName, Reading } from "../../../src/setup/types/readingTypes.ts";
import { readingOf } from "../../../src/studies/measure/ask.ts";
import type { Measured } from "../../../src/studies/measure/measured.ts";
import { measureTruck } from "../../../src/studies/measure/measureTruck.ts";
import { TAPE_READINGS } from "../../../src/studies/measure/tapeReadings.ts";
import { nextSentence } from "../../../src/studies/wording/measureWords.ts";
import { nextSentence as nextOnPage } from "../../../src/studies/wording/readingsTold.ts";
import { askFor, readOn, TRUE_POINTS, TWENTY_FIVE } from "./measureCases.ts";

const JOINT = "lowerArm.ballJoint";
const height = (is: number, more: Partial<Reading> = {}) =>
  ({
    index: 0,
    kind: "height",
    point: JOINT,
    from: "centerline",
    side: "left",
    within: 1,
    is,
    ...more,
  }) as Reading;
const pointIn = (readings: readonly Reading[], name: PointName, side = "left") =>
  measureTruck(askFor(readings)).points.find(({ point, side: of }) => point === name && of === side)!;

describe("too few readings", () => {
  it("leave every point where the layout has it, and say so, with no reading at all", () => {
    const measured = measureTruck(askFor([]));
    expect(measured.points.length).toBe(7);
    for (const { standing, within } of measured.points) {
      expect(standing).toEqual(["assumed", "assumed", "assumed"]);
      expect(Math.min(...within)).toBeGreaterThan(50);
    }
    expect(measured.free).toHaveLength(21);
    expect(measured.suspect).toBeNull();
  });

  it("tell what they tell and no more: one height is one coordinate", () => {
    const joint = pointIn([height(200)], JOINT);
    expect(joint.at[2]).toBeCloseTo(200, 9);
    expect(joint.within[2]).toBeCloseTo(1, 9);
    expect(joint.standing).toEqual(["assumed", "assumed", "measured"]);
  });

  it("stretch what nobody read: a low truck's other joints are lower too", () => {
    const low = measureTruck(
      askFor([height(150), height(200, { index: 1, point: "lowerArm.frontPivot" } as object)]),
    );
    const high = measureTruck(
      askFor([height(300), height(350, { index: 1, point: "lowerArm.frontPivot" } as object)]),
    );
    const up = (measured: typeof low) =>
      measured.points.find(({ point }) => point === "upperArm.ballJoint")!.at[2];
    expect(up(high) - up(low)).toBeGreaterThan(50);
  });

  it("say what goes together: a tape alone between two points whose places are open", () => {
    const tape: Reading = {
      index: 0,
      kind: "between",
      points: [JOINT, "upperArm.ballJoint"],
      side: "left",
      within: 1,
      is: 260,
    };
    const measured = measureTruck(askFor([tape]));
    const [lower, upper] = [JOINT, "upperArm.ballJoint"].map(
      (name) => measured.points.find(({ point }) => point === name)!,
    );
    expect(Math.hypot(...lower!.at.map((v, i) => v - upper!.at[i]!))).toBeCloseTo(260, 6);
    const joined = measured.free.filter(({ moves }) => moves.length > 1);
    expect(joined.length).toBeGreaterThan(0);
    // Along every way the tape keeps its length.
    const apart = lower!.at.map((v, i) => v - upper!.at[i]!);
    for (const { moves } of measured.free) {
      const change = moves.reduce((sum, { point, axis, by }) => {
        const sign = point === JOINT ? 1 : point === "upperArm.ballJoint" ? -1 : 0;
        return sum + sign * by * (apart[axis]! / 260);
      }, 0);
      expect(Math.abs(change)).toBeLessThan(0.06); // shares under 5 percent are left out
    }
  });

  it("take a number of the setup for better than the layout, and a reading for better than that", () => {
    const given = new Map<PointName, Vec3>([[JOINT, [20, 700, 190]]]);
    const told = (readings: readonly Reading[]) =>
      measureTruck(askFor(readings, { given })).points.find(({ point }) => point === JOINT)!;
    expect(told([])).toMatchObject({ at: [20, 700, 190], standing: ["given", "given", "given"] });
    const read = told([height(205)]);
    expect(read.at[2]).toBeCloseTo(205, 9);
    expect(read.standing).toEqual(["given", "given", "measured"]);
  });

  it("name as next the reading that takes most: the one whose point nobody knows", () => {
    const readings = readOn(TWENTY_FIVE, TRUE_POINTS);
    const { next } = measureTruck(askFor(readings, { candidates: TAPE_READINGS }));
    expect(next?.ask).toMatchObject({ point: "steering.innerEnd" });
    expect(next!.to).toBeLessThan(next!.from);
    // The layout is good to 100 mm, a tape to 1/16 in.
    expect(nextSentence({ next } as Measured, { units: "mm" })).toContain(
      "It tells how high the inner tie rod end is to about ±1.59 mm; so far it is known to about ±100.00 mm",
    );
    const little = { ...next!, tells: { ...next!.tells!, to: 0.91 * next!.tells!.from } };
    expect(nextSentence({ next: little } as Measured, { units: "mm" })).toBe("");
    // On the page, in sixteenths, as much finer as tells the two apart.
    const fine = { ...next!, tells: { ...next!.tells!, from: 4.9, to: 4.3 } };
    expect(nextOnPage(fine, "Wheel center, up", { units: "in", fraction: 16 })).toContain(
      "to about 0.169 in; so far it is known to about 0.193 in",
    );
    // Taken, it takes just that: the trace falls as was said.
    const taken = { ...readingOf(next!.ask, 250), index: 25 } as Reading;
    const now = measureTruck(askFor([...readings, taken], { candidates: TAPE_READINGS }));
    expect(now.next!.from).toBeCloseTo(next!.to, 0);
    expect(now.next?.ask).not.toEqual(next!.ask);
  });
});

describe("left and right", () => {
  it("are told apart where both were read, and are mirror images where they were not", () => {
    const readings = [height(200), height(212, { index: 1, side: "right" })];
    expect(pointIn(readings, JOINT).at[2]).toBeCloseTo(200, 9);
    const right = pointIn(readings, JOINT, "right");
    expect(right.at[2]).toBeCloseTo(212, 9);
    expect(right.standing[2]).toBe("measured");
    expect(right.at[1]).toBeCloseTo(pointIn(readings, JOINT).at[1], 9);
    expect(measureTruck(askFor([height(200)])).points.some(({ side }) => side === "right")).toBe(false);
  });

  it("share a tape across the truck", () => {
    const across: Reading = {
      index: 0,
      kind: "between",
      points: [JOINT, JOINT],
      side: "across",
      within: 1,
      is: 1300,
    };
    expect(pointIn([across], JOINT).at[1]).toBeCloseTo(650, 6);
    const offset: Reading = {
      index: 1,
      kind: "offset",
      point: JOINT,
      from: "centerline",
      side: "right",
      within: 1,
      is: 660,
    };
    const [left, right] = (["left", "right"] as const).map((side) => pointIn([across, offset], JOINT, side));
    expect([left!.at[1], right!.at[1]]).toEqual([expect.closeTo(640, 6), expect.closeTo(660, 6)]);
  });
});

describe("readings of other kinds", () => {
  it("put a plumb bob's mark under its point, and tapes between marks place the points", () => {
    const plumb = (point: PointName, mark: string, index: number): Reading => ({
      index,
      kind: "plumb",
      point,
      mark,
      side: "left",
      within: 1,
    });
    const offset = (point: PointName, is: number, index: number): Reading => ({
      index,
      kind: "offset",
      point,
      from: "centerline",
      side: "left",
      within: 1,
      is,
    });
    const tape: Reading = { index: 4, kind: "between", points: ["A", "B"], side: "left", within: 1, is: 390 };
    const ahead: Reading = {
      index: 5,
      kind: "ahead",
      point: "A",
      from: "centerline",
      side: "left",
      within: 1,
      is: 200,
    };
    const readings = [
      plumb("lowerArm.frontPivot", "A", 0),
      plumb("lowerArm.rearPivot", "B", 1),
      offset("A", 250, 2),
      offset("B", 250, 3),
      tape,
      ahead,
    ];
    expect(pointIn(readings, "lowerArm.frontPivot").at.slice(0, 2)).toEqual([
      expect.closeTo(200, 6),
      expect.closeTo(250, 6),
    ]);
    expect(pointIn(readings, "lowerArm.rearPivot").at.slice(0, 2)).toEqual([
      expect.closeTo(-190, 6),
      expect.closeTo(250, 6),
    ]);
    expect(pointIn(readings, "A").at[2]).toBeCloseTo(0, 9);
    // The bob and the tape's own errors add: root of 1 + 1.
    expect(pointIn(readings, "lowerArm.frontPivot").within[1]).toBeCloseTo(Math.SQRT2, 6);
  });

  it("read offsets from the frame's outer face, and a lip along a stick", () => {
    const frame: Reading = { index: 0, kind: "size", of: "frameWidth", side: "left", within: 1, is: 800 };
    const offset: Reading = {
      index: 1,
      kind: "offset",
      point: JOINT,
      from: "frame",
      side: "left",
      within: 1,
      is: 250,
    };
    expect(pointIn([frame, offset], JOINT).at[1]).toBeCloseTo(650, 6);
    const stick: Reading = {
      index: 0,
      kind: "stations",
      part: "lip",
      side: "left",
      within: 3,
      stick: { offset: 950, height: 700 },
      stations: [
        [100, 50, 20],
        [-100, -40, 25],
      ],
    };
    expect(pointIn([stick], 'body["lip"].points[0]').at).toEqual(
      [100, 930, 750].map((v) => expect.closeTo(v, 9)),
    );
    expect(pointIn([stick], 'body["lip"].points[1]').at).toEqual(
      [-100, 925, 660].map((v) => expect.closeTo(v, 9)),
    );
  });

  it("read an arm's angle as a stance's lower arm angle is: from the foot of the joint on the pivot axis", () => {
    const angle: Reading = { index: 0, kind: "angle", arm: "lowerArm", side: "left", within: 0.01, is: 0.2 };
    const measured = measureTruck(askFor([angle]));
    const [front, rear, joint] = ["frontPivot", "rearPivot", "ballJoint"].map(
      (key) => measured.points.find(({ point }) => point === `lowerArm.${key}`)!.at,
    );
    const share = (joint![0] - rear![0]) / (front![0] - rear![0]);
    const foot = (axis: 1 | 2) => rear![axis] + share * (front![axis] - rear![axis]);
    // The foot straight across is within a hair of the one square to the axis, which is nearly along the truck.
    expect(Math.atan2(foot(2) - joint![2], joint![1] - foot(1))).toBeCloseTo(0.2, 1);
  });

  it("go to the rim's edge about the wheel center", () => {
    const center: Reading = {
      index: 0,
      kind: "height",
      point: "wheelCenter",
      from: "centerline",
      side: "left",
      within: 1,
      is: 340,
    };
    const top: Reading = {
      index: 1,
      kind: "height",
      point: "rimTop",
      from: "centerline",
      side: "left",
      within: 1,
      is: 340 + 190.5 + 17.5,
    };
    const measured = measureTruck(askFor([center, top]));
    expect(measured.residuals.map(({ off }) => off)).toEqual([expect.closeTo(0, 9), expect.closeTo(0, 9)]);
  });
});
