import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { formatLength } from "../../src/units/formatLength.ts";
import { parseLength } from "../../src/units/parseLength.ts";

describe("formatLength", () => {
  it.each([
    [142.875, "5 5/8 in"],
    [127, "5 in"],
    [15.875, "5/8 in"],
    [12.7, "1/2 in"],
    [-4.7625, "-3/16 in"],
    [-38.1, "-1 1/2 in"],
    [0, "0 in"],
    [-0, "0 in"],
    [0.5, "0 in"],
    [-0.5, "0 in"],
    [0.79375, "1/16 in"], // half a sixteenth goes away from zero
    [-0.79375, "-1/16 in"],
    [25.3, "1 in"],
    [2540, "100 in"],
  ])("shows %d mm as %s, to the nearest sixteenth, reduced", (mm, text) => {
    expect(formatLength(mm, { units: "in" })).toBe(text);
  });

  it("goes down to 1/32, 1/64 or decimals on request", () => {
    expect(formatLength(143.2, { units: "in", fraction: 32 })).toBe("5 5/8 in");
    expect(formatLength(143.2, { units: "in", fraction: 64 })).toBe("5 41/64 in");
    expect(formatLength(143.2, { units: "in", fraction: "decimal" })).toBe("5.638 in");
    expect(formatLength(143.2, { units: "in", fraction: "decimal", decimals: 2 })).toBe("5.64 in");
    expect(formatLength(-0.001, { units: "in", fraction: "decimal" })).toBe("0.000 in");
  });

  it("shows millimeters with one decimal and no negative zero", () => {
    expect(formatLength(142.875, { units: "mm" })).toBe("142.9 mm");
    expect(formatLength(-0.01, { units: "mm" })).toBe("0.0 mm");
    expect(formatLength(-12, { units: "mm", decimals: 0 })).toBe("-12 mm");
  });

  it("refuses what is no length", () => {
    for (const mm of [Number.NaN, Number.POSITIVE_INFINITY, 1e12]) {
      expect(() => formatLength(mm, { units: "in" })).toThrow(RangeError);
    }
  });

  it("comes back through parseLength as exactly the nearest fraction", () => {
    const lengths = fc.double({ min: -1e5, max: 1e5, noNaN: true });
    fc.assert(
      fc.property(lengths, fc.constantFrom(16 as const, 32 as const, 64 as const), (mm, fraction) => {
        const text = formatLength(mm, { units: "in", fraction });
        const back = parseLength(text, "mm");
        if (!back.ok) throw new Error(`${text}: ${back.mend}`);
        const count = Math.sign(mm) * Math.round((Math.abs(mm) / 25.4) * fraction);
        const exact = parseLength(count / fraction, "in");
        expect(back).toEqual(exact);
        expect(Math.abs(back.mm - mm)).toBeLessThanOrEqual(25.4 / fraction / 2 + 1e-9);
        expect(formatLength(back.mm, { units: "in", fraction })).toBe(text);
      }),
      { seed: 16, numRuns: 1000 },
    );
  });
});
