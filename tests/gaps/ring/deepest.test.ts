import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { deepestIn } from "../../../src/gaps/ring/deepest.ts";
import { ringShapeOf } from "../../../src/gaps/ring/ringShape.ts";
import { countedReads } from "../../reference/countedReads.ts";
import { between } from "../../reference/gapCases.ts";
import { shapeOf } from "../../reference/kernelGap.ts";
import { ringCases } from "../../reference/rings.ts";

/** mm. How much too deep it may be told. */
const SLACK = 0.005;

function expectDepth(profile: readonly number[], barrel: number, depth: number) {
  const { deepest } = ringShapeOf(profile, barrel);
  expect(deepest).toBeGreaterThanOrEqual(depth);
  expect(deepest).toBeLessThanOrEqual(depth + SLACK + 1e-9);
}

describe("the largest circle in a section", () => {
  it("of a rectangle is half as wide as its lesser side", () => {
    fc.assert(
      fc.property(between(20, 300), between(20, 300), between(-80, 80), (wide, high, off) => {
        const [low, r] = [170, 170 + high];
        expectDepth([off, low, off, r, off + wide, r, off + wide, low], low, 0.5 * Math.min(wide, high));
      }),
      { seed: 1955, numRuns: 40 },
    );
  });

  it("of a triangle has the radius 2·area / perimeter", () => {
    fc.assert(
      fc.property(between(40, 300), between(20, 200), between(-0.5, 1.5), (wide, high, share) => {
        const [low, top] = [180, share * wide];
        const sides = wide + Math.hypot(top, high) + Math.hypot(wide - top, high);
        expectDepth([0, low, top, low + high, wide, low], low, (wide * high) / sides);
      }),
      { seed: 1955, numRuns: 100 },
    );
  });

  it("of an L touches its inner corner", () => {
    // Arms 40 wide: (40 − d)·√2 = d at the inner corner's diagonal, with d from both outer sides.
    const depth = (40 * Math.SQRT2) / (1 + Math.SQRT2);
    expectDepth([0, 200, 0, 300, 100, 300, 100, 260, 40, 260, 40, 200], 200, depth);
  });

  it("is found in as few looks at the outline as when these lines were written", () => {
    const looks = ringCases.map((ring) => {
      const { row, reads } = countedReads(shapeOf(ring).boundary);
      deepestIn(row);
      return reads();
    });
    looks.forEach((count, i) => {
      expect(Math.abs(count - LOOKS[i]!), looks.join()).toBeLessThanOrEqual(0.003 * LOOKS[i]!);
    });
  });
});

const LOOKS = [19_828, 230_430, 73_700];
