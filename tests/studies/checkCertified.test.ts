import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import type { Model } from "../../src/studies/model/model.ts";
import { type CheckReport, checkClearance } from "../../src/studies/reports/check.ts";
import { assembledModel, demoSetup } from "../reference/demoModel.ts";
import { expectAtPose, expectHonest, expectProven, expectTight } from "../reference/expectCertified.ts";
import { onEachOf, setupCases } from "../reference/setupCases.ts";
import { runs } from "../runs.ts";

const SEED = 1955;
const RUNS = runs(20, 60);

describe("the demo truck, its worst gaps sampled at 25 heights × 49 steers and about the worst", () => {
  const variants = [null, "narrow hub face", "one inch more drop", "steeper pin"];
  it.each(variants.slice(0, runs(2, variants.length)))("variant %s", (variant) => {
    // What moves is sampled in hardware/worstRodGap.test.ts.
    const model = assembledModel({ ...demoSetup(variant), hardware: null });
    const report = checkClearance(model)!;
    expectHonest(model, report);
    expectTight(report);
    expectAtPose(model, report);
    const sampled = expectProven(model, report, { travels: 25, steers: 49 });
    // The worst gap reported is also found by sampling, so that the bound is not merely far below everything.
    report.parts.forEach((entry, i) => {
      expect(sampled[i]!.gap - entry.bound).toBeLessThan(entry.tolerance);
    });
    expect(report.worst!.gap).toBe(Math.min(...report.parts.map((e) => e.gap)));
  });

  it("rubs as it stands, and clears with the narrow hub face", () => {
    expect(checkClearance(assembledModel(demoSetup()))!.verdict).toBe("rubs");
    expect(checkClearance(assembledModel(demoSetup("narrow hub face")))!.verdict).toBe("clear");
  });
});

describe.each(["rack", "pitman"] as const)(
  `${RUNS} generated trucks with %s steering (seed ${SEED})`,
  (kind) => {
    let checked: { model: Model; report: CheckReport }[] = [];

    const onEach = (claim: (model: Model, report: CheckReport) => void) => onEachOf(checked, claim);

    beforeAll(() => {
      const models = fc.sample(setupCases(kind), { seed: SEED, numRuns: RUNS });
      checked = models.map((model) => ({ model, report: checkClearance(model)! }));
    }, 900_000);

    it("clear, close and rubbing pairs, and trucks that run out of reach, are all among them", () => {
      const verdicts = checked.flatMap(({ report }) => report.parts.map((e) => e.verdict));
      for (const verdict of ["clear", "rubs"] as const) {
        expect(verdicts.filter((v) => v === verdict).length).toBeGreaterThan(0.15 * verdicts.length);
      }
      expect(verdicts).toContain("close");
      expect(checked.filter(({ report }) => report.limits.length > 0).length).toBeGreaterThan(runs(0, 2));
    });

    it("no verdict claims more than the bound proves", () => onEach(expectHonest));

    it("the gap is there at the pose reported, and the truck can take that pose", () => onEach(expectAtPose));

    it("the gap is within tolerance of the bound", () => onEach((_, report) => expectTight(report)));

    it("no sampled pose is worse than the bound, and the worst one is near the gap almost always", () => {
      let entries = 0;
      let met = 0;
      onEach((model, report) => {
        const sampled = expectProven(model, report, { travels: 9, steers: 17 });
        report.parts.forEach((entry, i) => {
          entries++;
          if (sampled[i]!.gap - entry.gap < entry.tolerance) met++;
        });
      });
      expect(met).toBeGreaterThan(0.9 * entries);
    });
  },
);
