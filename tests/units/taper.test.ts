import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { degFromRad } from "../../src/units/angle.ts";
import { parseTaper, perFootFromIncluded, taperText, taperWords } from "../../src/units/taper.ts";

function degreesOf(text: string): number {
  const parsed = parseTaper(text);
  if (!parsed.ok) throw new Error(`${text}: ${parsed.mend}`);
  return degFromRad(parsed.included);
}

describe("a taper", () => {
  it("of 1.5 in/ft (1:8) is 7.1527° and of 2 in/ft (1:6) 9.5273° in all: 2 atan(T/24) (values of SAE J491, from memory)", () => {
    for (const text of ["1.5 in/ft", "1 1/2 in/ft", "1,5 in / ft", "1.5 inches per foot", "1:8", "1 in 8"])
      expect([text, Number(degreesOf(text).toFixed(4))]).toEqual([text, 7.1527]);
    for (const text of ["2 in/ft", "1:6", "2 tpf"]) expect(degreesOf(text)).toBeCloseTo(9.5273, 4);
    expect(degreesOf("7.15°")).toBeCloseTo(7.15, 12);
    expect(degreesOf("7° 9'")).toBeCloseTo(7.15, 12);
    expect(taperWords((7.15268 / 180) * Math.PI)).toBe("1.5 in/ft (7.153° included)");
  });

  it.each([
    ["", /^empty/],
    ["1.5", /bare number/],
    ["seven", /write a taper/],
    ["1:0", /no taper of a stud/],
    ["80°", /no taper of a stud/],
    ["0.01 in/ft", /no taper of a stud/],
    ["-1.5 in/ft", /write a taper/],
  ])("%j is refused with its mend", (text, mend) => {
    expect(parseTaper(text)).toEqual({ ok: false, mend: expect.stringMatching(mend) });
  });

  it("comes back from its text", () => {
    fc.assert(
      fc.property(fc.integer({ min: 500, max: 7000 }), (thousandths) => {
        const parsed = parseTaper(`${thousandths / 1000} in/ft`);
        expect(parsed.ok).toBe(true);
        if (!parsed.ok) return;
        expect(perFootFromIncluded(parsed.included)).toBeCloseTo(thousandths / 1000, 9);
        expect(taperText(parsed.included)).toBe(`${thousandths / 1000} in/ft`);
      }),
      { seed: 1955, numRuns: 200 },
    );
  });
});
