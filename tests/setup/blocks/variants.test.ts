import { describe, expect, it } from "vitest";
import { formatIssue } from "../../../src/setup/reading/issueList.ts";
import { resolveSetup } from "../../../src/setup/resolveSetup.ts";
import { exampleDocument } from "../fixtures.ts";

function report(document: unknown, variant: string | null = null): readonly string[] {
  const setup = resolveSetup(document, "truck.json", variant);
  return setup.ok ? [] : setup.issues.map(formatIssue);
}

function withVariants(...variants: unknown[]): unknown {
  return { ...exampleDocument(), variants };
}

describe("variants", () => {
  it("change what their patch names and nothing else", () => {
    const base = resolveSetup(exampleDocument(), "truck.json");
    const narrow = resolveSetup(exampleDocument(), "truck.json", "narrow");
    if (!base.ok || !narrow.ok) throw new Error("the example must be sound");
    expect(narrow.value.variant).toBe("narrow");
    expect(narrow.value.knuckle.hubFace).toBeCloseTo(base.value.knuckle.hubFace - 12.7, 9);
    const { hubFace } = base.value.knuckle;
    expect({ ...narrow.value, variant: null, knuckle: { ...narrow.value.knuckle, hubFace } }).toEqual(
      base.value,
    );
  });

  it("take a key out with null, so backspacing can give way to offset", () => {
    const setup = resolveSetup(exampleDocument(), "truck.json", "wide wheel");
    expect(setup.ok && setup.value.wheel).toMatchObject({ offset: -6, rimWidth: expect.closeTo(203.2, 9) });
  });

  it("with an empty patch give the base's numbers to the last bit", () => {
    const base = resolveSetup(withVariants(), "truck.json");
    const same = resolveSetup(withVariants({ name: "same", patch: {} }), "truck.json", "same");
    if (!base.ok || !same.ok) throw new Error("the example must be sound");
    expect(JSON.stringify({ ...same.value, variant: null, variantNames: [] })).toBe(
      JSON.stringify(base.value),
    );
  });

  it("that are not there are named with the nearest and with all there are", () => {
    expect(report(exampleDocument(), "narow")).toEqual([
      'truck.json: variants: "narow": no such variant; did you mean "narrow"?; there are "narrow", "wide wheel"',
    ]);
    expect(report(exampleDocument(), "")).toEqual([
      'truck.json: variants: "": no such variant; there are "narrow", "wide wheel"',
    ]);
    expect(report(withVariants(), "narrow")).toEqual([
      'truck.json: variants: "narrow": this setup has no variants',
    ]);
  });

  it("must be sound though they are not chosen, and are named with the key", () => {
    const document = withVariants(
      { name: "typo", patch: { knuckle: { hubFase: 5 } } },
      { name: "unit", patch: { knuckle: { hubFace: "5 im" } } },
      { name: "gone", patch: { travel: null } },
    );
    expect(report(document)).toEqual([
      'truck.json: knuckle.hubFase: 5: in variant "typo": unknown key; did you mean "hubFace"?',
      'truck.json: knuckle.hubFace: "5 im": in variant "unit": unknown unit "im"; did you mean "in"?',
      'truck.json: travel: nothing: in variant "gone": required: range of the wheel center\'s vertical movement from where the truck was measured',
    ]);
  });

  it("are checked as a whole: a larger rim must still fit the tire", () => {
    expect(report(withVariants({ name: "17s", patch: { wheel: { rimDiameter: 17 } } }))).toEqual([
      'truck.json: tire.size: "P225/70R15": in variant "17s": is made for a 15 in rim; fix this or wheel.rimDiameter',
    ]);
  });

  it("do not repeat what is wrong in the setup itself", () => {
    const document = { ...exampleDocument(), allowance: -1 };
    expect(report(document)).toEqual(["truck.json: allowance: -1: must be 0 or more"]);
  });

  it("cannot share a name, hold variants, or be anything but an object of changes", () => {
    expect(report(withVariants({ name: "a", patch: {} }, { name: "a", patch: {} }))).toEqual([
      'truck.json: variants[1].name: "a": is the name of entry 0 already; each needs its own',
    ]);
    expect(report(withVariants({ name: "a", patch: { variants: [] } }))).toEqual([
      "truck.json: variants[0].patch.variants: []: a variant cannot hold variants; remove it",
    ]);
    expect(report(withVariants({ name: "a", patch: [] }, { name: "b" }, 5))).toEqual([
      "truck.json: variants[0].patch: []: must be an object, { … }",
      "truck.json: variants[1].patch: nothing: required: the keys to change",
      "truck.json: variants[2]: 5: must be an object, { … }",
    ]);
  });
});
