import { describe, expect, it } from "vitest";
import { limitsPassed } from "../../../src/studies/limits/limitsPassed.ts";
import type { Model } from "../../../src/studies/model/model.ts";
import { Budget } from "../../../src/studies/numeric/budget.ts";
import { searchPair } from "../../../src/studies/reports/pairSearch.ts";
import { rangesOf } from "../../../src/studies/search/sideRange.ts";
import { worstGap } from "../../../src/studies/search/worstGap.ts";
import { wholeTrucks } from "../../reference/wholeTrucks.ts";

const trucks = wholeTrucks(46);

const rangesFor = (model: Model) => {
  const alone = model.setup.roll !== null;
  return rangesOf(model, limitsPassed(model, alone), alone);
};

describe("searches of one wheel share cells of poses, and no answer depends on it", () => {
  it.each([1, 25, 38, 45])("truck %d: each pair alone, all together, and all the other way round", (n) => {
    const model = trucks[n]!;
    const shared = rangesFor(model);
    const passed = limitsPassed(model, model.setup.roll !== null);
    const fresh = () => rangesOf(model, passed, model.setup.roll !== null);
    const pairs = model.pairs.filter(({ side }) => side === "left");
    const endless = Budget.endless();
    const together = pairs.map((pair) => searchPair(model, pair, shared.left, 0.1, endless));
    const back = fresh();
    const reversed = [...pairs].reverse().map((pair) => searchPair(model, pair, back.left, 0.1, endless));
    const alone = pairs.map((pair) => searchPair(model, pair, fresh().left, 0.1, endless));
    expect(together).toEqual(alone);
    expect(reversed.reverse()).toEqual(alone);
    // They do share: together they make many cells fewer.
    const own = pairs.map((pair) => {
      const range = fresh().left;
      searchPair(model, pair, range, 0.1, endless);
      return range.wheel.cells!.count;
    });
    expect(shared.left.wheel.cells!.count).toBeLessThan(0.7 * own.reduce((sum, count) => sum + count, 0));
  });
});

describe("how near a bound comes", () => {
  it("a gap that just keeps the allowance is proven to keep it, where the tolerance asked for alone leaves it open", () => {
    const model = trucks[30]!;
    const { start, wheel, ...range } = rangesFor(model).left;
    const part = model.parts.find(({ shape }) => shape.name === "liner")!.shape;
    const liner = { ...wheel, pair: { kind: "body", ring: model.ring, part } as const };
    const tolerances = { asked: 0.1, finer: 0.01, border: 0.1 };
    const plain = worstGap(liner, range, tolerances, start)!;
    expect(plain.gap - plain.bound).toBeLessThanOrEqual(0.1);
    const finest = worstGap(liner, range, { ...tolerances, asked: 0.01 }, start)!;
    const allowance = finest.bound;
    expect(plain.bound).toBeLessThan(allowance - 0.01);
    const settled = worstGap(liner, range, { ...tolerances, allowance }, start)!;
    expect(settled.bound).toBeGreaterThanOrEqual(allowance - 0.01);
    expect(settled.cells).toBeGreaterThan(plain.cells);
  });
});
