import fc from "fast-check";
import { expect, test } from "vitest";
import type { PartInput } from "../../src/gaps/partShape.ts";
import type { Vec3 } from "../../src/geometry/vec.ts";
import { gapCases } from "../reference/gapCases.ts";
import { kernelGap } from "../reference/kernelGap.ts";
import { type RingCase, ringDistance, type WheelCase } from "../reference/referenceRing.ts";
import { ringCases } from "../reference/rings.ts";
import { sampledLeast } from "../reference/sampledPart.ts";

type Box = Extract<PartInput, { kind: "box" }>;

/** mm. What is promised of a depth. */
const allowed = (gap: number) => 0.005 + 1e-4 * Math.abs(gap);

/** A repeatable stream of numbers in [0, 1) (Park and Miller's minimal standard generator, 1988, from memory). */
function stream(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

/** Random steps downhill within a box from a place, ever shorter: slow, and knows nothing but the distance. */
function lowered(f: (point: Vec3) => number, { min, max }: Box, start: Vec3, draw: () => number): number {
  let place = start;
  let least = f(place);
  let misses = 0;
  for (let step = 20; step > 1e-4; ) {
    const next = place.map((v, i) =>
      Math.min(max[i]!, Math.max(min[i]!, v + 2 * step * (draw() - 0.5))),
    ) as unknown as Vec3;
    const d = f(next);
    if (d < least) {
      place = next;
      least = d;
      misses = 0;
      step *= 1.5;
    } else if (++misses > 30) {
      step *= 0.6;
      misses = 0;
    }
  }
  return least;
}

/** Boxes whose lowest edge place stands on a ridge of the distance: the depth lies elsewhere. */
const ridges: readonly (readonly [string, Box, WheelCase])[] = [
  [
    "one-sided profile",
    { name: "rail", kind: "box", min: [-188.9245, 991.2095, 156.7501], max: [124.2322, 1209.558, 408.4641] },
    {
      center: [-38.85744, 645.01826, 297.4768],
      axis: [-0.6644766892841867, 0.7380087644008286, 0.1175320937679943],
    },
  ],
  [
    "generated profile",
    { name: "rail", kind: "box", min: [-514.9662, 756.623, 122.9887], max: [-244.0108, 1072.8636, 427.5874] },
    {
      center: [59.9994, 899.99714, 335.8504],
      axis: [-0.4986934271839235, 0.8617184249526557, -0.09352123705697588],
    },
  ],
];

test.each(ridges)("a box pressed into the %s over a ridge of its depth", (name, box, wheel) => {
  const ring = ringCases.find((one) => one.name === name) as RingCase;
  const { gap } = kernelGap(ring, wheel, box);
  const { refined, coarse, step } = sampledLeast(box, ringDistance(ring, wheel));
  expect(gap - refined).toBeLessThan(allowed(gap));
  expect(coarse - gap).toBeLessThan(step);
});

test("boxes pressed in have the depth than which random steps from its place find none deeper", () => {
  const draw = stream(7);
  let deep = 0;
  fc.assert(
    fc.property(gapCases(["box"]), ({ ring, wheel, part }) => {
      const { gap, point } = kernelGap(ring, wheel, part);
      if (gap > -3) return;
      deep++;
      const least = lowered(ringDistance(ring, wheel), part as Box, point, draw);
      expect(gap - least).toBeLessThan(allowed(gap));
    }),
    { seed: 57, numRuns: 400, endOnFailure: true },
  );
  expect(deep).toBeGreaterThan(60);
});
