import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { leastOf } from "../../../src/studies/jig/leastOf.ts";
import { runs } from "../../runs.ts";
import { normals } from "./noisyReadings.ts";

const density = (x: number) => Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI);
/** By Simpson's rule from far below: good to 1e-9. */
function probability(x: number): number {
  const [low, count] = [-9, 2000];
  const step = (x - low) / count;
  const at = (i: number) => density(low + i * step) * (i === 0 || i === count ? 1 : i % 2 === 1 ? 4 : 2);
  return (step / 3) * Array.from({ length: count + 1 }, (_, i) => at(i)).reduce((sum, one) => sum + one, 0);
}

/** Standard deviation of the least of two normal numbers (C. E. Clark, Operations Research 9, 1961, p. 145; from memory). */
function clark(means: readonly [number, number], s: readonly [number, number], r: number): number {
  const a = Math.sqrt(s[0] ** 2 + s[1] ** 2 - 2 * r * s[0] * s[1]);
  const [m, n] = [-means[0], -means[1]];
  const alpha = (m - n) / a;
  const first = m * probability(alpha) + n * probability(-alpha) + a * density(alpha);
  const second =
    (m ** 2 + s[0] ** 2) * probability(alpha) +
    (n ** 2 + s[1] ** 2) * probability(-alpha) +
    (m + n) * a * density(alpha);
  return Math.sqrt(second - first ** 2);
}

describe("the spread of the least of numbers that go together", () => {
  it("of two is what Clark's formula tells", () => {
    expect(clark([0, 0], [1, 1], 0)).toBeCloseTo(Math.sqrt(1 - 1 / Math.PI), 7);
    fc.assert(
      fc.property(
        fc.double({ min: -2, max: 2, noNaN: true }),
        fc.double({ min: 0.3, max: 2, noNaN: true }),
        fc.double({ min: 0.3, max: 2, noNaN: true }),
        fc.double({ min: -0.95, max: 0.95, noNaN: true }),
        (apart, s, t, r) => {
          const { sigma } = leastOf(
            [5, 5 + apart],
            [
              [s * s, r * s * t],
              [r * s * t, t * t],
            ],
          );
          expect(Math.abs(sigma / clark([5, 5 + apart], [s, t], r) - 1)).toBeLessThan(0.02);
        },
      ),
      { numRuns: runs(30, 300) },
    );
  });

  it("of three that go together is that of random draws, and each is the least as often", () => {
    const rows = [
      [1, 0, 0],
      [0.6, 0.8, 0],
      [-0.4, 0.3, 0.5],
    ];
    const means = [0.2, 0, 0.4];
    const covariance = rows.map((a) => rows.map((b) => a.reduce((sum, x, i) => sum + x * b[i]!, 0)));
    const { sigma, shares } = leastOf(means, covariance);
    const normal = normals(3);
    const count = 20_000;
    const times = [0, 0, 0];
    const least = Array.from({ length: count }, () => {
      const z = [normal(), normal(), normal()];
      const values = means.map((mean, i) => rows[i]!.reduce((sum, x, k) => sum + x * z[k]!, mean));
      times[values.indexOf(Math.min(...values))]! += 1;
      return Math.min(...values);
    });
    const mean = least.reduce((sum, one) => sum + one, 0) / count;
    const spread = Math.sqrt(least.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (count - 1));
    expect(Math.abs(sigma / spread - 1)).toBeLessThan(0.02);
    for (const [i, share] of shares.entries()) expect(Math.abs(share - times[i]! / count)).toBeLessThan(0.02);
  });

  it("of one that another tells already, or of one alone, is its own", () => {
    expect(Math.abs(leastOf([1], [[4]]).sigma / 2 - 1)).toBeLessThan(0.005);
    const same = leastOf(
      [1, 1.5],
      [
        [4, 4],
        [4, 4],
      ],
    );
    expect(Math.abs(same.sigma / 2 - 1)).toBeLessThan(0.005);
    expect(same.shares).toEqual([1, 0]);
  });
});
