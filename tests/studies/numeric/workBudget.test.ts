import { describe, expect, it } from "vitest";
import { envelopeOf } from "../../../src/studies/envelope/envelopeOf.ts";
import { straightRange } from "../../../src/studies/envelope/envelopeRange.ts";
import { SweptDistance } from "../../../src/studies/envelope/sweptDistance.ts";
import { limitsOf } from "../../../src/studies/limits/limitsOf.ts";
import { mapReportOf } from "../../../src/studies/map/mapReport.ts";
import type { Model } from "../../../src/studies/model/model.ts";
import { Budget } from "../../../src/studies/numeric/budget.ts";
import { checkClearance } from "../../../src/studies/reports/check.ts";
import { sweepOf } from "../../../src/studies/reports/sweep.ts";
import type { FrontEnd } from "../../../src/suspension/frontEnd.ts";
import { wholeTrucks } from "../../reference/wholeTrucks.ts";
import { runs } from "../../runs.ts";

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

/** How many poses the distance to what a ring sweeps was asked at while something ran: nearly all an envelope does. */
function asked(run: (count: () => number) => void): number {
  let poses = 0;
  const { look, pick } = SweptDistance.prototype;
  SweptDistance.prototype.look = function (...args) {
    poses += args[5] - args[4];
    look.apply(this, args);
  };
  SweptDistance.prototype.pick = function (...args) {
    poses += args[6] - args[5];
    return pick.apply(this, args);
  };
  try {
    run(() => poses);
  } finally {
    Object.assign(SweptDistance.prototype, { look, pick });
  }
  return poses;
}

const STUDIES = {
  check: (model: Model, budget: Budget) => checkClearance(model, { budget }).cutShort,
  limits: (model: Model, budget: Budget) => limitsOf(model, budget).cutShort,
  sweep: (model: Model, budget: Budget) => sweepOf(model, 121, budget).cutShort,
  map: (model: Model, budget: Budget) => mapReportOf(model, { rows: 25, cols: 25, budget }).cutShort,
} as const;

describe("a study asks its budget often enough to end within a tenth of it, besides what it tells in any case", () => {
  const trucks = wholeTrucks(53);

  for (const [name, study] of Object.entries(STUDIES))
    it.each([12, 30, 52, 21].slice(0, runs(1, 4)))(
      `${name} of truck %d, whose limits meet the border of reach`,
      (n) => {
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
      },
    );

  it.each(
    (
      [
        [12, "preview", [0.95, 0.5, 0.2]],
        [30, "preview", [0.95, 0.5, 0.2]],
        [12, "fine", [0.5]],
      ] as const
    ).slice(0, runs(1, 3)),
  )("envelope of truck %d, %s, straight ahead, shares %j", (n, preset, shares) => {
    const model = trucks[n]!;
    const sweep = (budget: Budget) => {
      const result = envelopeOf(model, "left", straightRange(model), { preset, budget });
      return !result.ok || result.envelope.cutShort;
    };
    const whole = asked(() => sweep(Budget.endless()));
    for (const share of shares) {
      const most = share * whole;
      const spent = asked((count) => expect(sweep(Budget.of(most / 1000, count))).toBe(true));
      expect(spent).toBeLessThanOrEqual(1.1 * most);
    }
  });
});
