import { describe, expect, it } from "vitest";
import { isOpen } from "../../src/app/clear/map/mapRegions.ts";
import { mapOf } from "../../src/studies/map/clearanceMap.ts";
import { Budget } from "../../src/studies/numeric/budget.ts";
import { demoModel } from "../studies/demoModel.ts";

describe("cells of a map that its budget left", () => {
  it("are told apart from those that rub, and are none of a whole map", () => {
    const model = demoModel();
    let now = 0;
    const cut = mapOf(model, {
      budget: Budget.of(1, () => {
        now += 10;
        return now;
      }),
    });
    expect(cut.cutShort).toBe(true);
    const { gap } = cut.left;
    const open = [...gap.keys()].filter((cell) => isOpen(cut, gap, cell));
    expect(open.length).toBeGreaterThan(0);
    expect(open.length).toBeLessThan(gap.length);
    const whole = mapOf(model);
    expect([...gap.keys()].some((cell) => isOpen(whole, whole.left.gap, cell))).toBe(false);
  });
});
