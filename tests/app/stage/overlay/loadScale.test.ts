import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { loadScale } from "../../../../src/app/stage/overlay/loadScale.ts";

const NEWTONS_PER_POUND = 4.4482216152605;

describe("the scale of the load arrows", () => {
  it("is a bar as long as an arrow of its force, in pounds for a truck in inches", () => {
    // 0.02 pixels a newton: a thousand pounds are 88.96 pixels, two thousand too many.
    const scale = loadScale(0.02, "in")!;
    expect(scale.text).toBe("arrow this long = 1,000 lb, seen square on");
    expect(scale.pixels).toBeCloseTo(1000 * NEWTONS_PER_POUND * 0.02, 9);
    expect(loadScale(0.02, "mm")).toEqual({ pixels: 100, text: "arrow this long = 5,000 N, seen square on" });
  });

  it("is never longer than its room and never shorter than two fifths of it, whatever the forces", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -6, max: 4, noNaN: true }),
        fc.constantFrom("in" as const, "mm" as const),
        (power, units) => {
          const { pixels } = loadScale(10 ** power, units)!;
          expect(pixels).toBeLessThanOrEqual(130 + 1e-9);
          expect(pixels).toBeGreaterThanOrEqual(0.4 * 130 - 1e-9);
        },
      ),
    );
  });

  it("is not drawn where there is no force", () => {
    expect(loadScale(0, "in")).toBeNull();
    expect(loadScale(Number.NaN, "in")).toBeNull();
  });
});
