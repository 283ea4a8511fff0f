import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { heldValue } from "../../../src/app/measure/fields/stepBy.ts";
import { GivenMeshes } from "../../../src/app/state/givenMeshes.ts";
import { trucks } from "../../../src/app/state/truck.ts";

const setup = JSON.parse(readFileSync("shared/half-ton-limits.json", "utf8"));

function held(path: readonly string[], change: (document: typeof setup) => void) {
  const document = structuredClone(setup);
  change(document);
  const made = trucks.make(document, "test.json", null, new GivenMeshes(), false);
  if (!made.ok) throw new Error(made.issues.map(({ mend }) => mend).join("; "));
  return heldValue(made.value, path, document.units);
}

describe("what holds while a field is left out", () => {
  it("is told as what the field holds: an angle in degrees, a plain number plainly, a length in the file's unit", () => {
    const cone = held(["limits", "upperBallJoint", "cone"], (d) => {
      d.limits.upperBallJoint = {};
    });
    expect(cone).toBe(20);
    expect(held(["airSpring", "exponent"], () => {})).toBe(1.38);
    expect(held(["knuckle", "pinLead"], () => {})).toMatch(/^0( in)?$/);
  });
});
