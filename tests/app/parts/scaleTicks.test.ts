import { scaleLinear } from "d3-scale";
import { line } from "d3-shape";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { curvePath } from "../../../src/app/clear/plots/plotFrame.ts";
import { curveText, type PlotSpec, slopePer, slopeStep } from "../../../src/app/parts/plotNumbers.ts";
import { linearScale, scaleTicks } from "../../../src/app/parts/scaleTicks.ts";

const IN = 25.4;
const DEG = Math.PI / 180;
const INCHES = { units: "in" } as const;
const MILLIMETERS = { units: "mm" } as const;

function told(...ask: Parameters<typeof scaleTicks>): string[] {
  return scaleTicks(...ask).map(({ text }) => text);
}

describe("a plot's scale", () => {
  it("is told in fractions where they read well and in decimals where they do not", () => {
    expect(told(-3.75 * IN, 3.5 * IN, 8, "length", INCHES)).toEqual(["−3", "−2", "−1", "0", "1", "2", "3"]);
    expect(told(0, 2 * IN, 8, "length", INCHES)).toEqual([
      "0",
      "1/4",
      "1/2",
      "3/4",
      "1",
      "1 1/4",
      "1 1/2",
      "1 3/4",
      "2",
    ]);
    expect(told(-0.02 * IN, 0.21 * IN, 5, "length", INCHES)).toEqual([
      "0.00",
      "0.05",
      "0.10",
      "0.15",
      "0.20",
    ]);
    expect(told(0, 2 * IN, 4, "length", { units: "in", fraction: "decimal" })).toEqual([
      "0.0",
      "0.5",
      "1.0",
      "1.5",
      "2.0",
    ]);
    expect(told(-1.2, 1.1, 5, "length", MILLIMETERS)).toEqual(["−1.0", "−0.5", "0.0", "0.5", "1.0"]);
    expect(told(-31 * DEG, 34 * DEG, 7, "turn", INCHES)).toEqual([
      "30 R",
      "20 R",
      "10 R",
      "0",
      "10 L",
      "20 L",
      "30 L",
    ]);
  });

  it("has enough marks, never many more than there is room for", () => {
    for (const span of [0.3, 1, 2.7, 9, 40, 170, 900, 5000]) {
      for (const measure of ["length", "angle", "turn"] as const) {
        for (const format of [INCHES, MILLIMETERS]) {
          for (const count of [5, 7, 12]) {
            const high = measure === "length" ? span : (span / 900) * DEG;
            const ticks = scaleTicks(-0.4 * high, 0.6 * high, count, measure, format).length;
            expect(ticks, `${measure} ${span} ${count} ${format.units}`).toBeGreaterThanOrEqual(count / 2.6);
            expect(ticks).toBeLessThanOrEqual(1.7 * count + 1);
          }
        }
      }
    }
  });
});

describe("a curve's own numbers", () => {
  const spec = (measure: "angle" | "length", over: "travel" | "roll"): PlotSpec => ({
    ...{ id: "p", title: "", note: "", series: [] },
    x: { label: "", measure: "length", over },
    y: { label: "", measure },
  });

  const slopeText = (slope: number, of: PlotSpec, format: Parameters<typeof slopePer>[1]) =>
    `${slopeStep(slope, of, format)} ${slopePer(of, format)}`;

  it("are lengths in decimals, and slopes per inch, per 10 mm or per degree of roll", () => {
    expect(curveText(-19.05, "length", INCHES)).toBe("−0.750 in");
    expect(curveText(19.054, "length", MILLIMETERS)).toBe("19.05 mm");
    expect(slopeText((-0.5 * DEG) / IN, spec("angle", "travel"), INCHES)).toBe("−0.500° per in");
    expect(slopeText((-0.5 * DEG) / 10, spec("angle", "travel"), MILLIMETERS)).toBe("−0.500° per 10 mm");
    expect(slopeText(IN / DEG, spec("length", "roll"), INCHES)).toBe("1.000 in per °");
    expect(slopeText(-1e-9, spec("angle", "travel"), INCHES)).toBe("0.000° per in");
  });
});

describe("a straight scale", () => {
  const end = fc.double({ min: -1e4, max: 1e4, noNaN: true });
  const ends = fc.tuple(end, end).filter(([a, b]) => Math.abs(a - b) > 1e-3);

  it("leads to the same places and back as a library's, whichever way it runs, also past its ends", () => {
    fc.assert(
      fc.property(ends, ends, end, fc.boolean(), (values, places, at, isClamped) => {
        const theirs = scaleLinear(values, places).clamp(isClamped);
        const ours = linearScale(values, places, isClamped);
        const near = (found: number, wanted: number) =>
          expect(Math.abs(found - wanted)).toBeLessThan(1e-9 * (1 + Math.abs(wanted)));
        near(ours(at), theirs(at));
        near(ours.invert(at), theirs.invert(at));
        near(ours.free(at), scaleLinear(values, places)(at));
      }),
    );
    expect(linearScale([2, 2], [10, 30])(5)).toBe(scaleLinear([2, 2], [10, 30])(5));
  });

  it("draws a curve as a library does, broken at its holes", () => {
    const point = fc.record({ x: fc.double({ min: -5, max: 5, noNaN: true }), y: fc.option(end) });
    const [x, y] = [linearScale([-2, 3], [54, 340], true), linearScale([-1e4, 1e4], [200, 20])];
    fc.assert(
      fc.property(fc.array(point, { maxLength: 20 }), (points) => {
        const theirs = line<(typeof points)[number]>()
          .defined((p) => p.y !== null)
          .x((p) => scaleLinear([-2, 3], [54, 340])(p.x))
          .y((p) => y(p.y!))(points);
        const [mine, wanted] = [curvePath(points, { x, y }), (theirs ?? "").replaceAll("Z", "")];
        expect(mine.replace(/[^ML]/g, "")).toBe(wanted.replace(/[^ML]/g, ""));
        const numbers = (path: string) => (path.match(/-?[\d.]+(e-?\d+)?/g) ?? []).map(Number);
        for (const [i, n] of numbers(wanted).entries())
          expect(Math.abs(numbers(mine)[i]! - n)).toBeLessThan(0.006);
      }),
    );
  });
});
