import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { evaluateLength } from "../../src/units/lengthExpression.ts";
import { parseLength } from "../../src/units/parseLength.ts";
import { plainLengthText, tapeText } from "../../src/units/plainLengthText.ts";
import { stepLength } from "../../src/units/stepLength.ts";

const inches = (text: string) => {
  const read = evaluateLength(text, "in");
  return read.ok ? read.mm / 25.4 : read.mend;
};

describe("a length typed as arithmetic", () => {
  it.each([
    ["5 5/8 + 1/8", 5.75],
    ["2*3 1/4", 6.5],
    ["3 1/4 × 2", 6.5],
    ["(5 1/2 - 1/16)/2", 2.71875],
    ["1 + 2 * 3", 7],
    ["(1 + 2) * 3", 9],
    ["10 - 2 - 3", 5],
    ["12 / 3 / 2", 2],
    ["-1/2 + 1", 0.5],
    ["5 1/2 - -1/4", 5.75],
    ["-(1 + 2)", -3],
    ["1 in + 25.4 mm", 2],
    ["(20 + 5.4) mm", 1],
    ["1 ft / 2", 6],
    [`5' 3" + 1`, 64],
    ["5⅝ + ⅛", 5.75],
    ["0 / 5", 0],
  ])("%s is %f inches", (text, value) => {
    expect(inches(text)).toBeCloseTo(value, 12);
  });

  it("tells a mixed number from a difference by the spaces about the dash, as a length without arithmetic does", () => {
    expect(inches("5-5/8")).toBe(5.625);
    expect(inches("5 - 5/8")).toBeCloseTo(4.375, 12);
    expect(inches("5-5/8 + 1/8")).toBeCloseTo(5.75, 12);
  });

  it("takes a bare number beside a length as a length in the units shown", () => {
    const read = evaluateLength("100 + 1 in", "mm");
    expect(read).toEqual({ ok: true, mm: 125.4 });
  });

  it.each([
    ["2 in * 3 in", /area/],
    ["3 in / 2 in", /no length/],
    ["6 / (2 - 2)", /divides by zero/],
    ["6/0", /divides by zero/],
    ["(1 + 2", /not closed/],
    ["1 + 2)", /too many/],
    ["5 +", /missing after "5 \+"/],
    ["+ + 1", /two signs/],
    ["2(3)", /put \+, -, \* or \//],
    ["5 5/8 5/8 + 1", /put \+, -, \* or \//],
    ["5 9/8 + 1", /not less than 1/],
    ["5 im + 1", /did you mean "in"/],
    [`5' - 3" + 1`, /two ways/],
    ["1,500 + 2", /two ways; write 1.500 or 1500/],
    ["hello", /no number/],
    ["", /empty/],
    [`${"9".repeat(60)} * ${"9".repeat(60)}`, /too large|longer/],
    [`${"(".repeat(40)}1${")".repeat(40)}`, /too many parentheses/],
    [`${"1 + ".repeat(80)}1`, /longer than/],
  ])("%s is refused with what to mend", (text, mend) => {
    expect(inches(text)).toMatch(mend);
  });

  it("gives what the same arithmetic gives on numbers, for any sum of products of plain decimals", () => {
    const number = fc.integer({ min: 1, max: 999 }).map((n) => n / 8);
    const product = fc.tuple(number, fc.option(fc.tuple(fc.constantFrom("*", "/"), number)));
    const sum = fc.array(fc.tuple(fc.constantFrom("+", "-"), product), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(sum, (terms) => {
        const value = ([a, more]: (typeof terms)[0][1]) =>
          more ? (more[0] === "*" ? a * more[1] : a / more[1]) : a;
        const wanted = terms.reduce((all, [sign, term]) => all + (sign === "+" ? 1 : -1) * value(term), 0);
        const text = terms
          .map(
            ([sign, [a, more]], i) =>
              `${i === 0 && sign === "+" ? "" : `${sign} `}${a}${more ? ` ${more[0]} ${more[1]}` : ""}`,
          )
          .join(" ");
        const read = evaluateLength(text, "mm");
        expect(read.ok && Math.abs(read.mm - wanted)).toBeLessThan(1e-9 * Math.max(1, Math.abs(wanted)));
      }),
      { seed: 1955, numRuns: 400 },
    );
  });

  it("reads every text that is a length already as that very length, and never throws", () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(..."0123456789 /-+*().,'\"inmft⅝") }), (text) => {
        const plain = parseLength(text, "in");
        const worked = evaluateLength(text, "in");
        if (plain.ok) expect(worked).toEqual(plain);
        else expect(worked.ok || worked.mend.length > 0).toBe(true);
      }),
      { seed: 1955, numRuns: 3000 },
    );
  });
});

describe("a length as plain text", () => {
  it.each([
    [5.75 * 25.4, "in", "in", "5 3/4"],
    [142.875, "mm", "mm", "142.875"],
    [149.4, "in", "in", "149.4 mm"],
    [142, "in", "mm", "142 mm"],
    [2.71875 * 25.4, "mm", "in", "2 23/32 in"],
    [0, "in", "in", "0"],
    [-4.7625, "in", "in", "-3/16"],
  ] as const)("%f mm in a file in %s, rather in %s, is %s", (mm, file, prefer, text) => {
    expect(plainLengthText(mm, file, prefer)).toBe(text);
  });

  it("gives the length back to a millionth of a micrometer or a part in 10^14", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e5, max: 1e5, noNaN: true }),
        fc.constantFrom("in", "mm"),
        (mm, units) => {
          const back = parseLength(plainLengthText(mm, units), units);
          expect(back.ok && Math.abs(back.mm - mm)).toBeLessThanOrEqual(Math.max(1e-9, 1e-14 * Math.abs(mm)));
        },
      ),
      { seed: 1955, numRuns: 1000 },
    );
  });
});

describe("stepping a length", () => {
  const sixteenth = { units: "in", size: 1 / 16 } as const;
  it.each([
    ["5 5/8", 1, sixteenth, "5 11/16"],
    ["5 5/8", -1, sixteenth, "5 9/16"],
    [5.6, 1, sixteenth, "5 5/8"],
    [5.6, -1, sixteenth, "5 9/16"],
    ["1/16", -1, sixteenth, "0"],
    [0, -1, sixteenth, "-1/16"],
    ["5 5/8", 1, { units: "in", size: 1 / 64 }, "5 41/64"],
    ["5 5/8", 1, { units: "mm", size: 1 }, "143 mm"],
    [0.1, 1, { units: "in", size: 0.01 }, "0.11"],
  ] as const)("%s, %i step, gives a whole step", (value, way, step, text) => {
    expect(stepLength(value, way, step, "in")).toBe(text);
  });

  it("goes several steps at once, and has no answer for what is no length", () => {
    expect(stepLength("5", 1, sixteenth, "in", 8)).toBe("5 1/2");
    expect(stepLength("five", 1, sixteenth, "in")).toBeNull();
  });
});

describe("a length put on a tape's nearest mark", () => {
  it.each([
    [25.4 * 5.03, "in", "5"],
    [25.4 * 5.04, "in", "5 1/16"],
    [-25.4 * 0.6, "in", "-5/8"],
    [142.4, "mm", "142"],
    [-0.4, "mm", "0"],
  ] as const)("%d mm in a file in %s is %s", (mm, units, text) => {
    expect(tapeText(mm, units)).toBe(text);
  });
});
