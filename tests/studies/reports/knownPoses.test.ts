import { describe, expect, it } from "vitest";
import { checkClearance } from "../../../src/studies/reports/check.ts";
import { gapsAt } from "../../../src/studies/reports/gapsAt.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import { assembledModel, exampleSetup } from "../../reference/demoModel.ts";
import { stepBudget } from "../../reference/stepBudget.ts";

const model = assembledModel(exampleSetup("half-ton-on-air.json"));
const whole = checkClearance(model);
const { travel, steer } = whole.worst!;
const known = [{ travel, steer }];

describe("a check that is told of poses known to be bad", () => {
  it("answers, finished, the very same as without", () => {
    expect(checkClearance(model, { known })).toEqual(whole);
  });

  it("cut short before it found them is no better than what is seen there, on either side", () => {
    const blind = checkClearance(model, { budget: stepBudget(1) });
    const told = checkClearance(model, { budget: stepBudget(1), known });
    expect(blind.cutShort && told.cutShort).toBe(true);
    // Without them it has not come there yet: else this shows nothing.
    expect(blind.worst!.gap).toBeGreaterThan(whole.worst!.gap + 1);
    expect(told.verdict).toBe("rubs");
    expect(told.worst).toMatchObject({ part: whole.worst!.part, verdict: "rubs" });
    for (const way of [1, -1]) {
      const pose = solvePose(model.frontEnd, travel, way * steer);
      if (!pose.ok) throw new Error("out of reach");
      for (const { part, side, gap } of gapsAt(model, pose)) {
        const entry = told.parts.find((one) => one.part === part && one.side === side)!;
        expect(entry.gap).toBeLessThanOrEqual(gap + 1e-6);
        expect(entry.bound).toBeLessThanOrEqual(entry.gap);
      }
    }
  });

  it("counts none that is past the truck's travel or lock", () => {
    const { bump } = model.setup.travel;
    const past = [
      { travel: bump + 10, steer },
      { travel, steer: 1.2 },
    ];
    const budget = () => stepBudget(1);
    expect(checkClearance(model, { budget: budget(), known: past })).toEqual(
      checkClearance(model, { budget: budget() }),
    );
  });
});
