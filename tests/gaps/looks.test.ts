import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { GAP_ROW, partGapTo } from "../../src/gaps/partGap.ts";
import { type PartInput, partShapeOf } from "../../src/gaps/partShape.ts";
import { countedRing } from "../reference/countedRing.ts";
import { type GapCase, gapCases } from "../reference/gapCases.ts";
import { shapeOf } from "../reference/kernelGap.ts";
import { wheelRow } from "../reference/referenceRing.ts";
import { sheetCases } from "./mesh/sheets.ts";

const SEED = 1955;

/** Share by which the looks may be more or fewer than they were: rounding may send a search another way. */
const ROUNDING = 0.003;

/** What parts of a kind cost in looks at the section and at its hull profile, those outside, in the ring or its hole. */
interface Cost {
  readonly outside: readonly [number, number];
  readonly inside: readonly [number, number];
}

function costOf(cases: readonly GapCase[], beatBy = Number.POSITIVE_INFINITY, coarse = 0): Cost {
  const cost = { outside: [0, 0], inside: [0, 0] } as { outside: [number, number]; inside: [number, number] };
  const row = new Float64Array(GAP_ROW);
  for (const { ring, wheel, part } of cases) {
    const counted = countedRing(shapeOf(ring));
    const shape = partShapeOf(part, false);
    const place = wheelRow(wheel);
    const gap = partGapTo(row, 0, shapeOf(ring), place, 0, shape);
    partGapTo(row, 0, counted.ring, place, 0, shape, gap + beatBy, coarse);
    const [section, profile] = counted.looks();
    const sum = cost[gap > 0 ? "outside" : "inside"];
    sum[0] += section;
    sum[1] += profile;
  }
  return cost;
}

const sample = (kind: PartInput["kind"], count: number) =>
  fc.sample(gapCases([kind]), { seed: SEED, numRuns: count });

function expectCost(found: Cost, told: Cost): void {
  for (const where of ["outside", "inside"] as const)
    for (const at of [0, 1] as const)
      expect(
        Math.abs(found[where][at] - told[where][at]),
        `${where}: ${found[where].join()} looks, were ${told[where].join()}`,
      ).toBeLessThanOrEqual(ROUNDING * told[where][at]);
}

/** The looks are as many as when these lines were written: more is slower, fewer is a bound to be tightened here. */
describe(`what gaps cost in looks at the ring (seed ${SEED})`, () => {
  it("of paths", () => {
    const paths = sample("path", 120);
    expectCost(costOf(paths), { outside: [2219, 524], inside: [12_829, 2765] });
    expectCost(costOf(paths, 1, 0.1), { outside: [1400, 370], inside: [8533, 1363] });
  });

  it("of solid boxes", () => {
    const boxes = sample("box", 60);
    expectCost(costOf(boxes), { outside: [15_533, 4882], inside: [57_007, 23_851] });
    expectCost(costOf(boxes, 1, 0.1), { outside: [7418, 2014], inside: [13_573, 5171] });
  });

  it("of a few triangles", () => {
    const meshes = sample("mesh", 60);
    expectCost(costOf(meshes), { outside: [3713, 3769], inside: [98_362, 44_831] });
    expectCost(costOf(meshes, 1, 0.1), { outside: [1844, 1426], inside: [19_961, 8597] });
  });

  it("of meshes with a tree, the triangle found last as a hint", () => {
    const cases = fc
      .sample(sheetCases(15), { seed: SEED, numRuns: 40 })
      .map(({ ring, wheel, mesh }) => ({ ring, wheel, part: mesh }));
    expectCost(costOf(cases), { outside: [6780, 6378], inside: [54_726, 28_612] });
    expectCost(costOf(cases, 1, 0.1), { outside: [2550, 4186], inside: [8952, 5675] });
  });
});
