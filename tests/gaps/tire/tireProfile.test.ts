import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import {
  DEFAULT_TREAD_SHARE,
  type TireProfileDimensions,
  tireProfile,
} from "../../../src/gaps/tire/tireProfile.ts";
import { runs } from "../../runs.ts";

type Row = [x: number, r: number];

function rowsOf(dimensions: TireProfileDimensions): Row[] {
  const made = tireProfile(dimensions);
  if (!made.ok) throw new Error(`no profile: ${made.key}: ${made.mend}`);
  return Array.from(
    { length: made.profile.length / 2 },
    (_, i): Row => [made.profile[2 * i]!, made.profile[2 * i + 1]!],
  );
}

/** Signed distance from a point to the line of the profile's edge `i`, + = outside the tire. */
function outside(rows: readonly Row[], i: number, [x, r]: Row): number {
  const [x0, r0] = rows[i]!;
  const [x1, r1] = rows[i + 1]!;
  const dx = x1 - x0;
  const dr = r1 - r0;
  return (dx * (r - r0) - dr * (x - x0)) / Math.sqrt(dx * dx + dr * dr);
}

/** How far a point stands out of a convex profile, by its edges alone; negative = inside. */
const farthestOutside = (rows: readonly Row[], point: Row): number =>
  Math.max(...rows.slice(1).map((_, i) => outside(rows, i, point)));

/** The sine of the turn at each inner corner: + = the outline keeps turning toward the tire. */
function turns(rows: readonly Row[]): number[] {
  return rows.slice(2).map((next, i) => {
    const [x0, r0] = rows[i]!;
    const [x1, r1] = rows[i + 1]!;
    const cross = (x1 - x0) * (next[1] - r1) - (r1 - r0) * (next[0] - x1);
    return -cross / (Math.hypot(x1 - x0, r1 - r0) * Math.hypot(next[0] - x1, next[1] - r1));
  });
}

/** The smooth outboard outline, sampled: two quarter ellipses and the tread, as `tireOutline` describes it. */
function smoothOutline(d: TireProfileDimensions, count: number): Row[] {
  const treadX = (d.treadWidth ?? DEFAULT_TREAD_SHARE * d.sectionWidth) / 2;
  const beadX = d.rimWidth / 2;
  const widestX = Math.max(d.sectionWidth, d.rimWidth) / 2;
  const widestR = (d.rimDiameter + d.diameter) / 4;
  const half = (d.diameter - d.rimDiameter) / 4;
  const rows: Row[] = [[0, d.diameter / 2]];
  for (let i = 0; i <= count; i++) {
    const t = (i / count) * (Math.PI / 2);
    rows.push([treadX + (widestX - treadX) * Math.cos(t), widestR + half * Math.sin(t)]);
    rows.push([beadX + (widestX - beadX) * Math.cos(t), widestR - half * Math.sin(t)]);
  }
  return rows;
}

/** P235/70R15 on an 8 in rim. */
const halfTon: TireProfileDimensions = {
  diameter: 711,
  sectionWidth: 250.48,
  rimDiameter: 381,
  rimWidth: 203.2,
};
const flange = { width: 12.7, height: 17.5 };

/** Tires of all proportions, stretched ones too. */
const anyTire = () =>
  fc
    .record({
      sectionWidth: fc.double({ min: 100, max: 480, noNaN: true }),
      rimWidth: fc.double({ min: 75, max: 450, noNaN: true }),
      rimDiameter: fc.double({ min: 250, max: 660, noNaN: true }),
      sectionHeight: fc.double({ min: 25, max: 300, noNaN: true }),
      treadShare: fc.oneof(fc.constant(1), fc.double({ min: 0.3, max: 1, noNaN: true })),
      withFlange: fc.boolean(),
    })
    .map(({ sectionHeight, treadShare, withFlange, ...rest }) => ({
      ...rest,
      diameter: rest.rimDiameter + 2 * sectionHeight,
      treadWidth: rest.sectionWidth * treadShare,
      ...(withFlange ? { flange } : {}),
    }));

