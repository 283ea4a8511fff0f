import { describe, expect, it } from "vitest";
import { limitsOf } from "../../../src/studies/limits/limitsOf.ts";
import { mapReportOf } from "../../../src/studies/map/mapReport.ts";
import { Budget } from "../../../src/studies/numeric/budget.ts";
import { checkClearance } from "../../../src/studies/reports/check.ts";
import { sweepOf } from "../../../src/studies/reports/sweep.ts";
import { assembledModel, demoSetup, exampleSetup } from "../../reference/demoModel.ts";
import { stepBudget } from "../../reference/stepBudget.ts";

describe("a budget", () => {
  it("reads its clock once about half a millisecond of work was told, and is spent for good", () => {
    let read = 0;
    let now = 0;
    const budget = Budget.of(1, () => {
      read++;
      return now;
    });
    read = 0;
    for (let i = 0; i < 99; i++) expect(budget.isSpent(5)).toBe(false);
    expect(read).toBe(0);
    expect(budget.isSpent(5)).toBe(false);
    expect(read).toBe(1);
    now = 1000;
    expect(budget.cut).toBe(false);
    expect(budget.isSpent(500)).toBe(true);
    now = 0;
    expect(budget.isSpent(1)).toBe(true);
    expect(budget.cut).toBe(true);
  });

  it("is shared evenly, and what one leaves falls to the others", () => {
    let now = 0;
    const budget = Budget.of(3, () => now);
    const first = budget.share(3);
    now = 999;
    expect(first.isSpent(500)).toBe(false);
    now = 500;
    const second = budget.share(2);
    now = 1749;
    expect(second.isSpent(500)).toBe(false);
    now = 1750;
    expect(second.isSpent(500)).toBe(true);
    expect([first.cut, second.cut, budget.cut]).toEqual([false, true, true]);
    expect(budget.isSpent(500)).toBe(false);
  });

  it("without an end is never spent", () => {
    expect(Budget.endless().share(2).isSpent(1e12)).toBe(false);
  });
});

describe("a study whose budget is spent", () => {
  const model = assembledModel(exampleSetup("half-ton-limits.json"));
  const whole = checkClearance(model);

  it.each([0, 3, 30, 100])("check answers with what it reached after %d looks at the clock", (looks) => {
    const cut = checkClearance(model, { budget: stepBudget(looks) });
    expect(cut.cutShort).toBe(true);
    expect(cut.parts.map(({ part, side }) => [part, side])).toEqual(
      whole.parts.map(({ part, side }) => [part, side]),
    );
    cut.parts.forEach((entry, i) => {
      const exact = whole.parts[i]!;
      expect(entry.bound).toBeLessThanOrEqual(exact.gap);
      expect(entry.gap).toBeGreaterThanOrEqual(exact.bound);
      expect(entry.tolerance).toBeGreaterThanOrEqual(entry.gap - entry.bound);
      expect(Number.isFinite(entry.tolerance)).toBe(true);
      // A gap that is there is no verdict "clear" unless it is proven.
      if (entry.bound < model.setup.allowance - 0.01) expect(entry.verdict).not.toBe("clear");
    });
  });

  it("check that was not cut short does not say so, and is the same as without a budget", () => {
    const done = checkClearance(model, { budget: stepBudget(1e9) });
    expect(done).toEqual(whole);
    expect("cutShort" in done).toBe(false);
  });

  it("check searches again what its share ended once the others are done", () => {
    const width = (looks: number) =>
      Math.max(
        ...checkClearance(model, { budget: stepBudget(looks) }).parts.map(({ gap, bound }) => gap - bound),
      );
    expect(width(4000)).toBeLessThan(width(300));
  });

  it.each([0, 10, 100])("limits keeps every bound honest after %d looks", (looks) => {
    const cut = limitsOf(model, stepBudget(looks));
    const exact = limitsOf(model);
    expect(cut.cutShort).toBe(true);
    expect(cut.overall).toHaveLength(exact.overall.length);
    cut.overall.forEach((limit, i) => {
      expect(limit.bound).toBeLessThanOrEqual(exact.overall[i]!.margin);
      expect(limit.margin).toBeGreaterThanOrEqual(exact.overall[i]!.bound);
    });
    cut.region.atHeights.forEach(({ left, right }, i) => {
      const row = exact.region.atHeights[i]!;
      expect(left.at).toBeLessThanOrEqual(row.left.at + 1e-9);
      expect(right.at).toBeGreaterThanOrEqual(row.right.at - 1e-9);
    });
  });

  it("map looks at rows from coarse to fine, and every way stays proven", () => {
    const exact = mapReportOf(model, { rows: 33, cols: 5 });
    const cut = mapReportOf(model, { rows: 33, cols: 5, budget: stepBudget(10) });
    expect(cut.cutShort).toBe(true);
    const looked = Array.from(cut.map.travels, (_, row) => !Number.isNaN(cut.map.left.gap[5 * row + 2]!));
    expect(looked).toContain(false);
    expect([looked[0], looked[32]]).toEqual([true, true]);
    cut.map.left.gap.forEach((gap, cell) => {
      if (!Number.isNaN(gap)) expect(gap).toBeCloseTo(exact.map.left.gap[cell]!, 5);
    });
    expect([...cut.map.reach.status]).toEqual([...exact.map.reach.status]);
    cut.steerAtHeight.forEach((row, i) => {
      const whole = exact.steerAtHeight[i]!;
      if (!row.ok || !whole.ok) throw new TypeError("out of reach");
      expect(row.leftTurn.touch.either.at).toBeLessThanOrEqual(whole.leftTurn.touch.either.at);
    });
  });

  it("sweep leaves rows out evenly", () => {
    const { byTravel, bySteer, cutShort } = sweepOf(assembledModel(demoSetup()), 9, stepBudget(8));
    expect(cutShort).toBe(true);
    expect(byTravel.length).toBeLessThan(9);
    expect(bySteer.length).toBeGreaterThan(1);
    const travels = byTravel.map(({ travel }) => travel);
    expect(travels).toEqual([...travels].sort((a, b) => a - b));
  });
});
