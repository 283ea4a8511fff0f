import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  archFrame,
  movedPoint,
  nearestOnLine,
  nearestPoint,
  pointInMm,
  sidePoint,
} from "../../src/app/measure/body/archGeometry.ts";
import { between } from "../../src/app/measure/points/between.ts";

const seed = 1955;
const place = fc.record({
  x: fc.double({ min: -2000, max: 2000, noNaN: true }),
  z: fc.double({ min: -2000, max: 2000, noNaN: true }),
});
const line = fc.array(place, { minLength: 2, maxLength: 12 });

describe("the side view of an arch", () => {
  it("has the truck's front at its left and up at its top", () => {
    const ahead = { x: 400, z: 600 };
    const behind = { x: -300, z: 100 };
    const { u, v, width, height } = archFrame([ahead, behind], [{ x: 0, z: 300, radius: 200 }]);
    expect(-ahead.x - u).toBeLessThan(-behind.x - u);
    expect(-ahead.z - v).toBeLessThan(-behind.z - v);
    for (const { x, z } of [ahead, behind, { x: 0, z: 100 }, { x: -200, z: 300 }]) {
      expect(-x).toBeGreaterThan(u);
      expect(-x).toBeLessThan(u + width);
      expect(-z).toBeGreaterThan(v);
      expect(-z).toBeLessThan(v + height);
    }
    expect(sidePoint(-400, -600)).toEqual(ahead);
  });

  it("takes the nearest point, and none beyond reach", () => {
    const points = [
      { x: 0, z: 0 },
      { x: 100, z: 0 },
      { x: 100, z: 80 },
    ];
    expect(nearestPoint(points, { x: 92, z: 6 }, 10)).toBe(1);
    expect(nearestPoint(points, { x: 50, z: 0 }, 49.9)).toBeNull();
    expect(nearestPoint([], { x: 0, z: 0 }, 10)).toBeNull();
  });

  it(`finds the place on the line that no sampled place of it beats (seed ${seed})`, () => {
    fc.assert(
      fc.property(line, place, (points, at) => {
        const found = nearestOnLine(points, at, Number.POSITIVE_INFINITY)!;
        const distance = (after: number, share: number) => {
          const [a, b] = [points[after]!, points[after + 1]!];
          return Math.hypot(a.x + share * (b.x - a.x) - at.x, a.z + share * (b.z - a.z) - at.z);
        };
        const least = distance(found.after, found.share);
        for (let i = 0; i + 1 < points.length; i++) {
          for (let k = 0; k <= 50; k++) expect(distance(i, k / 50)).toBeGreaterThanOrEqual(least - 1e-6);
        }
        expect(nearestOnLine(points, at, least * 0.999 - 1e-9)).toBeNull();
      }),
      { seed, numRuns: 200 },
    );
  });

  it("finds a place on a line with a repeated point", () => {
    const points = [
      { x: 5, z: 5 },
      { x: 5, z: 5 },
    ];
    expect(nearestOnLine(points, { x: 5, z: 6 }, 2)).toEqual({ after: 0, share: 0 });
  });
});

describe("a point that is dragged in the side view", () => {
  const step = { units: "in", size: 1 / 16 } as const;

  it("goes to whole steps and keeps its y as typed", () => {
    expect(movedPoint([0, "34 15/16", 0], { x: 25.4 * 2.51, z: -25.4 * 3.13 }, step, "in")).toEqual([
      "2 1/2",
      "34 15/16",
      "-3 1/8",
    ]);
  });

  it("keeps the file's numbers readable when other units are shown", () => {
    const moved = movedPoint([0, 34, 0], { x: 101.2, z: 50.6 }, { units: "mm", size: 1 }, "in");
    expect(moved).toEqual(["101 mm", 34, "51 mm"]);
    expect(pointInMm(moved, "in")).toEqual([101, 863.6, 51]);
  });

  it("is none when a coordinate does not read", () => {
    expect(pointInMm([0, "wide", 0], "in")).toBeNull();
    expect(pointInMm("0 0 0", "in")).toBeNull();
  });
});

describe("a new point", () => {
  it("lies between two, to the sixteenth", () => {
    expect(between([0, 10, "20 in"], ["1 1/8", 20, "25.4 mm"], 0.5, "in")).toEqual(["9/16", "15", "10 1/2"]);
  });
});
