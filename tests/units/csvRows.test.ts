import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { csvGap, csvNumber } from "../../src/units/csvRows.ts";

describe("a gap in a cell", () => {
  it.each([
    [-0.0004, "mm", "-0.001"],
    [-0.000004, "in", "-0.00001"],
    [6.3496, "mm", "6.349"],
    [0.2499999, "in", "0.24999"],
    [0.25, "in", "0.25"],
    [1.005, "mm", "1.005"],
    [-1.005, "mm", "-1.005"],
    [0, "mm", "0"],
  ] as const)("of %f %s is %s", (gap, units, told) => {
    expect(csvGap(gap, units)).toBe(told);
  });

  it("is never told as more than it is, and as less by one step at most", () => {
    fc.assert(
      fc.property(fc.double({ min: -500, max: 500, noNaN: true }), (gap) => {
        const told = Number(csvGap(gap, "mm"));
        expect(told).toBeLessThanOrEqual(gap + 1e-8);
        expect(told).toBeGreaterThan(gap - 1.001e-3);
        expect(csvNumber(told, "mm")).toBe(csvGap(told, "mm"));
      }),
    );
  });
});
