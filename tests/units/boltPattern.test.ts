import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type BoltPattern,
  boltPatternText,
  holeDistance,
  holeDistanceAcross,
  isSamePattern,
  parseBoltPattern,
} from "../../src/units/boltPattern.ts";

function patternOf(text: string): BoltPattern {
  const parsed = parseBoltPattern(text);
  if (!parsed.ok) throw new Error(`${text}: ${parsed.mend}`);
  return parsed.pattern;
}

const inches = (mm: number) => mm / 25.4;

describe("a bolt pattern", () => {
  it.each([
    // Common practice, no source: 5 on 5 in and 6 on 5 1/2 in are the trade's truck patterns.
    ["5x5", 5, 127],
    ["5 on 5", 5, 127],
    ["5 x 5 in", 5, 127],
    ['5x5"', 5, 127],
    ["5-5", 5, 127],
    ["5 lug x 5", 5, 127],
    ["5x127", 5, 127],
    ["5 × 127 mm", 5, 127],
    ["5X114,3", 5, 114.3],
    ["5x4 3/4", 5, 120.65],
    ["5x4-3/4", 5, 120.65],
    ["5×4¾", 5, 120.65],
    ["6 x 5 1/2", 6, 139.7],
    ["6-5.5", 6, 139.7],
    ["6/139.7", 6, 139.7],
    ["8 x 6.5", 8, 165.1],
    ["4x100", 4, 100],
    ["10 x 7 1/4", 10, 184.15],
  ])("is read from %j", (text, holes, circle) => {
    expect(patternOf(text)).toMatchObject({ holes, circle: expect.closeTo(circle, 9) });
  });

  it.each([
    ["", /^empty/],
    ["5", /write holes and circle/],
    ["5 1/2", /write holes and circle/],
    ["x5", /write holes and circle/],
    ["5x", /write holes and circle/],
    ["2x5", /3 to 10 holes/],
    ["12x5", /3 to 10 holes/],
    ["5x40", /inches or millimeters/],
    ["5x1", /between 2 3\/4 and 13 3\/4 in/],
    ["5x5 ft", /cannot read "ft"/],
    ["5x5x5", /cannot read "x5"/],
    ["-5x5", /write holes and circle/],
    ["5x1,270", /two ways/],
    [`5x${"5".repeat(90)}`, /longer than/],
  ])("%j is refused with its mend", (text, mend) => {
    expect(parseBoltPattern(text)).toEqual({ ok: false, mend: expect.stringMatching(mend) });
  });

  it("comes back from its text, inch and metric", () => {
    const patterns = fc
      .record({ holes: fc.integer({ min: 3, max: 10 }), unit: fc.constantFrom("in", "mm"), at: fc.nat(4000) })
      .map(
        ({ holes, unit, at }): BoltPattern => ({
          holes,
          unit: unit as BoltPattern["unit"],
          circle: unit === "in" ? 76.2 + (25.4 / 64) * (at % 600) : 76 + (at % 2700) / 10,
        }),
      );
    fc.assert(
      fc.property(patterns, (pattern) => {
        const back = patternOf(boltPatternText(pattern));
        expect(back.holes).toBe(pattern.holes);
        expect(back.circle).toBeCloseTo(pattern.circle, 8);
      }),
      { seed: 1955, numRuns: 300 },
    );
  });

  it("has the chords of its circle: 5 holes, D sin 36° and D sin 72° (elementary geometry)", () => {
    const unit: BoltPattern = { holes: 5, circle: 1, unit: "mm" };
    expect(holeDistance(unit, 1)).toBeCloseTo(0.587785, 6);
    expect(holeDistance(unit, 2)).toBeCloseTo(0.951057, 6);
    const five = patternOf("5x5");
    expect(inches(holeDistance(five, 1))).toBeCloseTo(2.9389, 4);
    expect(holeDistance(five, 1)).toBeCloseTo(74.649, 3);
    expect(inches(holeDistanceAcross(five))).toBeCloseTo(4.7553, 4);
    expect(holeDistanceAcross(five)).toBeCloseTo(120.784, 3);
  });

  it("has the chords of 6 on 5 1/2 in: sin 30°, sin 60°, sin 90° (elementary geometry)", () => {
    const six = patternOf("6 x 5 1/2");
    expect([1, 2, 3].map((apart) => Number(inches(holeDistance(six, apart)).toFixed(4)))).toEqual([
      2.75, 4.7631, 5.5,
    ]);
    expect(holeDistanceAcross(six)).toBeCloseTo(139.7, 9);
    expect(holeDistance(six, 1)).toBeCloseTo(69.85, 9);
  });

  it("has its circle across where the holes are even, and sides of the square and octagon (elementary geometry)", () => {
    expect(holeDistanceAcross(patternOf("4x100"))).toBeCloseTo(100, 9);
    expect(holeDistance(patternOf("4x100"), 1)).toBeCloseTo(100 / Math.SQRT2, 9);
    expect(holeDistanceAcross(patternOf("8x6.5"))).toBeCloseTo(165.1, 9);
    // Side of a regular octagon by its circumcircle: D/2 √(2 − √2).
    expect(holeDistance(patternOf("8x6.5"), 1)).toBeCloseTo(82.55 * Math.sqrt(2 - Math.SQRT2), 9);
  });

  it("agrees with the shop rule, one hole's center to the far edge of the second hole away, half-inch studs", () => {
    // The rule: itstillruns.com, "How to measure a 5-lug bolt pattern"; that it is exact for 0.4894 in holes alone: derived.
    const rule = (circle: string) => inches(holeDistance(patternOf(`5x${circle}`), 2)) + 0.25;
    expect(["5", "4.5", "4.75", "5.5"].map((circle) => Number(rule(circle).toFixed(4)))).toEqual([
      5.0053, 4.5298, 4.7675, 5.4808,
    ]);
  });

  it("fits another of the same holes whose circle differs by the rounding of its name alone", () => {
    expect(isSamePattern(patternOf("5x5"), patternOf("5x127"))).toBe(true);
    expect(isSamePattern(patternOf("5x4 1/4"), patternOf("5x108"))).toBe(true);
    expect(isSamePattern(patternOf("5x4 3/4"), patternOf("5x120"))).toBe(false);
    expect(isSamePattern(patternOf("5x5"), patternOf("6x5"))).toBe(false);
  });
});
