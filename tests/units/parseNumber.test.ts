import { describe, expect, it } from "vitest";
import { parseAngle } from "../../src/units/angle.ts";
import { parseNumber } from "../../src/units/parseNumber.ts";
import { parseQuantity } from "../../src/units/quantity.ts";

describe("a plain number", () => {
  it.each<[string, number]>([
    ["4", 4],
    ["383.0", 383],
    [".5", 0.5],
    ["+383", 383],
    ["−0.25", -0.25],
    ["1e3", 1000],
    ["383,0", 383],
    ["1/4", 0.25],
  ])("is read from %j", (text, value) => expect(parseNumber(text)).toEqual({ ok: true, value }));

  it.each([
    ["", /^write a number/],
    ["four", /^write a number/],
    ["4 mm", /^write a number/],
    ["1,234", /write 1.234 or 1234/],
    ["1e999", /too large/],
    ["1/0", /divides by zero/],
  ])("is not guessed from %j", (text, mend) => {
    expect(parseNumber(text)).toEqual({ ok: false, mend: expect.stringMatching(mend) });
  });
});

it("angles and quantities take the same numbers", () => {
  for (const [text, value] of [
    ["+8,5", 8.5],
    [".5", 0.5],
    ["85e-1", 8.5],
  ] as const) {
    expect(parseAngle(text)).toEqual({ ok: true, rad: expect.closeTo((value * Math.PI) / 180, 12) });
    expect(parseQuantity(text, "volume", "mm")).toEqual({ ok: true, value: expect.closeTo(value * 1e6, 3) });
  }
  expect(parseAngle("1,234")).toMatchObject({ ok: false });
});
