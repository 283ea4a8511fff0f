import { describe, expect, it } from "vitest";
import { mergePatch } from "../../../src/setup/reading/mergePatch.ts";
import { resolveSetup } from "../../../src/setup/resolveSetup.ts";
import { modelOf } from "../../../src/studies/model/model.ts";
import { variantSetsSentence } from "../../../src/studies/wording/variantWords.ts";
import { example } from "../loads/loadTruck.ts";

const modelWith = (patch: object) => {
  const { variants: _, ...document } = example("half-ton-limits.json") as Record<string, unknown>;
  const patched = mergePatch(document, patch);
  if (!patched.ok) throw new Error(patched.key);
  const setup = resolveSetup(patched.value, "t");
  if (!setup.ok) throw new Error(JSON.stringify(setup.issues));
  const model = modelOf(setup.value, "t");
  if (!model.ok) throw new Error(JSON.stringify(model.issues));
  return model.value;
};

const PATCH = { knuckle: { pinHeight: "6 3/8", hubFace: "5 13/16" } };
const told = (current: object) =>
  variantSetsSentence({ name: "one inch more drop", patch: PATCH }, modelWith(PATCH), modelWith(current), {
    units: "in",
  });

describe("what a variant sets", () => {
  it("is told beside the current truck as it is now, whatever the variant is called", () => {
    expect(told({})).toBe(
      "“one inch more drop” sets hub-face distance 5 13/16 in, now 1/2 in less than the current truck’s and pin height 6 3/8 in, now 1 in more than the current truck’s.",
    );
    expect(told({ knuckle: { pinHeight: "8 3/8" } })).toContain(
      "pin height 6 3/8 in, now 2 in less than the current truck’s",
    );
    expect(told(PATCH)).toContain("pin height 6 3/8 in, now as the current truck’s");
  });

  it("is nothing where it sets none of the numbers compared", () => {
    const current = modelWith({});
    expect(variantSetsSentence({ name: "x", patch: { floor: {} } }, current, current, { units: "in" })).toBe(
      "",
    );
  });
});
