import { expect, test } from "vitest";
import { envelopeOf } from "../../../src/studies/envelope/envelopeOf.ts";
import { straightRange } from "../../../src/studies/envelope/envelopeRange.ts";
import { proveContainment } from "../../../src/studies/envelope/proveContainment.ts";
import { stepBudget } from "../../reference/stepBudget.ts";
import { runs } from "../../runs.ts";
import { demoModel } from "../demoModel.ts";

/** mm. Times √2, for the section's square corners, it stays under the half millimeter promised. */
const ALLOWED = 0.35;

const model = demoModel();
// On every change a part of the travel.
const range = { ...straightRange(model), ...(runs(1, 0) ? { travelLow: -30, travelHigh: 10 } : {}) };
const made = envelopeOf(model, "left", range);
if (!made.ok) throw new RangeError(made.reason);
const { mesh } = made.envelope;

test("between all poses too, the surface is proven to stay out of the ring but for a third of a millimeter", () => {
  const proof = proveContainment(model, "left", range, mesh, ALLOWED);
  expect(proof?.proven).toBe(true);
  expect(proof?.deepest).toBeLessThanOrEqual(ALLOWED);
});

test("a surface moved 2 mm aside is found out", () => {
  const positions = mesh.positions.map((v, i) => (i % 3 === 1 ? v - 2 : v));
  const proof = proveContainment(model, "left", range, { ...mesh, positions }, ALLOWED);
  expect(proof?.proven).toBe(false);
  expect(proof?.deepest).toBeGreaterThan(ALLOWED);
});

test("stops when asked to", () => {
  expect(proveContainment(model, "left", range, mesh, ALLOWED, stepBudget(1)).proven).toBe(false);
});
