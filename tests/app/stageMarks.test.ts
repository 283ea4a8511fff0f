import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sweepValue } from "../../src/app/stage/usePlay.ts";
import { isAtEntry } from "../../src/app/stage/worst.ts";
import type { CheckEntry } from "../../src/studies/reports/check.ts";
import type { GapEntry } from "../../src/studies/reports/gapsAt.ts";
import { asAssumed, gapMarks, withSides } from "../../src/studies/wording/gapRows.ts";

const IN = { units: "in" } as const;
const gap = (part: string, side: "left" | "right", mm: number): GapEntry => ({
  ...{ part, side, gap: mm, point: [1, 2, 3], onRing: [1, 2, 3 - mm] },
});
const worst: CheckEntry = {
  ...{ part: "lip", side: "left", gap: -5, bound: -5, tolerance: 0.1, travel: 80, steer: -0.9 },
  ...{ point: [4, 5, 6], verdict: "rubs" },
};

describe("marks on the picture", () => {
  const gaps = [gap("lip", "left", 3), gap("lip", "right", 60), gap("rail", "left", 90)];

  it("show where the worst place will be, first, with what it is now in the same label", () => {
    const marks = gapMarks([gap("rail", "left", 5), ...gaps], worst, false, null, 6.35, IN);
    expect(marks.map(({ kind, text }) => [kind, text])).toEqual([
      ["elsewhere", "lip: close 1/8 in now, rubs 3/16 in at worst"],
      ["now", ""],
      ["now", "rail: close 3/16 in now"],
    ]);
    expect(marks[0]!.onPart).toEqual(worst.point);
  });

  it("show the part that is worst somewhere where it is nearly so, on either side, and no other that is far enough", () => {
    const near = [gap("lip", "left", 60), gap("lip", "right", 7), gap("rail", "left", 7)];
    const marks = gapMarks(near, worst, false, null, 6.35, IN);
    expect(marks.map(({ kind, side, word, text }) => [kind, side, word, text])).toEqual([
      ["elsewhere", "left", "rubs", "lip: rubs 3/16 in at worst"],
      ["now", "right", "clear", "lip: 1/4 in now"],
    ]);
    const together = { ...gap("lip", "right", 7), together: true } as const;
    expect(gapMarks([together], worst, false, null, 6.35, IN)).toHaveLength(1);
  });

  it("say that they are assumed while too little is read for a verdict", () => {
    const marks = asAssumed(gapMarks([gap("lip", "left", -5)], null, false, null, 6.35, IN));
    expect(marks.map(({ text, shorter }) => [text, ...shorter])).toEqual([
      ["assumed: lip: rubs 3/16 in", "assumed: lip: rubs 3/16 in", "assumed: rubs 3/16 in"],
    ]);
    expect(asAssumed(gapMarks(gaps, worst, false, null, 6.35, IN)).map(({ text }) => text)).toEqual([
      "assumed: lip: close 1/8 in now, rubs 3/16 in at worst",
      "",
    ]);
  });

  it("say that a pose is past the limits, where the worst of all does not count it", () => {
    const all = [gap("lip", "left", -8), gap("lip", "right", 3), gap("rail", "left", 5)];
    const told = (...sides: readonly ("left" | "right")[]) =>
      gapMarks(all, { ...worst, gap: 2, verdict: "close" }, false, null, 6.35, IN, false, sides).map(
        ({ text, shorter }) => [text, ...shorter],
      );
    expect(told("left", "right")).toEqual([
      [
        "lip: rubs 5/16 in now, past the limits; close 1/16 in at worst",
        "lip: rubs now, past the limits; close 1/16 in at worst",
        "rubs now, past the limits; close 1/16 in at worst",
      ],
      ["", "lip: rubs 5/16 in, past the limits", "rubs 5/16 in, past the limits"],
      [
        "lip: close 1/8 in now, past the limits",
        "lip: close 1/8 in, past the limits",
        "close 1/8 in, past the limits",
      ],
      [
        "rail: close 3/16 in now, past the limits",
        "rail: close 3/16 in, past the limits",
        "close 3/16 in, past the limits",
      ],
    ]);
    // A wheel that is counted for itself.
    expect(told("left")[2]).toEqual(["lip: close 1/8 in now", "lip: close 1/8 in", "close 1/8 in"]);
    expect(told()[0]![0]).toBe("lip: rubs 5/16 in now, close 1/16 in at worst");
  });

  it("name the side of a part that is on both, where one stands behind the other", () => {
    const all = [gap("lip", "left", -5), gap("lip", "right", 3), gap("hose bracket", "left", 2)];
    const told = (isWorstPose: boolean) =>
      withSides(gapMarks(all, worst, isWorstPose, null, 6.35, IN), all).map(({ text, shorter }) => [
        text,
        ...shorter,
      ]);
    expect(told(true)).toEqual([
      ["left lip: rubs 3/16 in, the worst", "left lip: rubs 3/16 in", "rubs 3/16 in"],
      ["hose bracket: close 1/16 in", "hose bracket: close 1/16 in", "close 1/16 in"],
      ["right lip: close 1/8 in", "right lip: close 1/8 in", "close 1/8 in"],
    ]);
    expect(told(false)[0]).toEqual([
      "left lip: rubs 3/16 in now and at worst",
      "left lip: rubs 3/16 in at worst",
      "rubs 3/16 in at worst",
    ]);
  });

  it("have one label a part and side", () => {
    for (const isWorstPose of [true, false]) {
      const all = [gap("lip", "left", -5), gap("lip", "right", 3), gap("rail", "left", 2)];
      const told = gapMarks(all, worst, isWorstPose, { part: "rail", side: "left" }, 6.35, IN).filter(
        ({ text }) => text !== "",
      );
      expect(new Set(told.map(({ part, side }) => `${part} ${side}`)).size).toBe(3);
      expect(told).toHaveLength(3);
    }
  });

  it("cross the worst place itself at its own pose", () => {
    const there = [gap("rail", "left", 2), gap("lip", "left", -5), gap("lip", "right", 60)];
    const marks = gapMarks(there, worst, true, null, 6.35, IN);
    expect(marks.map(({ kind, text }) => [kind, text])).toEqual([
      ["worst", "lip: rubs 3/16 in, the worst"],
      ["now", "rail: close 1/16 in"],
    ]);
  });

  it("say of a search that is not finished that it is the worst so far", () => {
    const [elsewhere] = gapMarks(gaps, worst, false, null, 6.35, IN, true);
    expect(elsewhere!.text).toBe("lip: close 1/8 in now, rubs 3/16 in at worst so far");
    const [there] = gapMarks([gap("lip", "left", -5)], worst, true, null, 6.35, IN, true);
    expect(there!.text).toBe("lip: rubs 3/16 in, the worst so far");
  });

  it("show a part that is pointed out although it is clear", () => {
    const marks = gapMarks(gaps, null, false, { part: "rail", side: "left" }, 1, IN);
    expect(marks.map(({ word, text }) => [word, text])).toEqual([["clear", "rail: 3 9/16 in"]]);
  });

  it("take a place that rides with the wheel to be at home in every pose", () => {
    expect(isAtEntry(worst, { travel: 80, steer: -0.9 })).toBe(true);
    expect(isAtEntry(worst, { travel: 79, steer: -0.9 })).toBe(false);
    expect(isAtEntry(worst, { travel: 80, steer: -0.8 })).toBe(false);
    expect(isAtEntry({ ...worst, together: true }, { travel: 0, steer: 0 })).toBe(true);
  });
});

describe("a played sweep", () => {
  it("begins where the truck stands, goes to the high end, then to the low one", () => {
    expect([0, 0.5, 1, 1.5, 2, 2.5].map((ways) => sweepValue(-1, 1, 0, ways))).toEqual([0, 1, 0, -1, 0, 1]);
  });

  it("never leaves its range", () => {
    const inputs = fc.tuple(
      fc.double({ min: -100, max: 0, noNaN: true }),
      fc.double({ min: 0, max: 100, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: 0, max: 50, noNaN: true }),
    );
    fc.assert(
      fc.property(inputs, ([low, high, share, ways]) => {
        const value = sweepValue(low, high, low + share * (high - low), ways);
        expect(value).toBeGreaterThanOrEqual(low - 1e-9);
        expect(value).toBeLessThanOrEqual(high + 1e-9);
      }),
      { seed: 1955, numRuns: 400 },
    );
  });
});
