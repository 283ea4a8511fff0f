import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { PartInput } from "../../src/gaps/partShape.ts";
import { length, sub } from "../../src/geometry/vec.ts";
import { type GapCase, gapCases } from "../reference/gapCases.ts";
import { kernelGap } from "../reference/kernelGap.ts";
import { distanceToPart } from "../reference/onPart.ts";
import { ringDistance } from "../reference/referenceRing.ts";
import { sampledLeast } from "../reference/sampledPart.ts";
import { runs } from "../runs.ts";

const SEED = 1955;
/** Hundreds of cases in all; a box costs the referee most. */
const RUNS = { path: runs(80, 300), mesh: runs(80, 200), box: runs(30, 120) } as const;

/** mm: how near a clear gap, and a depth, must come to what sampling with local search finds. */
const CLEAR = 1e-4;
const DEEP = 0.01;

/** Runs a claim on generated cases of one kind, and sees to it that clear and deep ones were both among them. */
function onCases(kind: PartInput["kind"], claim: (c: GapCase, gap: ReturnType<typeof kernelGap>) => void) {
  let clear = 0;
  let deep = 0;
  fc.assert(
    fc.property(gapCases([kind]), (c) => {
      const found = kernelGap(c.ring, c.wheel, c.part);
      if (found.gap > 0) clear++;
      else deep++;
      claim(c, found);
    }),
    { seed: SEED, numRuns: RUNS[kind], endOnFailure: true },
  );
  expect(Math.min(clear, deep)).toBeGreaterThan(0.15 * RUNS[kind]);
}

describe.each(["path", "box", "mesh"] as const)(`a %s near the ring (seed ${SEED})`, (kind) => {
  it("has the gap that dense sampling and local search find, by winding number and plain segments", () => {
    let depths = 0;
    let settled = 0;
    onCases(kind, ({ ring, wheel, part }, { gap }) => {
      const least = sampledLeast(part, ringDistance(ring, wheel));
      // Sampling can only miss the nearest point: no sample may be nearer than the gap…
      expect(least.refined - gap).toBeGreaterThan(gap > 0 ? -CLEAR : -DEEP);
      // …and the gap can be smaller than the nearest sample by no more than the grid leaves out.
      expect(least.coarse - gap).toBeLessThanOrEqual(least.step + 1e-9);
      if (gap > 0) expect(least.refined - gap).toBeLessThan(CLEAR);
      else {
        depths++;
        if (least.refined - gap < DEEP) settled++;
      }
    });
    // Deep inside, the least lies on a ridge where local search can stick; the next claim covers those few.
    expect(settled).toBeGreaterThan(0.9 * depths);
  });

  it("is reported with a point on it and one on the ring, the gap apart, where the gap really is that", () => {
    onCases(kind, ({ ring, wheel, part }, { gap, point, onRing }) => {
      const distance = ringDistance(ring, wheel);
      expect(distanceToPart(part, point)).toBeLessThan(1e-7);
      expect(Math.abs(distance(onRing))).toBeLessThan(1e-7);
      expect(length(sub(point, onRing))).toBeCloseTo(Math.abs(gap), 7);
      // With a radius the point is off the center line; inside the ring depth does not add up past the middle.
      const radius = part.kind === "path" ? part.radius : 0;
      if (gap > 0 || radius === 0) expect(distance(point)).toBeCloseTo(gap, 7);
    });
  });
});
