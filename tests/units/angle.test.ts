import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { degFromRad, formatAngle, parseAngle, radFromDeg } from "../../src/units/angle.ts";

describe("angles", () => {
  it("turns multiples of 90 degrees into the same multiple of π/2, and back", () => {
    for (let quarter = -8; quarter <= 8; quarter++) {
      expect(radFromDeg(90 * quarter)).toBe(quarter * (Math.PI / 2));
      expect(degFromRad(radFromDeg(90 * quarter))).toBe(90 * quarter);
    }
  });

  it.each([
    [8.4, 8.4],
    ["8.4", 8.4],
    ["8.4°", 8.4],
    ["8.4 deg", 8.4],
    ["8.4 degrees", 8.4],
    ["8.4˚", 8.4],
    ["8° 24'", 8.4],
    ["8°24′", 8.4],
    ["8 deg 24 min", 8.4],
    ["-8° 24' 30\"", -(8 + 24.5 / 60)],
    ["8° 24.5'", 8 + 24.5 / 60],
    ["8 1/2°", 8.5],
    ["½°", 0.5],
    ["−1/16°", -0.0625],
    ["+90", 90],
    [-0, 0],
  ])("reads %j as %d degrees", (text, deg) => {
    const angle = parseAngle(text);
    if (!angle.ok) throw new Error(angle.mend);
    expect(angle.rad).toBeCloseTo((deg * Math.PI) / 180, 14);
    expect(Object.is(angle.rad, -0)).toBe(false);
  });

  it.each([
    "",
    "°",
    "x",
    "8 rad",
    "8.5° 3'",
    "8° 60'",
    "8° 3.5' 2\"",
    "8° 3' 61\"",
    "8° 3' 2\" 1",
    "8'",
    "8° 24",
    "1,234",
    "1/0°",
    "8 8°",
    "8°°",
    Number.NaN,
    Number.POSITIVE_INFINITY,
    "1".repeat(65),
  ])("refuses %j with a mend", (text) => {
    const angle = parseAngle(text);
    expect(angle.ok).toBe(false);
    if (!angle.ok) expect(angle.mend).not.toBe("");
  });

  it("shows degrees with the digits asked for and no negative zero", () => {
    expect(formatAngle(radFromDeg(8.4))).toBe("8.4°");
    expect(formatAngle(radFromDeg(-8.44), 2)).toBe("-8.44°");
    expect(formatAngle(-1e-9)).toBe("0.0°");
    expect(formatAngle(Math.PI / 2, 0)).toBe("90°");
    expect(() => formatAngle(Number.NaN)).toThrow(RangeError);
  });

  it("comes back from formatAngle within half of the last digit", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -7, max: 7, noNaN: true }),
        fc.integer({ min: 0, max: 8 }),
        (rad, decimals) => {
          const back = parseAngle(formatAngle(rad, decimals));
          if (!back.ok) throw new Error(back.mend);
          expect(Math.abs(back.rad - rad)).toBeLessThanOrEqual(
            radFromDeg(0.5 * 10 ** -decimals) * (1 + 1e-6),
          );
        },
      ),
      { seed: 90, numRuns: 500 },
    );
  });

  it("never throws and never gives an angle that is not finite", () => {
    const alphabet = fc.constantFrom(..."0123456789 .-+/'\"°degmin½");
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.string({ unit: alphabet, maxLength: 12 })), (text) => {
        const angle = parseAngle(text);
        if (angle.ok) expect(Number.isFinite(angle.rad)).toBe(true);
        else expect(angle.mend).not.toBe("");
      }),
      { seed: 90, numRuns: 2000 },
    );
  });
});