/** Tires as sold: on rims they are allowed on, up to 900 mm. */
const soldTire = () =>
  fc
    .record({
      sectionWidth: fc.double({ min: 145, max: 330, noNaN: true }),
      rimShare: fc.double({ min: 0.62, max: 0.98, noNaN: true }),
      rimDiameter: fc.double({ min: 330, max: 610, noNaN: true }),
      aspect: fc.double({ min: 0.3, max: 0.85, noNaN: true }),
      treadShare: fc.double({ min: 0.7, max: 0.9, noNaN: true }),
    })
    .map(({ rimShare, treadShare, aspect, sectionWidth, rimDiameter }) => ({
      sectionWidth,
      rimDiameter,
      rimWidth: rimShare * sectionWidth,
      treadWidth: treadShare * sectionWidth,
      diameter: Math.min(900, rimDiameter + 2 * aspect * sectionWidth),
    }));

const RUNS = { seed: 1955, numRuns: runs(200, 600) };

describe("the profile of any tire", () => {
  it("is finite, runs from bead to bead and mirrors exactly", () => {
    fc.assert(
      fc.property(anyTire(), (tire) => {
        const rows = rowsOf(tire);
        expect(rows.flat().every(Number.isFinite)).toBe(true);
        expect(rows[0]).toEqual([-tire.rimWidth / 2, tire.rimDiameter / 2]);
        expect(rows.at(-1)).toEqual([tire.rimWidth / 2, tire.rimDiameter / 2]);
        expect(rows.map(([x, r]) => [-x, r]).reverse()).toEqual(rows);
      }),
      RUNS,
    );
  });

  it("turns one way only", () => {
    fc.assert(
      fc.property(anyTire(), (tire) => {
        for (const turn of turns(rowsOf(tire))) expect(turn).toBeGreaterThan(-1e-9);
      }),
      RUNS,
    );
  });

  it("has no two points in one place", () => {
    fc.assert(
      fc.property(anyTire(), (tire) => {
        const rows = rowsOf(tire);
        for (const [i, [x, r]] of rows.slice(1).entries()) {
          expect(Math.hypot(x - rows[i]![0], r - rows[i]![1])).toBeGreaterThan(0);
        }
      }),
      RUNS,
    );
  });

  it("reaches the diameter and the widest width exactly and no farther", () => {
    fc.assert(
      fc.property(anyTire(), (tire) => {
        const rows = rowsOf(tire);
        const overRim = tire.rimWidth + ("flange" in tire ? 2 * flange.width : 0);
        const widest = Math.max(...rows.map(([x]) => Math.abs(x)));
        expect(Math.max(...rows.map(([, r]) => r))).toBe(tire.diameter / 2);
        expect(Math.min(...rows.map(([, r]) => r))).toBe(tire.rimDiameter / 2);
        if (tire.sectionWidth >= overRim) expect(widest).toBe(tire.sectionWidth / 2);
        else expect(widest).toBeCloseTo(overRim / 2, 9);
      }),
      RUNS,
    );
  });

  it("never cuts into the smooth outline", () => {
    fc.assert(
      fc.property(anyTire(), (tire) => {
        const rows = rowsOf(tire);
        for (const point of smoothOutline(tire, 40)) expect(farthestOutside(rows, point)).toBeLessThan(1e-9);
      }),
      RUNS,
    );
  });

  it("grows with the section width: a wider tire holds the narrower one", () => {
    fc.assert(
      fc.property(soldTire(), fc.double({ min: 5, max: 40, noNaN: true }), (tire, wider) => {
        // The corners of the narrow tire stand off its smooth outline by under 0.7 mm, hence the allowance.
        const rows = rowsOf({ ...tire, sectionWidth: tire.sectionWidth + wider });
        for (const point of rowsOf(tire)) expect(farthestOutside(rows, point)).toBeLessThan(0.7);
      }),
      RUNS,
    );
  });
});

/** How far each outboard corner stands off the smooth outline; the sampling adds at most 1e-3 mm. */
function standOffs(tire: TireProfileDimensions): { r: number; off: number }[] {
  const smooth = smoothOutline(tire, 2000);
  const treadX = (tire.treadWidth ?? DEFAULT_TREAD_SHARE * tire.sectionWidth) / 2;
  return rowsOf(tire)
    .filter(([x, r]) => x > 0 && !(r === tire.diameter / 2 && x <= treadX))
    .map(([x, r]) => ({
      r,
      off: Math.sqrt(Math.min(...smooth.map(([sx, sr]) => (sx - x) ** 2 + (sr - r) ** 2))),
    }));
}

