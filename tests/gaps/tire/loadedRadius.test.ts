import { expect, it } from "vitest";
import { defaultLoadedRadius } from "../../../src/gaps/tire/tireOf.ts";

// Common practice, no source: 0.91 to 0.96 of the free radius at rated load, not to be held closer than ±3 %.
it("lies in the range the trade quotes", () => {
  expect(defaultLoadedRadius(1)).toBeGreaterThanOrEqual(0.91);
  expect(defaultLoadedRadius(1)).toBeLessThanOrEqual(0.96);
  expect(defaultLoadedRadius(355.5)).toBeCloseTo(355.5 * defaultLoadedRadius(1), 9);
});

// ETRTO Standards Manual, from memory: a radial tire rolls 3.05 × its diameter per turn. A standing tire is
// lower than the radius it rolls at, which is under its free radius.
it("is under the rolling radius", () => {
  const rollingRadius = (3.05 * 711) / (2 * Math.PI);
  expect(rollingRadius / 355.5).toBeCloseTo(0.97085, 5);
  expect(defaultLoadedRadius(355.5)).toBeLessThan(rollingRadius);
});
