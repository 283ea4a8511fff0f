import { describe, expect, it, test } from "vitest";
import reference from "../../../shared/tire-sizes.json" with { type: "json" };
import { largestNewTire, tireDesignDimensions } from "../../../src/gaps/tire/designDimensions.ts";
import { parseTireSize } from "../../../src/units/tireSize.ts";

const INCH = 25.4;
const design = (text: string, rimInches: number) =>
  tireDesignDimensions(parseTireSize(text)!, rimInches * INCH);

describe("design dimensions against the published tables", () => {
  const metric = reference.sizes.filter(({ size }) => size.includes("/"));
  const flotation = reference.sizes.filter(({ size }) => size.includes("x"));

  it("has all rows of the reference table", () => {
    expect(metric).toHaveLength(14);
    expect(flotation).toHaveLength(3);
  });

  // Tolerances as the tables are quoted: ±2 mm on the diameter, ±1 mm on the width. We ask for the very number.
  test.each(metric)("$size on $rim: $odMm × $swMm ($source; $class)", ({ size, rim, odMm, swMm }) => {
    const dimensions = design(size, rim);
    expect(dimensions.diameter).toBe(odMm);
    expect(dimensions.measuringRimWidth / INCH).toBeCloseTo(rim, 12);
    expect(dimensions.measuringSectionWidth).toBe(swMm);
    expect(Math.abs(dimensions.sectionWidth - swMm)).toBeLessThanOrEqual(0.5);
  });

  // Tread types differ: ±2 mm on the width; the nominal diameter is 6 to 15 mm over the table, the safe side.
  test.each(flotation)("$size on $rim: near $odMm × $swMm ($source; $class)", ({ size, rim, odMm, swMm }) => {
    const dimensions = design(size, rim);
    expect(dimensions.measuringRimWidth / INCH).toBeCloseTo(rim, 12);
    expect(dimensions.diameter - odMm).toBeGreaterThan(6);
    expect(dimensions.diameter - odMm).toBeLessThan(15);
    expect(Math.abs(dimensions.sectionWidth - swMm)).toBeLessThanOrEqual(2);
  });
});

// ETRTO tables, from memory: the series at which the measuring rim's share changes.
test.each([
  ["245/50R16", 7.5, 652, 253],
  ["205/60R15", 6, 627, 209],
  ["225/45R17", 7.5, 634, 225],
  ["215/75R15", 6, 703, 216],
])("%s on %d: %d mm × %d mm", (size, rim, diameter, width) => {
  const dimensions = design(size, rim);
  expect(dimensions.measuringRimWidth / INCH).toBeCloseTo(rim, 12);
  expect(dimensions.diameter).toBe(diameter);
  expect(dimensions.measuringSectionWidth).toBe(width);
});

// Nominal rim diameters by code: UN R30 par. 2 / ISO 4000-1, from memory.
test.each([
  [13, 330],
  [14, 356],
  [15, 381],
  [16, 406],
  [17, 432],
  [18, 457],
  [19, 483],
  [20, 508],
  [21, 533],
  [22, 559],
  [24, 610],
])("rim code %d is %d mm", (code, diameter) => {
  expect(design(`235/70R${code}`, 7).rimDiameterNominal).toBe(diameter);
});

// UN R54, from memory: half codes, where 25.4 × 17.5 = 444.5 has to round up.
test.each([
  [16.5, 419],
  [17.5, 445],
  [19.5, 495],
])("rim code %d is %d mm", (code, diameter) => {
  expect(design(`LT235/70R${code}`, 7).rimDiameterNominal).toBe(diameter);
});

// Worked by hand from S = S_N + 0.4 (R − R_th), UN R30 par. 6.1.1.1 (its amendment text was read).
test.each([
  [6, 230.16],
  [6.5, 235.24],
  [7.5, 245.4],
  [8, 250.48],
  [8.5, 255.56],
])("235/70R15 on a %d in rim is %d mm wide and as tall as on any", (rim, width) => {
  const dimensions = design("235/70R15", rim);
  expect(dimensions.sectionWidth).toBeCloseTo(width, 9);
  expect(dimensions.diameter).toBe(711);
});

// The same rule; shops say "0.2 in per half inch of rim".
test.each(["235/70R15", "245/40R18", "31x10.50R15LT"])(
  "%s gains 5.08 mm on a rim half an inch wider",
  (size) => {
    expect(design(size, 8.5).sectionWidth - design(size, 8).sectionWidth).toBeCloseTo(5.08, 9);
  },
);

it("a section height that ends in .5 rounds up", () => {
  // 157.5 → 158 in the P225/70R15 row of the tables (ETRTO / TRA, from memory); half to even would give 158 too,
  expect(design("P225/70R15", 6.5).diameter).toBe(381 + 2 * 158);
  // 164.5 → 165 tells the two apart.
  expect(design("P235/70R15", 7).diameter).toBe(381 + 2 * 165);
});

// Limits of new tires: UN R30 par. 6.1.4 and 6.1.5, from memory; numbers worked by hand.
it("the largest new P235/70R15 is 724.2 mm tall and 249.6 mm wide", () => {
  const largest = largestNewTire(design("P235/70R15", 7));
  expect(largest.diameter).toBeCloseTo(724.2, 9);
  expect(largest.sectionWidth).toBeCloseTo(249.6, 9);
});

test.each([0, -203, Number.NaN, Number.POSITIVE_INFINITY])(
  "a rim %d mm wide is the caller's mistake",
  (rimWidth) => {
    expect(() => tireDesignDimensions(parseTireSize("235/70R15")!, rimWidth)).toThrow(/rimWidth/);
  },
);
