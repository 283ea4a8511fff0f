import { describe, expect, it } from "vitest";
import type { CheckEntry, CheckReport } from "../../../src/studies/reports/check.ts";
import { checkClearance } from "../../../src/studies/reports/check.ts";
import { sameGapSentence } from "../../../src/studies/wording/fanWords.ts";

import { assembledModel, demoSetup } from "../../reference/demoModel.ts";

const INCHES = { units: "in", fraction: 16 } as const;

function report(gap: number, bound: number, more: Partial<CheckReport> = {}, tolerance = 0.1): CheckReport {
  const worst = { gap, bound, tolerance } as CheckEntry;
  return { verdict: "rubs", worst, parts: [worst], limits: [], ...more };
}

describe("a fan whose worst gap stays", () => {
  it("says within how much, by what is proven, not by what was found alone", () => {
    expect(sameGapSentence([report(-4.03, -4.04), report(-4.06, -4.07)], INCHES)).toBe(
      "The worst gap is the same within 0.002 in at all 2 values: this field hardly moves it.",
    );
    expect(sameGapSentence([report(3, 3), report(3, 3), report(3, 3)], { units: "mm" })).toBe(
      "The worst gap is the same within 0.01 mm at all 3 values: this field hardly moves it.",
    );
  });

  it("says nothing where it moves, or may move by more than is proven", () => {
    expect(sameGapSentence([report(-4, -4.01), report(-4.2, -4.21)], INCHES)).toBeNull();
    expect(sameGapSentence([report(-4, -4.09), report(-4.05, -4.14)], INCHES)).toBeNull();
  });

  it("says nothing of one value, of an answer cut short, or of a truck that nothing is measured on", () => {
    const one = report(3, 3);
    expect(sameGapSentence([one], INCHES)).toBeNull();
    expect(sameGapSentence([one, report(3, -9, { cutShort: true }, 12)], INCHES)).toBeNull();
    expect(sameGapSentence([one, one, report(3, 3, { worst: null })], INCHES)).toBeNull();
  });

  it("is the example's: its tire's crown comes up under the lip, however the pin leans", () => {
    const reports = [6, 11].map((angle) => {
      const setup = demoSetup();
      const pinAngle = (angle * Math.PI) / 180;
      return checkClearance(assembledModel({ ...setup, knuckle: { ...setup.knuckle, pinAngle } }));
    });
    expect(sameGapSentence(reports, INCHES)).toBe(
      "The worst gap is the same within 0.002 in at all 2 values: this field hardly moves it.",
    );
  });
});
