import { describe, expect, it } from "vitest";
import { lengthText, tellingFormat } from "../../../src/studies/wording/lengths.ts";

const INCHES = { units: "in", fraction: 16 } as const;

describe("the format of numbers side by side", () => {
  it("stays as it is while each reads otherwise, or is the same to any tape", () => {
    expect(tellingFormat([3, 6, 12], lengthText, INCHES)).toBe(INCHES);
    expect(tellingFormat([6, 6.01, 12], lengthText, INCHES)).toBe(INCHES);
    expect(tellingFormat([], lengthText, INCHES)).toBe(INCHES);
  });

  it("is decimals where sixteenths hide that they differ", () => {
    const format = tellingFormat([6, 6.4, 6.8], lengthText, INCHES);
    expect([6, 6.4, 6.8].map((mm) => lengthText(mm, format))).toEqual(["0.236 in", "0.252 in", "0.268 in"]);
    // Many small steps are a trend too.
    expect(tellingFormat([6.06, 6.0, 6.03], lengthText, INCHES)).toEqual({
      ...{ units: "in", fraction: "decimal", decimals: 3 },
    });
    const metric = tellingFormat([6, 6.08], lengthText, { units: "mm", decimals: 0 });
    expect([6, 6.08].map((mm) => lengthText(mm, metric))).toEqual(["6.00 mm", "6.08 mm"]);
  });
});
