import { describe, expect, it } from "vitest";
import { limitsPassed } from "../../../src/studies/limits/limitsPassed.ts";
import type { Model } from "../../../src/studies/model/model.ts";
import { rangesOf } from "../../../src/studies/search/sideRange.ts";
import { worstGap } from "../../../src/studies/search/worstGap.ts";
import { countedRing } from "../../reference/countedRing.ts";
import { assembledModel, exampleSetup } from "../../reference/demoModel.ts";
import { wholeTrucks } from "../../reference/wholeTrucks.ts";

/** Share by which a count may be more or less than it was: rounding may send a search another way. */
const ROUNDING = 0.005;

const TOLERANCES = { asked: 0.1, finer: 0.01, border: 0.1 };

/** Nodes, looks at the section and looks at its hull profile that a truck's left pairs of one kind take, and cells of poses in all. */
type Cost = Readonly<Record<string, readonly number[]>>;

function costOf(model: Model): Cost {
  const alone = model.setup.roll !== null;
  const { start, wheel, ...range } = rangesOf(model, limitsPassed(model, alone), alone).left;
  const cost: Record<string, number[]> = {};
  for (const pair of model.pairs) {
    if (pair.side !== "left" || pair.kind === "together") continue;
    const { ring, looks } = countedRing(pair.ring);
    const found = worstGap({ ...wheel, pair: { ...pair, ring } }, range, TOLERANCES, start);
    if (found === null) throw new Error(`${pair.name}: no pose was found`);
    const before = cost[pair.kind] ?? [0, 0, 0];
    cost[pair.kind] = [found.cells, ...looks()].map((count, i) => before[i]! + count);
  }
  return { ...cost, poses: [wheel.cells!.count] };
}

function expectCost(model: Model, told: Cost): void {
  const found = costOf(model);
  const text = JSON.stringify(found);
  expect(Object.keys(found), text).toEqual(Object.keys(told));
  for (const [kind, counts] of Object.entries(told))
    counts.forEach((count, i) => {
      expect(Math.abs(found[kind]![i]! - count), text).toBeLessThanOrEqual(ROUNDING * count + 1);
    });
}

/** As many as when these lines were written: more is slower, fewer is a bound to be tightened here. */
describe("what a search for the worst gap costs, told without a clock", () => {
  it("on the half-ton with limits, springs and shocks", () => {
    expectCost(assembledModel(exampleSetup("half-ton-limits.json")), {
      body: [49_405, 12_803, 81_676],
      rod: [11_315, 119_231, 12_734],
      springOrShock: [8382, 31_892, 11_238],
      poses: [6849],
    });
  });

  it.each([
    [
      1,
      {
        body: [48_208, 180_635, 142_363],
        rod: [902, 13_730, 1242],
        springOrShock: [2884, 10_780, 3702],
        poses: [1901],
      },
    ],
    [
      38,
      {
        body: [51_550, 168_744, 108_607],
        rod: [8593, 105_392, 10_593],
        springOrShock: [16_912, 56_617, 18_444],
        poses: [7175],
      },
    ],
  ] as const)("on random truck %d", (n, told) => {
    expectCost(wholeTrucks(n + 1)[n]!, told);
  });
});
