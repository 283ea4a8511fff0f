import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { PartInput } from "../../src/gaps/partShape.ts";
import { type GapCase, gapCases } from "../reference/gapCases.ts";
import { kernelGap } from "../reference/kernelGap.ts";
import { partSolid, ringSolid, solidModeler } from "../reference/mesh/solids.ts";
import { partGeometry, surfaceDistance } from "../reference/mesh/surfaceDistance.ts";
import { ringGeometry, tessellationError } from "../reference/mesh/tessellatedRing.ts";
import { ringCases } from "../reference/rings.ts";
import { runs } from "../runs.ts";

const SEED = 1957;
const SIDES = 256;

/** mm. The libraries keep part of their work in 32 bits: coordinates under 2 m round by 1e-4 at most. */
const ROUNDING = 2e-4;

/** Generated cases by their gap. */
function casesOf(
  kinds: readonly PartInput["kind"][],
  keep: (gap: number) => boolean,
  count: number,
): (GapCase & { gap: number })[] {
  const drawn = fc.sample(gapCases(kinds), { seed: SEED, numRuns: 6 * count });
  const kept: (GapCase & { gap: number })[] = [];
  for (const c of drawn) {
    if (kept.length === count) break;
    const { gap } = kernelGap(c.ring, c.wheel, c.part);
    if (keep(gap)) kept.push({ ...c, gap });
  }
  return kept;
}

describe(`against the mesh library three-mesh-bvh 0.9, ring in ${SIDES} sides (seed ${SEED})`, () => {
  it.each(["box", "mesh"] as const)("clear gaps to a %s are the least distance of the surfaces", (kind) => {
    const cases = casesOf([kind], (gap) => gap > 1, runs(15, 25));
    expect(cases).toHaveLength(runs(15, 25));
    for (const { ring, wheel, part, gap } of cases) {
      if (part.kind === "path") throw new TypeError("asked for boxes and meshes");
      const far = surfaceDistance(ringGeometry(ring, wheel, SIDES), partGeometry(part));
      expect(Math.abs(far - gap)).toBeLessThan(tessellationError(ring, SIDES) + ROUNDING);
    }
  });
});

describe(`against the solid modeler manifold-3d 3.5, ring in ${SIDES} sides (seed ${SEED})`, () => {
  it.each(["box", "path"] as const)("clear gaps to a %s are the least gap of the solids", async (kind) => {
    const top = await solidModeler();
    const cases = casesOf([kind], (gap) => gap > 2, runs(8, 15)).map(thicker);
    expect(cases).toHaveLength(runs(8, 15));
    for (const { ring, wheel, part } of cases) {
      if (part.kind === "mesh") throw new TypeError("asked for boxes and paths");
      const { gap } = kernelGap(ring, wheel, part);
      const a = ringSolid(top, ring, wheel, SIDES);
      const { solid: b, error } = partSolid(top, part);
      // The search length only caps the answer; a gap found too small or too large still shows.
      const far = a.minGap(b, gap + 5);
      a.delete();
      b.delete();
      expect(Math.abs(far - gap)).toBeLessThan(tessellationError(ring, SIDES) + error + ROUNDING);
    }
  });

  it.each(["box", "path"] as const)(
    "a %s and the ring share volume exactly where the gap is negative",
    async (kind) => {
      const top = await solidModeler();
      const each = runs(8, 20);
      const cases = [
        ...casesOf([kind], (gap) => gap < 0, each),
        ...casesOf([kind], (gap) => gap > 0, each),
      ].map(thicker);
      let rubs = 0;
      let clears = 0;
      for (const { ring, wheel, part } of cases) {
        if (part.kind === "mesh") throw new TypeError("asked for boxes and paths");
        const { gap } = kernelGap(ring, wheel, part);
        const a = ringSolid(top, ring, wheel, SIDES);
        const { solid: b, error } = partSolid(top, part);
        const off = tessellationError(ring, SIDES) + error + ROUNDING;
        const shared = a.intersect(b);
        const volume = shared.volume();
        for (const done of [a, b, shared]) done.delete();
        if (gap < -off) {
          rubs++;
          expect(volume).toBeGreaterThan(0);
        } else if (gap > off) {
          clears++;
          expect(volume).toBe(0);
        }
      }
      expect(Math.min(rubs, clears)).toBeGreaterThanOrEqual(0.75 * each);
    },
  );
});

/** The modeler knows no lines without thickness. */
function thicker<T extends GapCase>(c: T): T {
  return c.part.kind === "path" && c.part.radius < 1 ? { ...c, part: { ...c.part, radius: 1 } } : c;
}

describe("the tessellation error itself", () => {
  it("is 0.027 mm for a half-ton's tire in 256 sides, and far under what a doubled gap would hide", () => {
    expect(tessellationError(ringCases[0]!, SIDES)).toBeCloseTo(355.5 * (1 - Math.cos(Math.PI / 256)), 12);
    expect(tessellationError(ringCases[0]!, SIDES)).toBeLessThan(0.027);
  });
});
