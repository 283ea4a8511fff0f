import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  addScaled,
  cross,
  dot,
  length,
  mirrorY,
  normalize,
  scale,
  sub,
  type Vec3,
  vecAt,
} from "../../src/geometry/vec.ts";

const SEED = { seed: 1843, numRuns: 500 };
const number = fc.double({ min: -1e4, max: 1e4, noNaN: true });
const vectors = fc.tuple(number, number, number) as fc.Arbitrary<Vec3>;

/** The size that rounding is measured by. */
const sizeOf = (...all: readonly Vec3[]) => 1e-12 * all.reduce((size, a) => size * (1 + length(a)), 1);

function expectAlike(a: Vec3, b: Vec3, off: number) {
  expect(length(sub(a, b))).toBeLessThanOrEqual(off);
}

describe("vectors worked by hand", () => {
  const a: Vec3 = [1, 2, 3];
  const b: Vec3 = [4, -5, 6];

  it.each<[string, unknown, unknown]>([
    ["difference", sub(a, b), [-3, 7, -3]],
    ["sum of one and twice the other", addScaled(a, b, 2), [9, -8, 15]],
    ["half of one", scale(b, 0.5), [2, -2.5, 3]],
    ["dot product", dot(a, b), 12],
    ["cross product", cross(a, b), [27, 6, -13]],
    ["length", length([2, 3, 6]), 7],
    ["direction", normalize([0, -4, 0]), [0, -1, 0]],
    ["mirror image", mirrorY(b), [4, 5, 6]],
    ["three of a row", vecAt([9, 8, 1, 2, 3, 7], 2), a],
  ])("%s", (_, found, wanted) => {
    // A zero's sign is no matter.
    expect(JSON.stringify(found)).toBe(JSON.stringify(wanted));
  });

  it("x, y and z are right-handed: x × y = z, round and round", () => {
    const [x, y, z]: Vec3[] = [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ];
    expect([cross(x!, y!), cross(y!, z!), cross(z!, x!)]).toEqual([z, x, y]);
  });

  it("what has no length has no direction, nor what is no number", () => {
    for (const none of [[0, 0, 0] as const, [Number.NaN, 0, 1] as const])
      expect(() => normalize(none)).toThrow(/^normalize: needs a vector with length, got \[/);
  });
});

describe(`random vectors (seed ${SEED.seed})`, () => {
  it("a cross product is upright to both, and its length is that of the area (Lagrange's identity)", () => {
    fc.assert(
      fc.property(vectors, vectors, (a, b) => {
        const n = cross(a, b);
        expect(Math.abs(dot(n, a))).toBeLessThanOrEqual(sizeOf(a, a, b));
        expect(Math.abs(dot(n, b))).toBeLessThanOrEqual(sizeOf(a, b, b));
        const area = dot(a, a) * dot(b, b) - dot(a, b) ** 2;
        expect(Math.abs(dot(n, n) - area)).toBeLessThanOrEqual(sizeOf(a, a, b, b));
        expectAlike(n, scale(cross(b, a), -1), 0);
      }),
      SEED,
    );
  });

  it("a direction has length 1 and points along its vector", () => {
    fc.assert(
      fc.property(vectors, (a) => {
        fc.pre(length(a) > 1e-3);
        const along = normalize(a);
        expect(length(along)).toBeCloseTo(1, 14);
        expectAlike(scale(along, length(a)), a, sizeOf(a));
      }),
      SEED,
    );
  });

  it("the dot product of a sum is the sum of the dot products", () => {
    fc.assert(
      fc.property(vectors, vectors, vectors, number, (a, b, c, s) => {
        const off = sizeOf(a, c) + Math.abs(s) * sizeOf(b, c);
        expect(Math.abs(dot(addScaled(a, b, s), c) - dot(a, c) - s * dot(b, c))).toBeLessThanOrEqual(off);
      }),
      SEED,
    );
  });

  it("mirrored twice is where it was; mirrored, lengths stay and turns go the other way", () => {
    fc.assert(
      fc.property(vectors, vectors, (a, b) => {
        expect(mirrorY(mirrorY(a))).toEqual(a);
        expect(length(mirrorY(a))).toBe(length(a));
        expectAlike(cross(mirrorY(a), mirrorY(b)), scale(mirrorY(cross(a, b)), -1), 0);
      }),
      SEED,
    );
  });
});
