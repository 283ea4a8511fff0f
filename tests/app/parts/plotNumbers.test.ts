import { describe, expect, it } from "vitest";
import { type Measure, readText, ticksOf, tickText, unitText } from "../../../src/app/parts/plotNumbers.ts";

const IN = 25.4;
const DEG = Math.PI / 180;
const INCHES = { units: "in" } as const;
const MILLIMETERS = { units: "mm" } as const;

/** The ticks as a person reads them. */
function told(low: number, high: number, measure: Measure, format: typeof INCHES | typeof MILLIMETERS) {
  return ticksOf(low, high, 6, measure, format.units).map((tick) => tickText(tick, measure, format));
}

describe("a scale's ticks", () => {
  it("stand at what a tape has, in inches, and at round numbers else", () => {
    expect(told(-4 * IN, 3.5 * IN, "length", INCHES)).toEqual(["−4", "−2", "0", "2"]);
    expect(told(0, 0.3 * IN, "length", INCHES)).toEqual(["0", "1/16", "1/8", "3/16", "1/4"]);
    expect(told(-95, 80, "length", MILLIMETERS)).toEqual([
      "−80",
      "−60",
      "−40",
      "−20",
      "0",
      "20",
      "40",
      "60",
      "80",
    ]);
    expect(told(-1.2 * DEG, 0.9 * DEG, "angle", INCHES)).toEqual(["−1", "−0.5", "0", "0.5"]);
    expect(told(-1, 1, "lock", INCHES)).toEqual(["100 R", "50 R", "0", "50 L", "100 L"]);
  });

  it.each<[Measure, number, number]>([
    ["length", -3.2, 811.7],
    ["length", 5000, 5001],
    ["angle", -0.31, 0.02],
    ["lock", -0.7, 0.4],
  ])("of a %s from %d to %d lie within it, evenly and rising", (measure, low, high) => {
    for (const units of ["in", "mm"] as const) {
      for (const count of [3, 6, 12]) {
        const ticks = ticksOf(low, high, count, measure, units);
        const off = 1e-9 * Math.max(Math.abs(low), Math.abs(high));
        for (const tick of ticks) {
          expect(tick).toBeGreaterThanOrEqual(low - off);
          expect(tick).toBeLessThanOrEqual(high + off);
        }
        const steps = ticks.slice(1).map((tick, i) => tick - ticks[i]!);
        for (const step of steps) {
          expect(step).toBeGreaterThan(0);
          expect(step).toBeCloseTo(steps[0]!, 8);
        }
      }
    }
  });

  it("are both ends where they fall on them, and none where nothing round lies between", () => {
    const ticks = ticksOf(0, IN, 4, "length", "in");
    expect(ticks).toHaveLength(5);
    for (const [i, tick] of ticks.entries()) expect(tick / IN).toBeCloseTo(i / 4, 12);
    expect(ticksOf(0.1 * IN, 0.11 * IN, 4, "length", "in")).toEqual([]);
  });
});

describe("a plot's number", () => {
  it("is read out with its unit and a minus sign, not a hyphen", () => {
    expect(readText(-1.5 * DEG, "angle", INCHES)).toBe("−1.50°");
    expect(readText(-19.05, "length", INCHES)).toBe("−3/4 in");
    expect(readText(-19.05, "length", MILLIMETERS)).toMatch(/^−19\.\d+ mm$/);
    expect(readText(0.5, "lock", INCHES)).toMatch(/50%.*left/);
    expect(readText(-0.5, "lock", INCHES)).toMatch(/50%.*right/);
  });

  it("has its unit at the scale's name", () => {
    expect([unitText("angle", INCHES), unitText("lock", INCHES)]).toEqual(["°", "% of lock"]);
    expect([unitText("length", INCHES), unitText("length", MILLIMETERS)]).toEqual(["in", "mm"]);
  });
});
