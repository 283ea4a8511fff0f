import fc from "fast-check";
import { describe, expect, expectTypeOf, it, test } from "vitest";
import { type TireInput, tireRing, type WheelInput } from "../../../src/gaps/tire/tireOf.ts";
import type { TireSetup, WheelSetup } from "../../../src/setup/types/types.ts";

const INCH = 25.4;
const wheel: WheelInput = { rimDiameter: 15 * INCH, rimWidth: 8 * INCH, barrelDiameter: 13.75 * INCH };
const sized = (size: string, loadedRadius: number | null = null): TireInput => ({
  kind: "size",
  size,
  loadedRadius,
});

function ring(tire: TireInput, on: WheelInput = wheel) {
  const made = tireRing(tire, on);
  if (!made.ok) throw new Error(`no ring: ${made.key}: ${made.mend}`);
  return made;
}

const xs = (profile: Float64Array) => Array.from(profile).filter((_, i) => i % 2 === 0);

it("takes a setup's tire and wheel as they are", () => {
  expectTypeOf<TireSetup>().toExtend<TireInput>();
  expectTypeOf<WheelSetup>().toExtend<WheelInput>();
});

describe("a tire from its size", () => {
  // 711 mm: ISO 4000-1 / ETRTO tables, from memory; 250.48 mm on 8 in: UN R30 par. 6.1.1.1, worked by hand.
  it("has the design dimensions on this rim", () => {
    const made = ring(sized("P235/70R15"));
    expect(made.freeRadius).toBe(355.5);
    expect(made.sectionWidth).toBeCloseTo(250.48, 9);
    expect(Math.max(...xs(made.profile))).toBe(made.sectionWidth / 2);
    expect(made.barrelRadius).toBeCloseTo(174.625, 9);
    expect(made.loadedRadius).toBeCloseTo(0.95 * 355.5, 9);
    expect(made.cautions).toEqual([]);
  });

  it("a flotation size has its nominal diameter", () => {
    expect(ring(sized("31x10.50R15LT")).freeRadius).toBeCloseTo(15.5 * INCH, 9);
  });

  it("is at least as wide as the wheel over its flanges", () => {
    // Overall width = rim width + 1 in: common practice, no source.
    const wide = { ...wheel, rimDiameter: 18 * INCH, rimWidth: 9.5 * INCH };
    expect(Math.max(...xs(ring(sized("245/40R18"), wide).profile))).toBeCloseTo((10.5 * INCH) / 2, 9);
  });

  it("keeps a loaded radius that was measured", () => {
    expect(ring(sized("P235/70R15", 337.82)).loadedRadius).toBe(337.82);
  });

  // The standards round rim diameters to whole millimeters (406 for code 16), a wheel is 406.4: still one size.
  it.each([13, 14, 15, 16, 17, 18, 19, 20, 22, 24])("fits a wheel of its own code, %d", (code) => {
    expect(
      tireRing(sized(`235/70R${code}`), { ...wheel, rimDiameter: code * INCH, barrelDiameter: 300 }).ok,
    ).toBe(true);
  });

  it("takes a rim diameter measured up to a quarter inch off", () => {
    expect(tireRing(sized("P235/70R15"), { ...wheel, rimDiameter: 15.25 * INCH }).ok).toBe(true);
    expect(tireRing(sized("P235/70R15"), { ...wheel, rimDiameter: 14.75 * INCH }).ok).toBe(true);
  });
});

// Allowed rims: TRA / ETRTO tables, from memory; the ends of the ranges differ between books.
test.each([
  ["195/65R15", 5.5, 7],
  ["205/55R16", 5.5, 7.5],
  ["225/45R17", 7, 8.5],
  ["P235/75R15", 6, 8],
  ["P235/70R15", 6, 8.5],
  ["LT235/85R16", 6, 7.5],
  ["LT245/75R16", 6.5, 8],
  ["LT265/75R16", 7, 8],
  ["31x10.50R15LT", 7, 9],
  ["33x12.50R15LT", 8.5, 11],
])("%s is not cautioned about on allowed rims, %d to %d in, and is far outside them", (size, low, high) => {
  const rimDiameter = Number(/[R](\d+)/.exec(size)![1]) * INCH;
  const cautions = (rimInches: number) =>
    ring(sized(size), { ...wheel, rimDiameter, rimWidth: rimInches * INCH }).cautions;
  expect(cautions(low)).toEqual([]);
  expect(cautions(high)).toEqual([]);
  expect(cautions(low - 2)).toMatchObject([{ key: "wheel.rimWidth" }]);
  expect(cautions(high + 2)[0]).toMatchObject({ key: "wheel.rimWidth" });
});

