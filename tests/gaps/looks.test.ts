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
    const paths = sample("path", 300);
    expectCost(costOf(paths), { outside: [9075, 1706], inside: [29_169, 6463] });
    expectCost(costOf(paths, 1, 0.1), { outside: [5327, 1049], inside: [16_302, 2911] });
  });

  it("of solid boxes", () => {
    const boxes = sample("box", 200);
    expectCost(costOf(boxes), { outside: [79_474, 22_062], inside: [151_011, 61_402] });
    expectCost(costOf(boxes, 1, 0.1), { outside: [37_076, 9445], inside: [37_716, 13_900] });
  });

  it("of a few triangles", () => {
    const meshes = sample("mesh", 200);
    expectCost(costOf(meshes), { outside: [27_970, 12_000], inside: [261_690, 115_809] });
    expectCost(costOf(meshes, 1, 0.1), { outside: [14_876, 4883], inside: [66_939, 27_807] });
  });

  it("of meshes with a tree, the triangle found last as a hint", () => {
    const cases = fc
      .sample(sheetCases(15), { seed: SEED, numRuns: 60 })
      .map(({ ring, wheel, mesh }) => ({ ring, wheel, part: mesh }));
    expectCost(costOf(cases), { outside: [12_591, 10_134], inside: [83_449, 43_815] });
    expectCost(costOf(cases, 1, 0.1), { outside: [4683, 6410], inside: [20_555, 12_282] });
  });
});
