import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { evenly } from "../../../src/studies/numeric/evenly.ts";
import { lowestBetween, rootsOver } from "../../../src/studies/numeric/rootsOver.ts";

function rootsOf(f: (x: number) => number, from: number, to: number, count = 41): readonly number[] {
  const looked = [...evenly(from, to, count)].map((x) => ({ x, y: f(x) }));
  return rootsOver(f, looked, 1e-9, 1e-9 * (to - from));
}

function expectNear(found: readonly number[], wanted: readonly number[], digits = 9): void {
  expect(found).toHaveLength(wanted.length);
  for (const [i, x] of wanted.entries()) expect(found[i]).toBeCloseTo(x, digits);
}

describe("roots that a march finds", () => {
  it("are all crossings, in order, one at a place looked at too", () => {
    expectNear(rootsOf(Math.sin, -7, 7), [-2 * Math.PI, -Math.PI, 0, Math.PI, 2 * Math.PI]);
    expectNear(
      rootsOf((x) => x - 1, 0, 2),
      [1],
    );
    expectNear(
      rootsOf((x) => x, 0, 2),
      [0],
    );
    expect(rootsOf((x) => x + 1, 0, 2)).toEqual([]);
  });

  it("are both of a dip between two places, and the one of a dip that touches", () => {
    const at = 0.512;
    expectNear(
      rootsOf((x) => (x - at) ** 2 - 1e-6, 0, 1),
      [at - 1e-3, at + 1e-3],
      8,
    );
    expectNear(
      rootsOf((x) => 1e-6 - (x - at) ** 2, 0, 1),
      [at - 1e-3, at + 1e-3],
      8,
    );
    expectNear(
      rootsOf((x) => (x - at) ** 2, 0, 1),
      [at],
      4,
    );
    expect(rootsOf((x) => (x - at) ** 2 + 1e-6, 0, 1)).toEqual([]);
  });

  it("are those next to where the function has no value", () => {
    // Defined from 0.37 on, zero at 0.375: both between two neighbors, of which one has no value.
    const half = (x: number) => (x < 0.37 ? Number.NaN : x - 0.375);
    expectNear(rootsOf(half, 0, 1, 11), [0.375]);
    expectNear(
      rootsOf((x) => half(1 - x), 0, 1, 11),
      [0.625],
    );
    expect(rootsOf(() => Number.NaN, 0, 1)).toEqual([]);
  });

  it("of random cubics are those a closed form has, where neighbors are nearer than they lie apart", () => {
    const apart = fc.double({ min: 0.05, max: 0.5, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: -1, max: 0, noNaN: true }), apart, apart, (a, first, second) => {
        const [b, c] = [a + first, a + first + second];
        const wanted = [a, b, c];
        expectNear(
          rootsOf((x) => (x - a) * (x - b) * (x - c), -1.01, 1.013, 97),
          wanted,
          8,
        );
      }),
    );
  });
});

describe("the lowest place", () => {
  it("of a valley is found to the tolerance", () => {
    expect(lowestBetween((x) => Math.abs(x - 0.3), 0, 1, 1e-9)).toBeCloseTo(0.3, 8);
    expect(lowestBetween((x) => (x - 2) ** 2, 0, 1, 1e-9)).toBeCloseTo(1, 8);
  });
});
