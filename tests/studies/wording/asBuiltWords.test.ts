import { describe, expect, it } from "vitest";
import type { ReadingPass } from "../../../src/studies/jig/asBuiltReport.ts";
import { truckCells } from "../../../src/studies/wording/asBuiltTruckWords.ts";
import {
  builtCells,
  passOffText,
  readingsFrom,
  readingsNote,
} from "../../../src/studies/wording/asBuiltWords.ts";
import type { LengthFormat } from "../../../src/units/formatLength.ts";

const INCHES: LengthFormat = { units: "in", fraction: 64 };
const MILLIMETERS: LengthFormat = { units: "mm", decimals: 1 };
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

  it("that came with a file is told from one typed since", () => {
    expect(readingsFrom(0, 3)).toBe("");
    expect(readingsFrom(12, 0)).toBe("12 readings came with the file; nothing was typed here since.");
    expect(readingsFrom(1, 1)).toBe("1 reading came with the file, 1 was typed since.");
  });

  it("is counted as one or as many", () => {
    expect(readingsNote(0, 0)).toBe("nothing read yet");
    expect(readingsNote(1, 0)).toBe("the one knuckle read passes");
    expect(readingsNote(2, 0)).toBe("both knuckles pass");
    expect(readingsNote(2, 1)).toBe("1 reading FAILS");
    expect(readingsNote(2, 3)).toBe("3 readings FAIL");
  });
});

describe("a knuckle as built beside the one ordered", () => {
  const IN = 25.4;
  const dimension = { key: "pinHeight", name: "Pin height", measure: "length" } as const;
  const ofTruck = { name: "Half track", measure: "length" } as const;

  it("is told in one notation, as fine as its ±, however lengths are shown elsewhere", () => {
    const built = { ...dimension, ordered: 5.375 * IN, built: 5.359 * IN, within: 0.017 * IN };
    expect(builtCells(built, INCHES)).toEqual(["5.375 in", "5.359 in", "−0.016 in", "±0.017 in"]);
    expect(builtCells(built, MILLIMETERS)).toEqual(["136.53 mm", "136.12 mm", "−0.41 mm", "±0.43 mm"]);
    const onTruck = { ...ofTruck, asOrdered: 31.545 * IN, asBuilt: 31.57 * IN, within: 0.025 * IN };
    expect(truckCells(onTruck, INCHES)).toEqual(["31.545 in", "31.570 in", "+0.025 in", "±0.025 in"]);
  });

  it("is told so too where it was not read, and with no sign where nothing is off", () => {
    const unread = { ...dimension, ordered: 5.375 * IN, built: 5.375 * IN, within: null };
    expect(builtCells(unread, INCHES)).toEqual(["5.375 in", "–", "–", "not read"]);
    expect(builtCells({ ...unread, within: 0.1 }, INCHES)[2]).toBe("0.000 in");
  });
});
