import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Outline } from "../../../src/studies/section/outline.ts";
import { outlineDistance } from "../../../src/studies/section/outlineDistance.ts";

const closed = (...points: number[]): Outline => ({ points: Float64Array.from(points), closed: true });
const open = (...points: number[]): Outline => ({ points: Float64Array.from(points), closed: false });
const square = (u: number, v: number, side: number) =>
  closed(u, v, u + side, v, u + side, v + side, u, v + side);

describe("distance between outlines on the sheet", () => {
  it.each<[string, Outline[], Outline[], number | null]>([
    ["side by side", [square(0, 0, 10)], [square(13, 2, 5)], 3],
    ["corner to corner", [square(0, 0, 10)], [square(13, 14, 5)], 5],
    [
      "corner to side, the nearest point inside a piece",
      [square(0, 0, 10)],
      [closed(12, 5, 20, 0, 20, 9)],
      2,
    ],
    ["crossing", [square(0, 0, 10)], [square(5, 5, 10)], 0],
    ["one inside the other", [square(0, 0, 10)], [square(4, 4, 1)], 0],
    ["the other way around", [square(4, 4, 1)], [square(0, 0, 10)], 0],
    ["in the hole of a frame", [square(0, 0, 10), square(2, 2, 6)], [square(4, 4, 1)], 2],
    ["an open line beside", [square(0, 0, 10)], [open(-4, -5, -4, 20)], 4],
    ["an open line through", [square(0, 0, 10)], [open(-4, 5, 14, 6)], 0],
    ["an open line does not close itself", [open(0, 0, 10, 0, 10, 10)], [square(1, 5, 1)], 5],
    ["the nearest of several", [square(0, 0, 10)], [square(40, 0, 5), square(0, 17, 1)], 7],
    ["a single touch", [square(0, 0, 10)], [square(10, 10, 5)], 0],
    ["nothing to measure to", [square(0, 0, 10)], [], null],
  ])("%s", (_, a, b, wanted) => {
    const found = outlineDistance(a, b);
    if (wanted === null) expect(found).toBeNull();
    else expect(found).toBeCloseTo(wanted, 12);
    expect(outlineDistance(b, a)).toBe(found);
  });

  it("is that of points sampled along both, which can only be farther", () => {
    const coordinate = fc.integer({ min: -20, max: 20 });
    const outline = fc.tuple(
      fc.array(fc.tuple(coordinate, coordinate), { minLength: 3, maxLength: 6 }),
      fc.boolean(),
    );
    const made = outline.map(
      ([points, isClosed]): Outline => ({ points: Float64Array.from(points.flat()), closed: isClosed }),
    );
    const shifted = made.map(
      ({ points, closed }): Outline => ({ points: points.map((p, i) => (i % 2 ? p : p + 45)), closed }),
    );
    fc.assert(
      fc.property(made, shifted, (a, b) => {
        const samples = ({ points, closed }: Outline) => {
          const found: [number, number][] = [];
          const count = points.length / 2;
          for (let i = 0; i < count - (closed ? 0 : 1); i++) {
            for (let k = 0; k <= 40; k++) {
              const j = (i + 1) % count;
              const mix = (axis: number) =>
                points[2 * i + axis]! + (k / 40) * (points[2 * j + axis]! - points[2 * i + axis]!);
              found.push([mix(0), mix(1)]);
            }
          }
          return found;
        };
        const others = samples(b);
        const sampled = Math.min(
          ...samples(a).map(([u, v]) => Math.min(...others.map(([p, q]) => Math.hypot(u - p, v - q)))),
        );
        const excess = sampled - outlineDistance([a], [b])!;
        expect(excess).toBeGreaterThan(-1e-9);
        // Pieces are at most 57 long: a sample lies within 0.72 of any point of them.
        expect(excess).toBeLessThan(2 * 0.72);
      }),
      { seed: 1955, numRuns: 200 },
    );
  });
});
