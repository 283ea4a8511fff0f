import { describe, expect, it } from "vitest";
import { KEPT } from "../../../src/studies/limits/frontEndLimit.ts";
import { keptAllOver } from "../../../src/studies/limits/keptAllOver.ts";
import { LimitCell } from "../../../src/studies/limits/limitCell.ts";
import { limitsOverRange, limitTravel } from "../../../src/studies/limits/limitsPassed.ts";
import type { Model } from "../../../src/studies/model/model.ts";
import { Budget } from "../../../src/studies/numeric/budget.ts";
import { armAngleFor } from "../../../src/suspension/armAngle.ts";
import { assembledModel, exampleSetup } from "../../reference/demoModel.ts";
import { stepBudget } from "../../reference/stepBudget.ts";
import { wholeTrucks } from "../../reference/wholeTrucks.ts";

function keptOf(model: Model, budget = Budget.endless()): string[] {
  const cell = new LimitCell(model, "left");
  const { low, high } = limitTravel(model);
  const range = { armLow: armAngleFor(cell.side, low), armHigh: armAngleFor(cell.side, high) };
  return [...keptAllOver(cell, range, budget)].map((limit) => cell.limits[limit]!.name);
}

/** By each limit's own search for its least margin. */
function searchedKept(model: Model): string[] {
  return limitsOverRange(model)
    .filter(({ margin, side }) => side === "left" && margin >= -KEPT)
    .map(({ name }) => name);
}

describe("limits proven to be kept all over, all of them at once", () => {
  it("of the half-ton are all it has", () => {
    const model = assembledModel(exampleSetup("half-ton-limits.json"));
    expect(keptOf(model)).toEqual(searchedKept(model));
    expect(keptOf(model)).toHaveLength(new LimitCell(model, "left").limits.length);
  });

  it("of random trucks are some of those that each one's own search finds kept, mostly all", () => {
    let searched = 0;
    let proven = 0;
    for (const model of wholeTrucks(10)) {
      const all = searchedKept(model);
      const kept = keptOf(model);
      for (const name of kept) expect(all).toContain(name);
      searched += all.length;
      proven += kept.length;
    }
    expect(searched).toBeGreaterThan(20);
    expect(proven).toBeGreaterThan(0.8 * searched);
  });

  it("a budget that is spent leaves out what it did not prove", () => {
    const model = assembledModel(exampleSetup("half-ton-limits.json"));
    expect(keptOf(model, stepBudget(1)).length).toBeLessThan(keptOf(model).length);
  });
});
