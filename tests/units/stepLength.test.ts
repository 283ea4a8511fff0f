import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { stepTo } from "../../src/units/stepLength.ts";

const SIXTEENTH = 25.4 / 16;

describe("stepTo", () => {
  it("moves by whole steps from a step", () => {
    expect(stepTo(0, SIXTEENTH, 1)).toBe(SIXTEENTH);
    expect(stepTo(8 * SIXTEENTH, SIXTEENTH, -1, 8)).toBeCloseTo(0, 12);
  });

  it("moves from between two steps to the nearer end of the way asked for", () => {
    expect(stepTo(0.3 * SIXTEENTH, SIXTEENTH, 1)).toBeCloseTo(SIXTEENTH, 12);
    expect(stepTo(0.3 * SIXTEENTH, SIXTEENTH, -1)).toBeCloseTo(0, 12);
    expect(stepTo(-0.3 * SIXTEENTH, SIXTEENTH, -1)).toBeCloseTo(-SIXTEENTH, 12);
  });

  it("always lands on a whole step, in the direction asked for, no further than one step", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -200, max: 200, noNaN: true }),
        fc.constantFrom(1 as const, -1 as const),
        (value, way) => {
          const next = stepTo(value, SIXTEENTH, way);
          expect(next / SIXTEENTH).toBeCloseTo(Math.round(next / SIXTEENTH), 9);
          // A value within a millionth of a step counts as on it, so it may move that much more than a step.
          expect(way * (next - value)).toBeGreaterThan(0);
          expect(way * (next - value)).toBeLessThan(SIXTEENTH * (1 + 2e-6));
        },
      ),
      { seed: 1955, numRuns: 500 },
    );
  });
});
