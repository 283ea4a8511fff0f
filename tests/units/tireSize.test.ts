import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { describeTireSizeForms, parseTireSize } from "../../src/units/tireSize.ts";

const P235 = {
  kind: "metric",
  service: "P",
  nominalWidthMm: 235,
  aspectPercent: 70,
  construction: "radial",
  rimCode: 15,
};
const FLOAT31 = {
  kind: "flotation",
  service: "LT",
  nominalDiameterInches: 31,
  nominalWidthInches: 10.5,
  construction: "radial",
  rimCode: 15,
};

describe("metric sizes", () => {
  test.each([
    ["P235/70R15", P235],
    ["p235/70r15", P235],
    ["  P 235 / 70 R 15 ", P235],
    ["P235/70R15 102T", P235],
    ["P235/70R15 (102T)", P235],
    ["P235/70R15 102T XL M+S OWL", P235],
    ["235/70R15", { ...P235, service: null }],
    ["235/70ZR15", { ...P235, service: null }],
    ["235/70HR15", { ...P235, service: null }],
    ["235/70-15", { ...P235, service: null, construction: "diagonal" }],
    ["235/70D15", { ...P235, service: null, construction: "diagonal" }],
    ["235/70B15", { ...P235, service: null, construction: "belted bias" }],
    ["235/70R15C 108/106S", { ...P235, service: null }],
    ["LT245/75R16", { ...P235, service: "LT", nominalWidthMm: 245, aspectPercent: 75, rimCode: 16 }],
    ["LT245/75R16/E", { ...P235, service: "LT", nominalWidthMm: 245, aspectPercent: 75, rimCode: 16 }],
    [
      "LT245/75R16 120/116S LRE",
      { ...P235, service: "LT", nominalWidthMm: 245, aspectPercent: 75, rimCode: 16 },
    ],
    ["245/75R16LT", { ...P235, service: "LT", nominalWidthMm: 245, aspectPercent: 75, rimCode: 16 }],
    ["ST225/90R17.5", { ...P235, service: "ST", nominalWidthMm: 225, aspectPercent: 90, rimCode: 17.5 }],
    ["T125/70D15", { ...P235, service: "T", nominalWidthMm: 125, construction: "diagonal" }],
  ])("%s is read", (text, size) => {
    expect(parseTireSize(text)).toEqual(size);
  });

  const xl = { ...P235, service: null, aspectPercent: 75 };
  test.each([
    "235/75R15XL",
    "235/75r15xl",
    "235/75R15 XL",
    "235/75 R15 XL",
    "235/75R15 Extra Load",
    "235/75R15 Reinforced",
    "235/75R15XL 109T",
    "235/75R15 XL 109T",
    "235/75R15 109T XL",
    "235/75R15 109TXL",
    "235/75R15 105s",
    "235/75R15 (105S) M+S",
    "235/75R15XL (109T) TL",
    "235/75R15 load range C",
    "235/75R15 104/101Q/C",
    "235/75R15 6PR",
  ])("%s is the size alone, whatever is marked behind it", (text) => {
    expect(parseTireSize(text)).toEqual(xl);
  });

  it("reads marks behind a light truck's size too", () => {
    for (const text of [
      "LT235/75R15/C",
      "LT235/75R15/C 104/101Q",
      "lt235/75r15 lrc",
      "LT235/75R15 104/101Q/C",
    ])
      expect(parseTireSize(text)).toEqual({ ...xl, service: "LT" });
    expect(parseTireSize("31x10.50R15LT/C 109Q XL")).toMatchObject({ kind: "flotation", rimCode: 15 });
  });
});

describe("flotation sizes", () => {
  test.each([
    ["31x10.50R15LT", FLOAT31],
    ["31X10.5R15LT", FLOAT31],
    ["31 x 10.50 R 15 LT", FLOAT31],
    ["31×10,50R15LT", FLOAT31],
    ["31x10.50R15LT/C 109Q", FLOAT31],
    ["LT31x10.50R15", FLOAT31],
    ["31X10.5-15", { ...FLOAT31, service: null, construction: "diagonal" }],
    ["37x12.50R16.5LT", { ...FLOAT31, nominalDiameterInches: 37, nominalWidthInches: 12.5, rimCode: 16.5 }],
  ])("%s is read", (text, size) => {
    expect(parseTireSize(text)).toEqual(size);
  });
});

describe("what is no size", () => {
  test.each([
    "",
    "tire",
    "235/70",
    "235/70R",
    "235/7015",
    "23/70R15",
    "2350/70R15",
    "235/700R15",
    "235/70R99",
    "235/70R15 102T please",
    "235/70R15102T",
    "235/70R15 102T 102T",
    "235/70R15XLX",
    "235/70R15 XLARGE",
    "235/70RXL15",
    "XL235/70R15",
    "235/70R15 102",
    "235/70R15/Z",
    "235/70R15 Load Range",
    "-235/70R15",
    "235//70R15",
    "235/70Q15",
    "GR70-15",
    "7.50-16",
    "220/55R390",
    "31x10.50R29LT",
    "310x10.50R15",
    "31x0.50R15",
    "31x10.50",
    "NaN/70R15",
    "235/70R15\n235/70R15",
  ])("%j is refused", (text) => {
    expect(parseTireSize(text)).toBeNull();
  });

  it("refuses a pasted page at once", () => {
    expect(parseTireSize(`235/70R15${" ".repeat(1e6)}102T`)).toBeNull();
  });

  it("reads or refuses any text, without throwing or inventing numbers", () => {
    const near = fc.stringMatching(/^[PLT]{0,2}[0-9]{0,4}[x/ ]?[0-9.]{0,5}[RDB-]?[0-9.]{0,4}[ LT]{0,3}$/);
    fc.assert(
      fc.property(fc.oneof(fc.string(), near), (text) => {
        const size = parseTireSize(text);
        for (const value of Object.values(size ?? {})) {
          if (typeof value === "number") expect(Number.isFinite(value) && value > 0).toBe(true);
        }
      }),
      { seed: 1955, numRuns: 2000 },
    );
  });
});

it("reads back every metric size it could be given", () => {
  const sizes = fc.record({
    width: fc.integer({ min: 13, max: 47 }).map((tens) => tens * 10 + 5),
    aspect: fc.integer({ min: 4, max: 17 }).map((fives) => fives * 5),
    rim: fc.integer({ min: 13, max: 26 }),
    lower: fc.boolean(),
  });
  fc.assert(
    fc.property(sizes, ({ width, aspect, rim, lower }) => {
      const text = `LT${width}/${aspect}R${rim}`;
      expect(parseTireSize(lower ? text.toLowerCase() : text)).toMatchObject({
        nominalWidthMm: width,
        aspectPercent: aspect,
        rimCode: rim,
      });
    }),
    { seed: 1955, numRuns: 500 },
  );
});

it("names only forms that it reads", () => {
  const forms = describeTireSizeForms.match(/\S*\d\S*R\d+\w*/g) ?? [];
  expect(forms).toHaveLength(4);
  for (const form of forms) expect(parseTireSize(form)).not.toBeNull();
});
