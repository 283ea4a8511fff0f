import { describe, expect, it } from "vitest";
import type { ReadingPass } from "../../../src/studies/jig/asBuiltReport.ts";
import { passOffText, readingsNote } from "../../../src/studies/wording/asBuiltWords.ts";
import type { LengthFormat } from "../../../src/units/formatLength.ts";

const INCHES: LengthFormat = { units: "in", fraction: 64 };
const row = (off: number, tolerance: number): ReadingPass => ({
  key: "pinEndHeight",
  measure: "length",
  mustRead: 165,
  tolerance,
  isCheck: true,
  is: 165 + off,
  off,
  passes: Math.abs(off) <= tolerance,
});

describe("a reading off the jig in words", () => {
  it("never fails by what reads as its tolerance", () => {
    const sixteenth = 25.4 / 16;
    expect(passOffText(row(0.067 * 25.4, sixteenth), INCHES)).toBe("+0.067 in");
    expect(passOffText(row(-0.067 * 25.4, sixteenth), INCHES)).toBe("−0.067 in");
    expect(passOffText(row(0.06 * 25.4, sixteenth), INCHES)).toBe("+1/16 in");
    expect(passOffText(row(25.4 / 8, sixteenth), INCHES)).toBe("+1/8 in");
    expect(passOffText(row(1.52, 1.5), { units: "mm", decimals: 1 })).toBe("+1.52 mm");
  });

  it("is counted as one or as many", () => {
    expect(readingsNote(0, 0)).toBe("nothing read yet");
    expect(readingsNote(1, 0)).toBe("the one knuckle read passes");
    expect(readingsNote(2, 0)).toBe("both knuckles pass");
    expect(readingsNote(2, 1)).toBe("1 reading FAILS");
    expect(readingsNote(2, 3)).toBe("3 readings FAIL");
  });
});
