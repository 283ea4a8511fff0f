import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Box, climb, type Place } from "../../../src/studies/numeric/climb.ts";

const BOX: Box = [
  [-90, 90],
  [-1, 1],
];
const FIRST: Place = [7, 0.11];
const FINEST: Place = [0.05, 0.001];
const from = (valueAt: (x: number, y: number) => number, at: Place) =>
  climb(valueAt, { at, value: valueAt(...at) }, BOX, FIRST, FINEST);

describe("a climb from a place to the highest near it", () => {
  it("comes to the top of a leaning bowl turned over, wherever it stands", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -80, max: 80, noNaN: true }),
        fc.double({ min: -0.9, max: 0.9, noNaN: true }),
        fc.double({ min: -0.6, max: 0.6, noNaN: true }),
        (x0, y0, lean) => {
          const hill = (x: number, y: number) => {
            const [u, v] = [(x - x0) / 90, y - y0];
            return -u * u - v * v - lean * u * v;
          };
          const { at, value } = from(hill, [0, 0]);
          expect(Math.abs(at[0] - x0)).toBeLessThan(0.2);
          expect(Math.abs(at[1] - y0)).toBeLessThan(0.003);
          expect(value).toBe(hill(...at));
        },
      ),
    );
  });

  it("stops at the border of the box, at a step and at a kink, and is never lower than where it began", () => {
    expect(from((x, y) => x + 100 * y, [10, 0.2]).at).toEqual([90, 1]);
    // As a bump stop does: past 31.7 all falls off at once.
    const step = from((x) => (x < 31.7 ? x : -1000), [20, 0]);
    expect(step.at[0]).toBeGreaterThan(31.6);
    expect(step.at[0]).toBeLessThan(31.7);
    const roof = from((x, y) => -Math.abs(x - 12.3) - 30 * Math.abs(y + 0.4), [0, 0]);
    expect(roof.at[0]).toBeCloseTo(12.3, 1);
    expect(roof.at[1]).toBeCloseTo(-0.4, 2);
  });

  it("where nothing else can be looked at, stays", () => {
    const alone = climb(() => Number.NEGATIVE_INFINITY, { at: [1, 0.1], value: 5 }, BOX, FIRST, FINEST);
    expect(alone).toEqual({ at: [1, 0.1], value: 5 });
  });

  it("an input whose ends are one stays there", () => {
    const flat: Box = [
      [3, 3],
      [-1, 1],
    ];
    const { at } = climb(
      (x, y) => -((y - 0.5) ** 2) - x,
      { at: [3, 0], value: -3.25 },
      flat,
      [0, 0.1],
      FINEST,
    );
    expect(at[0]).toBe(3);
    expect(at[1]).toBeCloseTo(0.5, 2);
  });
});
