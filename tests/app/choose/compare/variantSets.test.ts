import { describe, expect, it } from "vitest";
import type { NamedTruck } from "../../../../src/app/choose/compare/useVariantTrucks.ts";
import { setsOf } from "../../../../src/app/choose/compare/variantSets.ts";
import { GivenMeshes } from "../../../../src/app/state/givenMeshes.ts";
import { trucks } from "../../../../src/app/state/truck.ts";
import { exampleDocument } from "../../exampleText.ts";

const INCHES = { units: "in", fraction: 16 } as const;

/** The trucks of a document with these variants, as they stand side by side. */
function columnsOf(variants: readonly unknown[], names: readonly string[]): readonly NamedTruck[] {
  const document = { ...exampleDocument, variants };
  return [null, ...names].map((variant) => {
    const made = trucks.make(document, "test.json", variant, new GivenMeshes());
    if (!made.ok) throw new Error(made.issues[0]!.mend);
    return { variant, truck: made.value };
  });
}

const narrow = { name: "narrow", patch: { knuckle: { hubFace: "5 5/8" } } };

describe("what variants set", () => {
  it("is told of the document that the trucks were made of", () => {
    expect(setsOf(columnsOf([narrow], ["narrow"]), INCHES)).toEqual([
      "“narrow” sets hub-face distance 5 5/8 in, now 1/2 in less than the current truck’s.",
    ]);
    const wide = { name: "narrow", patch: { wheel: { rimWidth: 9 } } };
    expect(setsOf(columnsOf([wide], ["narrow"]), INCHES)).toEqual([
      "“narrow” sets rim width 9 in, now 1 in more than the current truck’s.",
    ]);
  });

  it("is told past entries that are no variants", () => {
    const [current, made] = columnsOf([narrow], ["narrow"]);
    const document = { ...exampleDocument, variants: [null, 5, ["narrow"], narrow] };
    const columns = [{ variant: null, truck: { ...current!.truck!, document } }, made!];
    const sentences = setsOf(columns, INCHES);
    expect(sentences).toHaveLength(1);
    expect(sentences[0]).toContain("5 5/8 in");
  });

  it("is nothing where the truck itself does not go together", () => {
    const [, made] = columnsOf([narrow], ["narrow"]);
    expect(setsOf([{ variant: null, truck: null }, made!], INCHES)).toEqual([]);
  });
});
