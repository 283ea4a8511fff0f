import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseLength } from "../../src/units/parseLength.ts";

/** What people type, the file's units, and the length worked by hand, mm. */
const TYPED: readonly (readonly [text: string | number, units: "in" | "mm", mm: number])[] = [
  [5.625, "in", 142.875],
  [142.9, "mm", 142.9],
  [0, "in", 0],
  [-4, "in", -101.6],
  ["5 5/8", "in", 142.875],
  ["5 5/8", "mm", 5.625],
  ['5-5/8"', "in", 142.875],
  ['5-5/8"', "mm", 142.875],
  ["5 5/8 in", "mm", 142.875],
  ["5 5/8in", "mm", 142.875],
  ["5.625 in", "mm", 142.875],
  ["5.625in.", "mm", 142.875],
  ["5.625 inch", "mm", 142.875],
  ["5.625 Inches", "mm", 142.875],
  ["5 IN", "mm", 127],
  ["142.9mm", "in", 142.9],
  ["142.9 mm", "in", 142.9],
  ["142.9 millimeters", "in", 142.9],
  ["1 millimetre", "in", 1],
  ["2.5 cm", "in", 25],
  ["2.5 centimeters", "in", 25],
  ["0.25 m", "in", 250],
  ["3 metres", "in", 3000],
  ["5′", "in", 1524],
  ["5'", "mm", 1524],
  ["5 ft", "mm", 1524],
  ["1 foot", "mm", 304.8],
  ["2.5 feet", "mm", 762],
  ["5' 3 1/4\"", "mm", 1606.55],
  ["5'3 1/4\"", "mm", 1606.55],
  ["5'-3 1/4\"", "mm", 1606.55],
  ["5' - 3 1/4\"", "mm", 1606.55],
  ["5′ 3¼″", "mm", 1606.55],
  ["5’ 3¼”", "mm", 1606.55],
  ["5 ft 3 in", "mm", 1600.2],
  ["5ft3in", "mm", 1600.2],
  ["5' 3", "mm", 1600.2],
  ["5'3''", "mm", 1600.2],
  ["5''", "mm", 127],
  ["-5' 3\"", "mm", -1600.2],
  ["5⅝", "in", 142.875],
  ["5 ⅝", "in", 142.875],
  ["5-⅝", "in", 142.875],
  ["⅝", "in", 15.875],
  ["⅞in", "mm", 22.225],
  ["5/8", "in", 15.875],
  ["5⁄8", "in", 15.875],
  ["21/16", "in", 33.3375],
  ["1/3 in", "mm", 25.4 / 3],
  ["-4", "in", -101.6],
  ["−4", "in", -101.6],
  ["–4", "in", -101.6],
  ["- 4", "in", -101.6],
  ["+3.5", "in", 88.9],
  ["-1 1/2", "in", -38.1],
  ["-1-1/2", "in", -38.1],
  ["−1½", "in", -38.1],
  ["-5/8", "in", -15.875],
  [".5", "in", 12.7],
  ["5.", "in", 127],
  ["0", "in", 0],
  ["-0", "in", 0],
  ["  5   5/8   in  ", "in", 142.875],
  ["5\u00a05/8", "in", 142.875],
];

