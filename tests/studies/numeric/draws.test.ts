import { describe, expect, it } from "vitest";
import { naturalLog, normalQuantile, wilsonInterval } from "../../../src/studies/numeric/normalQuantile.ts";
import { ScatteredPoints } from "../../../src/studies/numeric/scatteredPoints.ts";

function pointsOf(dimensions: number, seed: number | null, from: number, count: number): number[][] {
  const points = new ScatteredPoints(dimensions, seed);
  return Array.from({ length: count }, (_, i) => {
    const out = new Float64Array(dimensions);
    points.pointTo(out, from + i);
    return [...out];
  });
}

describe("normal quantiles", () => {
  it("are those of published tables", () => {
    // NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.1 and Abramowitz & Stegun table 26.5, from memory; the two
    // last by AS 241's own check values (Wichura 1988, from memory).
    for (const [p, z] of [
      [0.5, 0],
      [0.6, 0.2533471031357997],
      [0.75, 0.6744897501960817],
      [0.9, 1.2815515655446004],
      [0.95, 1.6448536269514722],
      [0.975, 1.959963984540054],
      [0.99, 2.3263478740408408],
      [0.995, 2.5758293035489004],
      [0.999, 3.090232306167813],
      [0.25, -0.6744897501960817],
      [0.001, -3.090232306167813],
      [1e-20, -9.262340089798409],
    ] as const)
      expect([p, normalQuantile(p)]).toEqual([p, expect.closeTo(z, 13)]);
  });

  it("fall and rise alike, without a step where the formulas meet", () => {
    for (const p of [0.01, 0.0749999999, 0.075, 0.0750000001, 0.2, 0.4, 1e-11])
      expect(normalQuantile(p)).toBeCloseTo(-normalQuantile(1 - p), p < 1e-9 ? 4 : 9);
    for (const p of [0.075, 0.925, 1.388794386496402e-11])
      expect(normalQuantile(p * (1 + 1e-9))).toBeCloseTo(normalQuantile(p * (1 - 1e-9)), 7);
  });

  it("have a logarithm of their own that agrees with the engine's", () => {
    for (const x of [1e-300, 1e-9, 0.3, 0.7071067811865475, 1, 1.5, 2, 3, 1e9])
      expect(naturalLog(x)).toBeCloseTo(Math.log(x), 12);
  });
});

describe("scattered points", () => {
  it("without a seed are Halton's published ones in bases 2, 3 and 5", () => {
    const first = [
      [1 / 2, 1 / 3, 1 / 5],
      [1 / 4, 2 / 3, 2 / 5],
      [3 / 4, 1 / 9, 3 / 5],
      [1 / 8, 4 / 9, 4 / 5],
      [5 / 8, 7 / 9, 1 / 25],
      [3 / 8, 2 / 9, 6 / 25],
    ];
    const found = pointsOf(3, null, 1, 6);
    for (const [i, point] of first.entries())
      for (const [d, x] of point.entries()) expect(found[i]![d]).toBeCloseTo(x, 8);
  });

  it("are the very same from the same seed, and others from another", () => {
    expect(pointsOf(20, 7, 0, 50)).toEqual(pointsOf(20, 7, 0, 50));
    expect(pointsOf(20, 7, 0, 50)).not.toEqual(pointsOf(20, 8, 0, 50));
    // Bit for bit on every machine: what the first point of seed 1 is.
    expect(pointsOf(4, 1, 0, 1)[0]).toEqual([
      0.35051965818274766, 0.556802682516456, 0.77112519548928, 0.5448629841995571,
    ]);
  });

  it("put as many into each cell of a base's division as even ones do, in every dimension", () => {
    const points = pointsOf(6, 3, 0, 2 * 3 * 5 * 7 * 11 * 13);
    for (const [d, base] of [2, 3, 5, 7, 11, 13].entries()) {
      const counts = new Array<number>(base).fill(0);
      for (const point of points) {
        expect(point[d]! > 0 && point[d]! < 1).toBe(true);
        counts[Math.floor(point[d]! * base)]!++;
      }
      expect(new Set(counts)).toEqual(new Set([points.length / base]));
    }
  });

  it("have a mean of 1/2 and no two dimensions in step, also of large primes", () => {
    const points = pointsOf(60, 5, 0, 4000);
    const mean = (of: (point: number[]) => number) =>
      points.reduce((sum, p) => sum + of(p), 0) / points.length;
    for (const d of [0, 10, 30, 58, 59]) expect(mean((p) => p[d]!)).toBeCloseTo(0.5, 1.6);
    for (const [a, b] of [
      [58, 59],
      [40, 41],
      [30, 59],
    ] as const)
      expect(Math.abs(mean((p) => (p[a]! - 0.5) * (p[b]! - 0.5)) * 12)).toBeLessThan(0.06);
  });
});

describe("Wilson's interval", () => {
  it("is the published one, of all and of none too", () => {
    // E. B. Wilson 1927 as printed in the NIST handbook, 7.2.4.1 (from memory): by the formula, worked by hand.
    expect(wilsonInterval(81, 263, 0.95).low).toBeCloseTo(0.2553, 4);
    expect(wilsonInterval(81, 263, 0.95).high).toBeCloseTo(0.3662, 4);
    expect(wilsonInterval(20, 20, 0.95).low).toBeCloseTo(20 / (20 + 1.959963984540054 ** 2), 12);
    expect(wilsonInterval(20, 20, 0.95).high).toBeCloseTo(1, 12);
    expect(wilsonInterval(0, 0, 0.95)).toEqual({ low: 0, high: 1 });
  });
});
