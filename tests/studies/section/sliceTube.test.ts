import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Vec3 } from "../../../src/geometry/vec.ts";
import {
  type Outline,
  outlineArea,
  type SectionPlane,
  sheetAxes,
} from "../../../src/studies/section/outline.ts";
import { sliceTube } from "../../../src/studies/section/slicePart.ts";
import { partSolid, solidModeler } from "../../reference/mesh/solids.ts";
import { runs } from "../../runs.ts";

const area = (outlines: readonly Outline[]) =>
  outlines.reduce((sum, one) => sum + Math.abs(outlineArea(one)), 0);

/** Even-odd area, so that holes count as holes whichever way the outlines run: by rows, midpoints. */
function filledArea(outlines: readonly Outline[], step: number): number {
  let total = 0;
  const vs = outlines.flatMap(({ points }) => [...points].filter((_, i) => i % 2 === 1));
  if (vs.length === 0) return 0;
  for (let v = Math.min(...vs) + step / 2; v < Math.max(...vs); v += step) {
    const crossings = outlines.flatMap(({ points }) => {
      const found: number[] = [];
      for (let i = 0, j = points.length - 2; i < points.length; j = i, i += 2) {
        const [vi, vj] = [points[i + 1]!, points[j + 1]!];
        if (vi > v !== vj > v) found.push(points[i]! + ((v - vi) / (vj - vi)) * (points[j]! - points[i]!));
      }
      return found;
    });
    crossings.sort((a, b) => a - b);
    for (let i = 0; i + 1 < crossings.length; i += 2) total += step * (crossings[i + 1]! - crossings[i]!);
  }
  return total;
}

/** Distance of a point of the sheet from the tube's middle line, the slow plain way. */
function middleDistance(points: readonly Vec3[], plane: SectionPlane, u: number, v: number): number {
  const { normal, right, up } = sheetAxes(plane);
  const p = [0, 0, 0];
  [p[normal], p[right], p[up]] = [plane.at, u, v];
  const dist = (a: readonly number[], b: readonly number[]) =>
    Math.hypot(...a.map((value, i) => value - b[i]!));
  let best = dist(p, points[0]!);
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1]!, points[i]!];
    const way = b.map((value, k) => value - a[k]!);
    const lengthSq = way.reduce((sum, w) => sum + w * w, 0);
    const dot = way.reduce((sum, w, k) => sum + w * (p[k]! - a[k]!), 0);
    const share = lengthSq > 0 ? Math.min(Math.max(dot / lengthSq, 0), 1) : 0;
    best = Math.min(
      best,
      dist(
        p,
        a.map((value, k) => value + share * way[k]!),
      ),
    );
  }
  return best;
}

function expectOnSurface(
  outlines: readonly Outline[],
  points: readonly Vec3[],
  radius: number,
  plane: SectionPlane,
) {
  for (const outline of outlines) {
    for (let i = 0; i < outline.points.length; i += 2) {
      expect(middleDistance(points, plane, outline.points[i]!, outline.points[i + 1]!)).toBeCloseTo(
        radius,
        6,
      );
    }
  }
}