describe("parseLength", () => {
  it.each(TYPED)("reads %j in a file in %s as %d mm", (text, units, mm) => {
    const length = parseLength(text, units);
    if (!length.ok) throw new Error(length.mend);
    expect(length.mm).toBeCloseTo(mm, 10);
    expect(Object.is(length.mm, -0)).toBe(false);
  });

  it("gives tape fractions the number nearest to the exact length", () => {
    for (const [text, mm] of [
      ["3 1/2", 88.9],
      ["5 5/8", 142.875],
      ["1 1/2", 38.1],
      ["12 3/64", 305.990625],
    ] as const) {
      expect(parseLength(text, "in")).toEqual({ ok: true, mm });
    }
  });

  it.each([
    ["5 5/8 im", 'unknown unit "im"; did you mean "in"?'],
    ["5 milimeters", 'unknown unit "milimeters"; did you mean "millimeters"?'],
    ["5 fot", 'unknown unit "fot"; did you mean "ft"?'],
    ["5 hands", 'unknown unit "hands"; units of length: in, mm, ft, cm, m'],
    ["5 1/0", '"5 1/0" divides by zero; write the fraction again'],
    ["1/0 in", '"1/0" divides by zero; write the fraction again'],
    ["0/0", '"0/0" divides by zero; write the fraction again'],
    ["5 9/8", 'the fraction in "5 9/8" is not less than 1; check the reading'],
    ["1,234.5", "has a comma; write 1234.5"],
    ["1.234,5", "has a comma; write 1234.5"],
    ["1,234,567 mm", "has a comma; write 1234567"],
    ["1,234", "has a comma that can be read two ways; write 1.234 or 1234"],
    ["12,,5", "has a comma; write a decimal point and no thousands separator"],
    ["5, in", "has a comma; write a decimal point and no thousands separator"],
    ["5' 14\"", "the inches after the feet must be less than 12"],
    ["5.5' 3\"", "feet followed by inches must be whole feet"],
    ["5' 3 cm", "feet are followed by inches only"],
    ["5' -3\"", `cannot read "-3"" after the feet; write them as 5' 3 1/4"`],
  ])("refuses %j and says %s", (text, mend) => {
    expect(parseLength(text, "in")).toEqual({ ok: false, mend });
  });

  it.each([
    "",
    "   ",
    "in",
    "-",
    "NaN",
    "Infinity",
    "-Infinity",
    "nothing",
    "five",
    "--4",
    "+-4",
    "4-",
    "5 5",
    "5 5 in",
    "5-5",
    "5 -5/8",
    "5- 5/8",
    "5 - 5/8",
    "5 + 5/8",
    "5.5 5/8",
    "5.5/8",
    "5/8.5",
    "5 5/8 1/2",
    "1/2/3",
    "5 5/8/2",
    "⅝3",
    "5⅝⅝",
    "1 m 20 cm",
    "3 in 5 ft",
    "5 in 3",
    "5 in in",
    "5..5",
    "5.5.5",
    "1e",
    "e3",
    "0x10",
    "5 / 0 in",
    "5 mm 3",
    "(5)",
    "5 5/8 in x",
    "9".repeat(400),
    `1/${"9".repeat(70)}`,
    "5 in, 3 mm",
    "5%",
    "$5",
  ])("refuses %j, which is no single length", (text) => {
    const length = parseLength(text, "in");
    expect(length.ok).toBe(false);
    if (!length.ok) expect(length.mend).toMatch(/^[^\n]+[^.\n]$/);
  });

  it.each<[string, number]>([
    ["383.0", 383],
    [".5", 0.5],
    ["+383", 383],
    ["1e3", 1000],
    ["-2.5E-1 mm", -0.25],
    ["383,0", 383],
    ["142,95 mm", 142.95],
    ["0,125", 0.125],
    [",5", 0.5],
    ["1234,567", 1234.567],
  ])("reads %j as people and programs write it", (text, mm) => {
    expect(parseLength(text, "mm")).toEqual({ ok: true, mm: expect.closeTo(mm, 9) });
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.MAX_VALUE])(
    "refuses the number %d",
    (value) => {
      expect(parseLength(value, "in")).toEqual({ ok: false, mend: "must be a finite number" });
    },
  );

  it("never throws and never gives a number that is not finite", () => {
    const alphabet = fc.constantFrom(..."0123456789 .-+/'\"′″½⅝infmct,eE\u2212\u00a0");
    const texts = fc.oneof(
      fc.string(),
      fc.string({ unit: "grapheme" }),
      fc.string({ unit: alphabet, maxLength: 14 }),
    );
    fc.assert(
      fc.property(texts, fc.constantFrom("in" as const, "mm" as const), (text, units) => {
        const length = parseLength(text, units);
        if (length.ok) expect(Number.isFinite(length.mm)).toBe(true);
        else expect(length.mend).not.toBe("");
      }),
      { seed: 1959, numRuns: 3000 },
    );
  });

  it("reads every mixed number the same however its parts are joined, and its negative as the negative", () => {
    const parts = fc.record({
      whole: fc.integer({ min: 0, max: 500 }),
      over: fc.integer({ min: 0, max: 63 }),
    });
    fc.assert(
      fc.property(parts, ({ whole, over }) => {
        const mm = ((whole * 64 + over) / 64) * 25.4;
        for (const text of [
          `${whole} ${over}/64`,
          `${whole}-${over}/64"`,
          `${whole} ${over}/64 in`,
          `+${whole} ${over} / 64`,
        ]) {
          const length = parseLength(text, "in");
          expect(length.ok && Math.abs(length.mm - mm) < 1e-9).toBe(true);
          const negative = parseLength(`-${text.replace("+", "")}`, "in");
          expect(negative.ok && length.ok && negative.mm + length.mm).toBe(0);
        }
      }),
      { seed: 1959, numRuns: 500 },
    );
  });
});
