import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { GAP_ROW, partGapTo } from "../../src/gaps/partGap.ts";
import { partShapeOf } from "../../src/gaps/partShape.ts";
import { ringApart } from "../../src/gaps/ring/ringApart.ts";
import { type RingShape, ringShapeOf } from "../../src/gaps/ring/ringShape.ts";
import { tireProfile } from "../../src/gaps/tire/tireProfile.ts";
import { runs } from "../runs.ts";

const tires = fc
  .record({
    diameter: fc.double({ min: 600, max: 800, noNaN: true }),
    sectionWidth: fc.double({ min: 180, max: 320, noNaN: true }),
    rimWidth: fc.double({ min: 130, max: 260, noNaN: true }),
  })
  .map((dimensions): RingShape => {
    const made = tireProfile({ ...dimensions, rimDiameter: 381, flange: { width: 12.7, height: 17 } });
    if (!made.ok) throw new TypeError(made.mend);
    return ringShapeOf(made.profile, 343 / 2);
  });

/** Signed distance of a point to a ring about the x axis of its own frame, its center at `shift`. */
function distanceTo(ring: RingShape, shift: number, x: number, r: number): number {
  const part = partShapeOf({ name: "point", kind: "path", radius: 0, points: [[r, x, 0]] }, false);
  return partGapTo(new Float64Array(GAP_ROW), 0, ring, Float64Array.from([0, shift, 0, 0, 1, 0]), 0, part);
}

describe("how far two rings are apart", () => {
  it("is no less than any distance outside of one differs from that to the other", () => {
    const numbers = fc.record({
      a: tires,
      b: tires,
      shift: fc.double({ min: -60, max: 60, noNaN: true }),
      x: fc.double({ min: -300, max: 300, noNaN: true }),
      r: fc.double({ min: 0, max: 520, noNaN: true }),
    });
    let told = 0;
    fc.assert(
      fc.property(numbers, ({ a, b, shift, x, r }) => {
        const apart = ringApart(a, b, shift);
        const known = distanceTo(b, 0, x, r);
        if (!(known > apart)) return;
        told++;
        expect(distanceTo(a, shift, x, r)).toBeGreaterThanOrEqual(known - apart - 1e-6);
      }),
      { seed: 12, numRuns: runs(400, 4000) },
    );
    expect(told).toBeGreaterThan(50);
  });

  it("is the shift alone for one ring beside itself, and nothing for one on itself", () => {
    const [ring] = fc.sample(tires, { seed: 3, numRuns: 1 });
    expect(ringApart(ring!, ring!, 0)).toBe(0);
    expect(ringApart(ring!, ring!, -7)).toBeCloseTo(7, 9);
  });

  it("is no more than a few times what the sizes differ by", () => {
    const tire = (sectionWidth: number) => {
      const made = tireProfile({ diameter: 711, sectionWidth, rimDiameter: 381, rimWidth: 203 });
      if (!made.ok) throw new TypeError(made.mend);
      return ringShapeOf(made.profile, 343 / 2);
    };
    expect(ringApart(tire(240), tire(244), 0)).toBeLessThan(8);
  });

  it("is the least over every way of walking both outlines once round, side by side", () => {
    const point = fc.tuple(fc.integer({ min: -9, max: 9 }), fc.integer({ min: 1, max: 19 }));
    const outlines = fc.array(point, { minLength: 2, maxLength: 4 });
    /** The farthest that points walked past together are apart, by the best of all ways on from i, j. */
    const walked = (
      apart: (i: number, j: number) => number,
      i: number,
      j: number,
      ends: readonly number[],
    ): number => {
      const ways = [
        [1, 0],
        [0, 1],
        [1, 1],
      ].filter(([a, b]) => i + a! <= ends[0]! && j + b! <= ends[1]!);
      if (ways.length === 0) return apart(i, j);
      return Math.max(apart(i, j), Math.min(...ways.map(([a, b]) => walked(apart, i + a!, j + b!, ends))));
    };
    fc.assert(
      fc.property(outlines, outlines, fc.integer({ min: -5, max: 5 }), (a, b, shift) => {
        const apart = (i: number, j: number) => {
          const [p, q] = [a[i % a.length]!, b[j % b.length]!];
          return Math.hypot(p[0] + shift - q[0], p[1] - q[1]);
        };
        const rings = [a, b].map((outline) => ({ outline }) as unknown as RingShape);
        expect(ringApart(rings[0]!, rings[1]!, shift)).toBe(walked(apart, 0, 0, [a.length, b.length]));
      }),
      { seed: 12, numRuns: 300 },
    );
  });
});
