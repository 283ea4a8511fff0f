import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readMaterials } from "../../../src/setup/catalogs/readMaterials.ts";
import { limitTravel } from "../../../src/studies/limits/limitsPassed.ts";
import { caseAt, type ForceName, forceSizes } from "../../../src/studies/loads/caseAt.ts";
import { strengthOf } from "../../../src/studies/loads/strengthOf.ts";
import { searchWorst } from "../../../src/studies/loads/worstPoses.ts";
import { Budget } from "../../../src/studies/numeric/budget.ts";
import { runs } from "../../runs.ts";
import { example, truckOf } from "./loadTruck.ts";

const read = readMaterials(
  JSON.parse(readFileSync(new URL("../../../shared/catalogs/materials.json", import.meta.url), "utf8")),
  "materials.json",
);
const catalog = read.ok ? read.value : [];

/** Every pose of a dense lattice, and one drawn anywhere in each of its cells: nothing the search looks at. */
function* walk(low: number, high: number, rows: number): Generator<readonly [travel: number, steer: number]> {
  const drawn = fc.sample(fc.double({ min: 0, max: 1, noNaN: true }), { numRuns: 2 * rows * rows, seed: 11 });
  const at = (i: number, k: number) => [low + ((high - low) * i) / rows, -1 + (2 * k) / rows] as const;
  for (let i = 0; i <= rows; i++)
    for (let k = 0; k <= rows; k++) {
      yield at(i, k);
      const one = 2 * (rows * i + k);
      if (i < rows && k < rows) yield at(i + drawn[one]!, k + drawn[one + 1]!);
    }
}

describe("the largest force of a case", () => {
  it.each(["ordered-knuckle.json", "tubular-knuckle.json"])(
    "is not passed at any pose of a lattice, nor at one drawn in each of its cells, and what is told is there: %s",
    (name) => {
      const { model, carriers } = truckOf(example(name));
      const { low, high } = limitTravel(model);
      const { worst } = searchWorst(model, carriers, null, carriers.cases, Budget.endless());
      for (const one of carriers.cases) {
        const told = worst.filter((force) => force.case === one.name && force.side === "left");
        const of = new Map(told.map(({ name, size }) => [name, size]));
        for (const [travel, steer] of walk(low, high, runs(25, 40))) {
          const at = caseAt(model, carriers, one, "left", travel, steer);
          for (const [force, size] of at ? (Object.entries(forceSizes(at)) as [ForceName, number][]) : [])
            expect(size, `${one.name}, ${force}`).toBeLessThanOrEqual(of.get(force)! * (1 + 1e-5));
        }
        for (const { name, travel, steer, size } of told)
          expect(forceSizes(caseAt(model, carriers, one, "left", travel, steer)!)[name]).toBe(size);
      }
    },
  );

  it("on both sides of a mirrored truck is the same, steered the other way", () => {
    const { model, carriers } = truckOf(example("tubular-knuckle.json"));
    const { worst } = searchWorst(model, carriers, null, carriers.cases.slice(0, 2), Budget.endless());
    for (const { name, side, travel, steer, size, ...rest } of worst) {
      if (side !== "left") continue;
      const other = worst.find((one) => one.name === name && one.case === rest.case && one.side === "right");
      expect(other).toMatchObject({ travel, size });
      expect(other!.steer).toBeCloseTo(-steer, 12);
    }
  });
});

describe("the largest share of yield", () => {
  it.each(["bump", "braking", "curb strike"])("is not passed on a denser walk: %s", (name) => {
    const { model, carriers } = truckOf(example("ordered-knuckle.json"));
    const strength = strengthOf(model.setup, catalog)!;
    const one = carriers.cases.find((each) => each.name === name)!;
    const { low, high } = limitTravel(model);
    const { cases } = searchWorst(model, carriers, strength, [one], Budget.endless());
    const share = (at: Parameters<typeof strength.at>[0]) =>
      Math.max(...strength.at(at).stresses.map(({ shareOfYield }) => shareOfYield));
    const told = share(cases[0]!.at);
    for (const [travel, steer] of walk(low, high, runs(12, 20))) {
      const at = caseAt(model, carriers, one, "left", travel, steer);
      if (at) expect(share(at)).toBeLessThanOrEqual(told * (1 + 1e-5));
    }
  });
});
