import { describe, expect, it } from "vitest";
import type { Model } from "../../../src/studies/model/model.ts";
import { checkClearance, checkOf, checkShare } from "../../../src/studies/reports/check.ts";
import { assembledModel, demoSetup, demoWith, exampleSetup } from "../../reference/demoModel.ts";
import { stepBudget } from "../../reference/stepBudget.ts";

/** A truck whose right side is none of the left one's: a part is on it alone. */
function lopsided(): Model {
  const [first, ...rest] = demoSetup().truck.body;
  return demoWith([{ ...first!, name: "left alone", side: "left" }, ...rest.slice(0, 2)], { hardware: null });
}

const shared = (model: Model, of: number, looks?: number) =>
  Array.from({ length: of }, (_, at) =>
    structuredClone(checkShare(model, { at, of }, looks === undefined ? {} : { budget: stepBudget(looks) })),
  );

describe("a check whose pairs are shared out", () => {
  it.each([
    ["a mirrored truck with limits", () => assembledModel(exampleSetup("half-ton-limits.json"))],
    ["one with a part on one side alone", lopsided],
  ])("answers the same of %s, however many search it and whoever is done first", (_, made) => {
    const model = made();
    const whole = checkClearance(model);
    expect(whole.parts.length).toBeGreaterThan(2);
    for (const of of [1, 2, 3, 7, model.pairs.length + 1]) {
      const shares = shared(model, of);
      expect(checkOf(model, shares)).toEqual(whole);
      expect(checkOf(model, shares.toReversed())).toEqual(whole);
    }
  });

  it("has each pair searched by one alone", () => {
    const model = lopsided();
    const searched = shared(model, 3).flatMap(({ found }) =>
      found.flatMap((entry, place) => (entry === undefined ? [] : [place])),
    );
    expect(searched).toHaveLength(new Set(searched).size);
  });

  it("is cut short when one of its searchers was", () => {
    const model = assembledModel(exampleSetup("half-ton-limits.json"));
    const [first, , ...rest] = shared(model, 3);
    const [, cut] = shared(model, 3, 0);
    expect(checkOf(model, [first!, cut!, ...rest]).cutShort).toBe(true);
  });
});
