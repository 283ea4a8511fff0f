import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  alongSecond,
  constant,
  crossVec,
  dotVec,
  inverse,
  type Jet,
  type JetVec,
  minus,
  mostLength,
  plus,
  product,
  root,
  signOf,
  swapped,
  times,
  turned,
} from "../../../src/studies/numeric/jet.ts";
import { runs } from "../../runs.ts";

/** A cell and a place in it, from −1 to 1 either way. */
const cell = fc.record({
  angle: fc.double({ min: -1.2, max: 1.2, noNaN: true }),
  angleHalf: fc.double({ min: 0, max: 0.25, noNaN: true }),
  steer: fc.double({ min: -1, max: 1, noNaN: true }),
  steerHalf: fc.double({ min: -0.25, max: 0.25, noNaN: true }),
  u: fc.double({ min: -1, max: 1, noNaN: true }),
  v: fc.double({ min: -1, max: 1, noNaN: true }),
});

/** The same made of everything a jet can be made of, and as plain numbers. */
const EXPRESSIONS: readonly (readonly [
  string,
  (c: { cos: Jet; sin: Jet; s: Jet; turn: Jet }) => Jet,
  (a: number, s: number) => number,
])[] = [
  [
    "a product of turns",
    ({ cos, sin, turn }) => product(product(cos, sin), turn),
    (a, s) => Math.cos(a) * Math.sin(a) * Math.cos(2 * s),
  ],
  [
    "a root of sums",
    ({ cos, s }) => root(plus(constant(3), minus(product(s, s), times(cos, 2)))),
    (a, s) => Math.sqrt(3 + s * s - 2 * Math.cos(a)),
  ],
  [
    "a quotient",
    ({ sin, s }) => product(s, inverse(plus(constant(-4), sin))),
    (a, s) => s / (-4 + Math.sin(a)),
  ],
  [
    "a root of a quotient",
    ({ cos, sin, s }) => root(inverse(plus(constant(2.5), product(sin, minus(s, cos))))),
    (a, s) => 1 / Math.sqrt(2.5 + Math.sin(a) * (s - Math.cos(a))),
  ],
];

type Cell = { angle: number; angleHalf: number; steer: number; steerHalf: number };

function parts({ angle, angleHalf, steer, steerHalf }: Cell) {
  const s = alongSecond(steer, steerHalf);
  return { ...turned(angle, angleHalf), s, turn: swapped(turned(2 * steer, 2 * steerHalf).cos) };
}

describe("a number over a cell", () => {
  it.each(EXPRESSIONS)(
    "is nowhere farther than its jet says, nor from its second order there: %s",
    (_, jetOf, plain) => {
      fc.assert(
        fc.property(cell, (c) => {
          const f = jetOf(parts(c));
          const here = plain(c.angle + c.u * c.angleHalf, c.steer + c.v * c.steerHalf);
          const slack = 1e-12 * (1 + Math.abs(f.mid));
          expect(Math.abs(here - f.mid)).toBeLessThanOrEqual(f.off + slack);
          const { u, v } = c;
          const second = f.mid + f.u * u + f.v * v + 0.5 * (f.uu * u * u + f.vv * v * v) + f.uv * u * v;
          const off = 0.5 * (f.uuOff * u * u + f.vvOff * v * v) + f.uvOff * Math.abs(u * v);
          expect(Math.abs(here - second)).toBeLessThanOrEqual(off + slack);
          expect(signOf(f) * here).toBeGreaterThanOrEqual(0);
        }),
        { numRuns: runs(400, 5000) },
      );
    },
  );

  it.each(EXPRESSIONS)("is bounded the nearer the smaller its cell, by the square: %s", (_, jetOf) => {
    const slack = (half: number) => {
      const f = jetOf(parts({ angle: 0.4, angleHalf: half, steer: 0.3, steerHalf: half }));
      return f.off - Math.abs(f.u) - Math.abs(f.v);
    };
    const shrinks = slack(0.002) / slack(0.001);
    expect(shrinks).toBeGreaterThan(3.9);
    expect(shrinks).toBeLessThan(4.1);
  });

  it("that may be zero has no inverse, one that may be less no root, and their bound is none", () => {
    const s = alongSecond(0.1, 0.2);
    expect(signOf(s)).toBe(0);
    expect(inverse(s).mid).toBeNaN();
    expect(root(s).off).toBeNaN();
    expect(mostLength([inverse(s), s, s])).toBe(Number.POSITIVE_INFINITY);
  });

  it("makes vectors whose length is nowhere more than told", () => {
    fc.assert(
      fc.property(cell, (c) => {
        const { cos, sin, s, turn } = parts(c);
        const [a, b]: [JetVec, JetVec] = [
          [cos, sin, s],
          [turn, s, cos],
        ];
        const cross = crossVec(a, b);
        const [angle, steer] = [c.angle + c.u * c.angleHalf, c.steer + c.v * c.steerHalf];
        const p = [Math.cos(angle), Math.sin(angle), steer] as const;
        const q = [Math.cos(2 * steer), steer, Math.cos(angle)] as const;
        const here = [p[1] * q[2] - p[2] * q[1], p[2] * q[0] - p[0] * q[2], p[0] * q[1] - p[1] * q[0]];
        expect(Math.hypot(...here)).toBeLessThanOrEqual(mostLength(cross) + 1e-12);
        const dot = dotVec(a, b);
        expect(Math.abs(p[0] * q[0] + p[1] * q[1] + p[2] * q[2] - dot.mid)).toBeLessThanOrEqual(
          dot.off + 1e-12,
        );
      }),
      { numRuns: runs(300, 3000) },
    );
  });
});
