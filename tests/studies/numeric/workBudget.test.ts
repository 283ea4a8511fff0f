import { describe, expect, it } from "vitest";
import { limitsOf } from "../../../src/studies/limits/limitsOf.ts";
import { mapReportOf } from "../../../src/studies/map/mapReport.ts";
import type { Model } from "../../../src/studies/model/model.ts";
import { Budget } from "../../../src/studies/numeric/budget.ts";
import { checkClearance } from "../../../src/studies/reports/check.ts";
import type { FrontEnd } from "../../../src/suspension/frontEnd.ts";
import { wholeTrucks } from "../../reference/wholeTrucks.ts";

/** The same truck, whose steering counts how often it is placed: work that is done, whatever a study tells of it. */
function counted(model: Model): { readonly model: Model; readonly placed: () => number } {
  let placed = 0;
  const { frontEnd } = model;
  const { steering } = frontEnd;
  const counting: FrontEnd = {
    ...frontEnd,
    steering: {
      ...steering,
      innerEndsTo: (out, steer) => {
        placed++;
        return steering.innerEndsTo(out, steer);
      },
    },
  };
  return { model: { ...model, frontEnd: counting }, placed: () => placed };
}

const STUDIES = {
  check: (model: Model, budget: Budget) => checkClearance(model, { budget }).cutShort,
  limits: (model: Model, budget: Budget) => limitsOf(model, budget).cutShort,
  map: (model: Model, budget: Budget) => mapReportOf(model, { rows: 25, cols: 25, budget }).cutShort,
} as const;

describe("a study asks its budget often enough to end within a tenth of it, besides what it tells in any case", () => {
  const trucks = wholeTrucks(53);

  for (const [name, study] of Object.entries(STUDIES))
    it.each([12, 21, 30, 52])(`${name} of truck %d, whose limits meet the border of reach`, (n) => {
      const whole = counted(trucks[n]!);
      study(whole.model, Budget.endless());
      // Where the linkage can go at all.
      const always = counted(trucks[n]!);
      study(always.model, Budget.of(Number.MIN_VALUE, always.placed));
      for (const share of [0.5, 0.2]) {
        const { model, placed } = counted(trucks[n]!);
        const most = share * (whole.placed() - always.placed());
        expect(study(model, Budget.of(most / 1000, placed))).toBe(true);
        expect(placed()).toBeLessThanOrEqual(always.placed() + 1.1 * most);
      }
    });
});
