import { describe, expect, it } from "vitest";
import { checkClearance, DEFAULT_TOLERANCE } from "../../src/studies/reports/check.ts";
import { toleranceAt } from "../../src/studies/search/deepTolerance.ts";
import { stepBudget } from "../reference/stepBudget.ts";
import { wholeTrucks } from "../reference/wholeTrucks.ts";

/** Looks at a clock that is read about each half millisecond of work. */
const LOOKS = 8000;

describe("random trucks with every block, whose limits cut the range", () => {
  const trucks = wholeTrucks(20);

  it.each([2, 9, 15, 19])("number %d is checked to the tolerance asked for within its work", (i) => {
    const report = checkClearance(trucks[i]!, { budget: stepBudget(LOOKS) });
    expect(report.cutShort).toBeUndefined();
    expect(report.parts.length).toBeGreaterThan(20);
    for (const { gap, bound, tolerance } of report.parts) {
      expect(gap - bound).toBeLessThanOrEqual(tolerance);
      expect(tolerance).toBeLessThanOrEqual(toleranceAt(gap, DEFAULT_TOLERANCE) + 1e-9);
    }
  });

  it("a tenth of a millimeter is asked of what is pressed in by less than 25 mm, 2 mm past that", () => {
    expect([-24.9, -25.1, -80].map((gap) => toleranceAt(gap, 0.1))).toEqual([0.1, 2, 2]);
    expect(toleranceAt(-80, 5)).toBe(5);
  });
});