describe("known sections of a tube", () => {
  it("square across it is a circle, aslant an ellipse, lengthwise a slot with round ends", () => {
    const tube: Vec3[] = [
      [-50, 0, 0],
      [50, 0, 0],
    ];
    const [round, ...none] = sliceTube(tube, 4, { axis: "x", at: 10 });
    expect(none).toEqual([]);
    expect(Math.abs(outlineArea(round!))).toBeCloseTo(Math.PI * 16, 0);
    expect(Math.abs(outlineArea(round!))).toBeGreaterThan(Math.PI * (4 - 0.005) ** 2);

    const slope = Math.PI / 6;
    const aslant = tube.map(([x]): Vec3 => [x * Math.sin(slope), x * Math.cos(slope), 3]);
    const ellipse = sliceTube(aslant, 4, { axis: "x", at: 1 });
    expect(ellipse.map((one) => one.closed)).toEqual([true]);
    expect(area(ellipse)).toBeGreaterThan((Math.PI * 16 * 0.998) / Math.sin(slope));
    expect(area(ellipse)).toBeLessThan((Math.PI * 16) / Math.sin(slope));

    for (const at of [0, 1.5, -3.9]) {
      const half = Math.sqrt(16 - at * at);
      const slot = sliceTube(tube, 4, { axis: "z", at });
      expect(slot.map((one) => one.closed)).toEqual([true]);
      const exact = 200 * half + Math.PI * half ** 2;
      expect(area(slot)).toBeLessThan(exact);
      expect(area(slot)).toBeGreaterThan(exact - 2 * Math.PI * half * 0.005 - 1e-9);
    }
  });

  it("nearly lengthwise it stays a closed slot, whatever the slope", () => {
    for (const rise of [1e-2, 1e-3, 1e-6, 1e-9, 1e-12, 1e-15, 0]) {
      const slot = sliceTube(
        [
          [-500, 0, -rise],
          [500, 0, rise],
        ],
        4,
        { axis: "z", at: 0 },
      );
      expect(slot.map((one) => one.closed)).toEqual([true]);
      expect(area(slot)).toBeCloseTo(8000 + Math.PI * 16, 0);
    }
  });

  it("a straight tube given in many legs is one outline, as of one leg", () => {
    const ends: Vec3[] = [
      [-60, -7, 2],
      [60, 11, 5],
    ];
    const many = Array.from(
      { length: 13 },
      (_, i) => ends[0]!.map((a, k) => a + (i / 12) * (ends[1]![k]! - a)) as unknown as Vec3,
    );
    for (const plane of [
      { axis: "z", at: 3.5 },
      { axis: "x", at: 10 },
      { axis: "y", at: 2 },
    ] as const) {
      const [one, split] = [sliceTube(ends, 4, plane), sliceTube(many, 4, plane)];
      expect(split.map((outline) => outline.closed)).toEqual([true]);
      expect(area(split)).toBeCloseTo(area(one), 0);
    }
  });

  it("a single point is a ball, repeated points and a ring of points are no trouble", () => {
    const circle = sliceTube([[1, 2, 3]], 5, { axis: "z", at: 6 });
    expect(circle.map((one) => one.closed)).toEqual([true]);
    expect(area(circle)).toBeCloseTo(Math.PI * 16, 0);
    const square: Vec3[] = [
      [0, 0, 0],
      [40, 0, 0],
      [40, 0, 0],
      [40, 40, 0],
      [0, 40, 0],
      [0, 0, 0],
    ];
    const frame = sliceTube(square, 3, { axis: "z", at: 0 });
    expect(frame.map((one) => one.closed)).toEqual([true, true]);
    // Straight sides, and a quarter of a circle at each outer corner.
    expect(filledArea(frame, 0.01)).toBeCloseTo(46 ** 2 - 36 - 34 ** 2 + Math.PI * 9, 0);
    expect(sliceTube(square, 3, { axis: "z", at: 3.1 })).toEqual([]);
  });
});

describe("random tubes", () => {
  const coordinate = fc.integer({ min: -30, max: 30 });
  const points = fc.array(fc.tuple(coordinate, coordinate, coordinate), { minLength: 2, maxLength: 6 });
  const tubes = fc.record({
    points,
    radius: fc.integer({ min: 2, max: 12 }),
    axis: fc.constantFrom("x", "y", "z"),
    at: fc.double({ min: -25, max: 25, noNaN: true }),
  });

  it("outlines lie on the tube's surface and hold as much as plain sampling finds inside", () => {
    fc.assert(
      fc.property(tubes, ({ points, radius, axis, at }) => {
        const plane = { axis, at } as SectionPlane;
        const outlines = sliceTube(points, radius, plane);
        expectOnSurface(outlines, points, radius, plane);
        expect(outlines.every((one) => one.closed)).toBe(true);
        let sampled = 0;
        let edge = 0;
        const step = 0.5;
        for (let u = -45 + step / 2; u < 45; u += step) {
          for (let v = -45 + step / 2; v < 45; v += step) {
            const off = middleDistance(points, plane, u, v) - radius;
            if (off < 0) sampled++;
            if (Math.abs(off) < step) edge++;
          }
        }
        // A square may be counted wrong only where the outline runs through it.
        expect(Math.abs(filledArea(outlines, 0.05) - sampled * step * step)).toBeLessThan(
          0.5 * edge * step * step + 0.5,
        );
      }),
      { seed: 1955, numRuns: runs(20, 60) },
    );
  });

  it("the solid modeler manifold-3d slices the same tube to the same area", async () => {
    const top = await solidModeler();
    fc.assert(
      fc.property(tubes, ({ points, radius, at }) => {
        const { solid, error } = partSolid(top, { name: "tube", kind: "path", radius, points });
        const cut = solid.slice(at);
        const wanted = cut.area();
        const around = cut.toPolygons().reduce((sum, polygon) => {
          return (
            sum +
            polygon.reduce((run, p, i) => {
              const q = polygon[(i + 1) % polygon.length]!;
              return run + Math.hypot(q[0] - p[0], q[1] - p[1]);
            }, 0)
          );
        }, 0);
        const found = filledArea(sliceTube(points, radius, { axis: "z", at }), 0.05);
        // Its balls are faceted: its surface lies up to `error` inside, its section by more where it is met at a slant.
        const slant = Math.sqrt(2 * radius * error) + error;
        for (const done of [solid, cut]) done.delete();
        expect(found).toBeGreaterThan(wanted - 0.01 * around - 0.5);
        expect(found).toBeLessThan(wanted + slant * (around + 2 * Math.PI * radius) + 0.5);
      }),
      { seed: 1956, numRuns: runs(12, 40) },
    );
  });
});