it("corners of tires as sold stand less than 0.7 mm off the smooth outline", () => {
  fc.assert(
    fc.property(soldTire(), (tire) => {
      for (const { off } of standOffs(tire)) expect(off).toBeLessThan(0.7);
    }),
    { seed: 1955, numRuns: runs(80, 200) },
  );
});

it("shoulder corners of a half-ton's tire stand less than 0.25 mm off it", () => {
  const shoulder = standOffs(halfTon).filter(({ r }) => r > 273);
  expect(shoulder).toHaveLength(8);
  for (const { off } of shoulder) expect(off).toBeLessThan(0.25);
});

describe("a half-ton's tire, P235/70R15 on an 8 in rim", () => {
  it("has 30 points and is widest at half its section height", () => {
    const rows = rowsOf(halfTon);
    expect(rows).toHaveLength(30);
    const widest = rows.filter(([x]) => x === 125.24).map(([, r]) => r);
    expect(widest).toHaveLength(2);
    const middle = (190.5 + 355.5) / 2;
    expect(Math.min(...widest)).toBeLessThan(middle);
    expect(Math.max(...widest)).toBeGreaterThan(middle);
  });

  it("has a flat tread of the default share, a touch wider for the corners outside the shoulder", () => {
    const edge = Math.max(
      ...rowsOf(halfTon)
        .filter(([, r]) => r === 355.5)
        .map(([x]) => x),
    );
    expect(edge).toBeGreaterThanOrEqual((250.48 * 0.78) / 2);
    expect(edge).toBeLessThan((250.48 * 0.78) / 2 + 3);
  });

  it("has a tighter shoulder with a wider tread", () => {
    const narrow = rowsOf({ ...halfTon, treadWidth: 170 });
    const wide = rowsOf({ ...halfTon, treadWidth: 220 });
    const cornerOfWide: Row = [115, 350];
    expect(farthestOutside(wide, cornerOfWide)).toBeLessThan(0);
    expect(farthestOutside(narrow, cornerOfWide)).toBeGreaterThan(5);
  });

  it("holds the rim flanges when they are given, and only adds to the tire", () => {
    const rows = rowsOf({ ...halfTon, flange });
    for (const corner of [
      [114.3, 190.5],
      [114.3, 208],
      [-114.3, 190.5],
      [-114.3, 208],
    ] as Row[]) {
      expect(farthestOutside(rows, corner)).toBeLessThan(1e-9);
    }
    for (const point of rowsOf(halfTon)) expect(farthestOutside(rows, point)).toBeLessThan(1e-9);
    expect(Math.max(...rows.map(([x]) => x))).toBe(125.24);
  });
});

describe("odd proportions", () => {
  it("a rim wider than the tire is the widest place, the sidewall straight up from the bead", () => {
    const rows = rowsOf({ ...halfTon, sectionWidth: 190 });
    expect(Math.max(...rows.map(([x]) => x))).toBe(101.6);
    expect(rows.at(-2)![0]).toBe(101.6);
    expect(rows.at(-2)![1]).toBeGreaterThan(273);
  });

  it("a tread as wide as the section has a square shoulder", () => {
    expect(rowsOf({ ...halfTon, treadWidth: 250.48 })).toContainEqual([125.24, 355.5]);
  });

  it("a tire as wide as its rim and its tread is a plain box", () => {
    const box = { diameter: 700, rimDiameter: 400, sectionWidth: 200, treadWidth: 200, rimWidth: 200 };
    expect(rowsOf(box)).toEqual([
      [-100, 200],
      [-100, 350],
      [100, 350],
      [100, 200],
    ]);
  });

  test.each([
    ["tire.treadWidth", { treadWidth: 250.49 }],
    ["tire.treadWidth", { treadWidth: 0 }],
    ["tire.diameter", { diameter: 381 }],
    ["tire.diameter", { diameter: Number.POSITIVE_INFINITY }],
    ["tire.sectionWidth", { sectionWidth: -250 }],
    ["tire.sectionWidth", { sectionWidth: Number.NaN }],
    ["wheel.rimWidth", { rimWidth: 0 }],
    ["wheel.rimDiameter", { rimDiameter: Number.NaN }],
  ])("what cannot be names %s: %j", (key, wrong) => {
    expect(tireProfile({ ...halfTon, ...wrong })).toMatchObject({
      ok: false,
      key,
      mend: expect.stringMatching(/\w/),
    });
  });
});
