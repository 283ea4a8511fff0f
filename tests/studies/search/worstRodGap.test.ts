import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { GAP_ROW } from "../../../src/gaps/partGap.ts";
import type { Model } from "../../../src/studies/model/model.ts";
import { pairGapTo, pairMotion } from "../../../src/studies/model/pairs.ts";
import { type CheckReport, checkClearance } from "../../../src/studies/reports/check.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import { assembledModel, demoSetup } from "../../reference/demoModel.ts";
import { expectAtPose, expectHonest, expectProven, expectTight } from "../../reference/expectCertified.ts";
import { hardwareSetup } from "../../reference/hardwareSetup.ts";
import { onEachOf, setupCases } from "../../reference/setupCases.ts";
import { runs } from "../../runs.ts";

const SEED = 1961;
const RUNS = runs(10, 16);

/** The same truck with moving parts and no body. */
function withHardware(setup: Model["setup"], change = {}): Model {
  const { truck } = setup;
  return assembledModel({ ...setup, truck: { ...truck, body: [] }, hardware: hardwareSetup(change) });
}

describe("moving parts of the demo truck, sampled at 25 heights × 49 steers and about the worst", () => {
  const variants = [null, "narrow hub face", "one inch more drop", "steeper pin"];
  it.each(variants.slice(0, runs(2, variants.length)))("variant %s", (variant) => {
    const model = withHardware(demoSetup(variant));
    const report = checkClearance(model)!;
    expectHonest(model, report);
    expectTight(report);
    expectAtPose(model, report);
    const sampled = expectProven(model, report, { travels: 25, steers: 49 });
    report.parts.forEach((entry, i) => {
      expect(sampled[i]!.gap - entry.bound).toBeLessThan(entry.tolerance);
    });
  });

  it("gaps of body parts are the same bits with and without them", () => {
    const setup = demoSetup();
    const plain = checkClearance(assembledModel({ ...setup, hardware: null }))!.parts;
    const both = checkClearance(assembledModel({ ...setup, hardware: hardwareSetup() }))!.parts;
    expect(both.slice(0, plain.length)).toEqual(plain);
    expect(both.length).toBeGreaterThan(plain.length);
  });
});

describe.each(["rack", "pitman"] as const)(
  `${RUNS} generated trucks with %s steering (seed ${SEED})`,
  (kind) => {
    let checked: { model: Model; report: CheckReport }[] = [];

    const onEach = (claim: (model: Model, report: CheckReport) => void) => onEachOf(checked, claim);

    beforeAll(() => {
      const models = fc.sample(setupCases(kind), { seed: SEED, numRuns: RUNS });
      // Thick arms and a large rotor, so that some rub.
      checked = models.map(({ setup }, i) => {
        const change =
          i % 2 === 0
            ? {}
            : {
                upperArm: { radius: 60 },
                lowerArm: { radius: 60 },
                tieRod: { radius: 50 },
                rotor: { diameter: 330, thickness: 30, inboard: 90 },
              };
        const model = withHardware(setup, change);
        return { model, report: checkClearance(model)! };
      });
    }, 300_000);

    it("clear and rubbing rods, and trucks that run out of reach, are among them", () => {
      const rods = checked.flatMap(({ report }) => report.parts.filter((e) => !e.together));
      for (const verdict of ["clear", "rubs"] as const) {
        expect(rods.filter((e) => e.verdict === verdict).length).toBeGreaterThan(0.1 * rods.length);
      }
      expect(checked.filter(({ report }) => report.limits.length > 0).length).toBeGreaterThan(RUNS / 16);
    });

    it("no verdict claims more than the bound proves", () => onEach(expectHonest));

    it("the gap is there at the pose reported, and the truck can take that pose", () => onEach(expectAtPose));

    it("the gap is within tolerance of the bound", () => onEach((_, report) => expectTight(report)));

    it("no sampled pose is worse than the bound", () => {
      let entries = 0;
      let met = 0;
      onEach((model, report) => {
        const sampled = expectProven(model, report, { travels: 7, steers: 13 });
        report.parts.forEach((entry, i) => {
          entries++;
          if (sampled[i]!.gap - entry.gap < entry.tolerance) met++;
        });
      });
      expect(met).toBeGreaterThan(0.9 * entries);
    });

    it("between two poses no gap changes by more than pairMotion allows", () => {
      const row = new Float64Array(GAP_ROW);
      let near = 0;
      onEach((model) => {
        const { droop, bump } = model.setup.travel;
        for (const [share, other, steer, turned] of [
          [0.2, 0.21, 0.3, 0.32],
          [0.5, 0.9, -0.5, 0.5],
          [0.7, 0.7, -0.2, -0.6],
        ] as const) {
          const a = solvePose(model.frontEnd, droop + share * (bump - droop), steer);
          const b = solvePose(model.frontEnd, droop + other * (bump - droop), turned);
          if (!a.ok || !b.ok) continue;
          for (const pair of model.pairs) {
            const change =
              pairGapTo(row, 0, pair, a[pair.side].row, 0) - pairGapTo(row, 0, pair, b[pair.side].row, 0);
            const most = pairMotion(pair, a[pair.side].row, 0, b[pair.side].row, 0);
            expect(Math.abs(change)).toBeLessThanOrEqual(most + 1e-5 + 1e-4 * Math.abs(row[0]!));
            if (pair.kind === "rod" && Math.abs(change) > 0.01 * most) near++;
          }
        }
      });
      expect(near).toBeGreaterThan(RUNS / 2);
    });
  },
);