describe("a tire from its dimensions", () => {
  const dimensions = {
    kind: "dimensions",
    diameter: 700,
    sectionWidth: 240,
    treadWidth: 180,
    loadedRadius: null,
  } as const;

  it("has those dimensions, whatever the rim width", () => {
    const made = ring(dimensions, { ...wheel, rimWidth: 7 * INCH });
    expect(made.freeRadius).toBe(350);
    expect(made.sectionWidth).toBe(240);
    expect(Math.max(...xs(made.profile))).toBe(120);
  });

  it("stretched over a wider rim it is cautioned about", () => {
    expect(ring({ ...dimensions, sectionWidth: 195 }).cautions).toMatchObject([{ key: "wheel.rimWidth" }]);
    expect(ring(dimensions).cautions).toEqual([]);
  });

  it("names the dimension that cannot be", () => {
    expect(tireRing({ ...dimensions, treadWidth: 250 }, wheel)).toMatchObject({
      ok: false,
      key: "tire.treadWidth",
    });
    expect(tireRing({ ...dimensions, diameter: 380 }, wheel)).toMatchObject({
      ok: false,
      key: "tire.diameter",
    });
  });
});

describe("a measured tire", () => {
  const profile = [
    [-100, 190],
    [-124, 270],
    [-90, 352],
    [0, 356],
    [90, 352],
    [120, 270],
    [100, 190],
  ] as const;

  it("is taken to the bit", () => {
    const made = ring({ kind: "profile", profile, loadedRadius: null });
    expect(Array.from(made.profile)).toEqual(profile.flat());
    expect(made.freeRadius).toBe(356);
    expect(made.sectionWidth).toBe(244);
  });

  it("that crosses itself names the profile", () => {
    const crossed = [profile[0], profile[4], profile[2], profile[6]];
    expect(tireRing({ kind: "profile", profile: crossed, loadedRadius: null }, wheel)).toMatchObject({
      ok: false,
      key: "tire.profile",
    });
  });
});

describe("what cannot be", () => {
  const large = { ...wheel, rimDiameter: 16 * INCH };
  test.each<[string, string, RegExp, TireInput, WheelInput]>([
    ["no size", "tire.size", /sidewall/, sized("fat ones"), wheel],
    ["another rim", "tire.size", /15 in rim and wheel\.rimDiameter is 16 in/, sized("P235/70R15"), large],
    ["a 16.5 on a 16", "tire.size", /16\.5 in rim/, sized("LT235/70R16.5"), large],
    [
      "a loaded radius over the free one",
      "tire.loadedRadius",
      /355\.5 mm \(14\.00 in\)/,
      sized("P235/70R15", 356),
      wheel,
    ],
    ["a loaded radius inside the barrel", "tire.loadedRadius", /barrel/, sized("P235/70R15", 13.3), wheel],
    ["no loaded radius", "tire.loadedRadius", /barrel/, sized("P235/70R15", Number.NaN), wheel],
    ["no rim width", "wheel.rimWidth", /greater than 0/, sized("P235/70R15"), { ...wheel, rimWidth: 0 }],
    [
      "no rim diameter",
      "wheel.rimDiameter",
      /greater than 0/,
      sized("P235/70R15"),
      { ...wheel, rimDiameter: Number.NaN },
    ],
    [
      "a barrel over the rim",
      "wheel.barrelDiameter",
      /larger than the rim/,
      sized("P235/70R15"),
      { ...wheel, barrelDiameter: 400 },
    ],
  ])("%s names %s", (_, key, mend, tire, on) => {
    expect(tireRing(tire, on)).toEqual({ ok: false, key, mend: expect.stringMatching(mend) });
  });

  it("is never NaN and never thrown, whatever numbers come", () => {
    const wild = () => fc.oneof(fc.double(), fc.double({ min: 1, max: 900, noNaN: true }));
    const tire = fc.oneof(
      fc.record({
        kind: fc.constant("size" as const),
        size: fc.constantFrom("P235/70R15", "31x10.50R15LT", "x"),
        loadedRadius: fc.option(wild()),
      }),
      fc.record({
        kind: fc.constant("dimensions" as const),
        diameter: wild(),
        sectionWidth: wild(),
        treadWidth: fc.option(wild()),
        loadedRadius: fc.option(wild()),
      }),
      fc.record({
        kind: fc.constant("profile" as const),
        profile: fc.array(fc.tuple(wild(), wild()), { maxLength: 8 }),
        loadedRadius: fc.option(wild()),
      }),
    );
    const anyWheel = fc.record({
      rimDiameter: fc.oneof(wild(), fc.constant(381)),
      rimWidth: wild(),
      barrelDiameter: wild(),
    });
    let rings = 0;
    fc.assert(
      fc.property(tire, anyWheel, (someTire, someWheel) => {
        const made = tireRing(someTire, someWheel);
        if (!made.ok) {
          expect(made.key).toMatch(/^(tire|wheel)\./);
          expect(made.mend).not.toMatch(/NaN|undefined/);
          return;
        }
        rings++;
        expect(
          [...made.profile, made.freeRadius, made.loadedRadius, made.barrelRadius].every(Number.isFinite),
        ).toBe(true);
        expect(made.freeRadius).toBe(Math.max(...Array.from(made.profile).filter((_, i) => i % 2 === 1)));
      }),
      { seed: 1955, numRuns: 3000 },
    );
    expect(rings).toBeGreaterThan(50);
  });
});
