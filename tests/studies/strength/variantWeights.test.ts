import { describe, expect, it } from "vitest";
import { variantWeights } from "../../../src/studies/strength/variantWeights.ts";
import { unsprungSentence, weightDifference } from "../../../src/studies/wording/weightWords.ts";
import { example } from "../loads/loadTruck.ts";

const KG_PER_POUND = 0.45359237;
/** lb/in³ of steel, as the weights take it. */
const STEEL = 0.2836;

describe("the weight of each variant's knuckle", () => {
  const document = example("tubular-knuckle.json");
  const weights = variantWeights(document, "truck.json");
  const [base, , , , light] = weights;

  it("is told in the order of the setup and its variants, against the setup as it stands", () => {
    expect(weights.map(({ name }) => name)).toEqual([
      null,
      "narrow hub face",
      "one inch more drop",
      "steeper pin",
      "lighter posts, no braces",
    ]);
    expect(base!.more).toBe(0);
    expect(weightDifference(base!, "in")).toBe("what the others are weighed against");
  });

  it("counts the pin as long as the hub face asks: an inch narrower is an inch of its root step less, by hand", () => {
    const inch = STEEL * (Math.PI / 4) * 2.25 ** 2;
    expect(weights[1]!.more! / KG_PER_POUND).toBeCloseTo(-inch, 3);
    expect(weightDifference(weights[1]!, "in")).toBe(`${inch.toFixed(1)} lb less than the current truck’s`);
  });

  it("differs by the tubes that differ, by hand: two braces gone, two posts thinner", () => {
    const tube = (outer: number, wall: number, long: number) =>
      STEEL * (Math.PI / 4) * (outer ** 2 - (outer - 2 * wall) ** 2) * long;
    const brace = (z: number) => tube(0.75, 0.125, Math.hypot(2.176, 5.05 - z));
    const posts = 9 - 1.625;
    const less = brace(2) + brace(8.5) + tube(1.75, 0.25, posts) - tube(1.5, 0.188, posts);
    expect(light!.more! / KG_PER_POUND).toBeCloseTo(-less, 3);
    expect(weightDifference(light!, "in")).toBe(`${less.toFixed(1)} lb less than the current truck’s`);
  });

  it("takes the difference off what does not ride on the spring, unless the variant says its own", () => {
    expect(light!.unsprung! - base!.unsprung!).toBeCloseTo(light!.more!, 9);
    expect(unsprungSentence(base!, "in")).toBe("Unsprung weight of a side: 95.0 lb.");
    const variants = [{ name: "weighed", patch: { build: { plates: [] }, masses: { unsprung: 88 } } }];
    const [, weighed] = variantWeights({ ...document, variants }, "truck.json");
    expect(weighed!.more).toBeLessThan(0);
    expect(weighed!.unsprung! / KG_PER_POUND).toBeCloseTo(88, 6);
  });

  it("is not told of a setup without a build, and a variant without one is not weighed", () => {
    const { build: _, ...bare } = document;
    expect(variantWeights(bare, "truck.json").every(({ mass }) => mass === null)).toBe(true);
    const variants = [{ name: "no build", patch: { build: null } }];
    const [, none] = variantWeights({ ...document, variants }, "truck.json");
    expect(none).toMatchObject({ mass: null, more: null });
    expect(weightDifference(none!, "in")).toBe("no members, plates or pin to weigh");
  });
});
