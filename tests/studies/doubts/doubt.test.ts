import { describe, expect, it } from "vitest";
import { answerState, type Doubt, ofTheTruck } from "../../../src/studies/doubts/doubt.ts";
import type { AsBuiltTruck } from "../../../src/studies/jig/asBuiltTruck.ts";
import type { CheckEntry } from "../../../src/studies/reports/check.ts";
import {
  answerHeadline,
  answerSentence,
  answerWord,
  conditionLines,
} from "../../../src/studies/wording/answerWords.ts";
import { gapSentences } from "../../../src/studies/wording/asBuiltTruckWords.ts";
import { type WorstFacts, worstFactsText } from "../../../src/studies/wording/gapTexts.ts";
import { assembledModel, demoSetup } from "../../reference/demoModel.ts";

const unusual: Doubt = {
  kind: "unusual",
  path: ["knuckle", "hubFace"],
  also: [],
  readings: [],
  text: "Hub-face distance 60 in.",
  confirm: { check: "hubFace", at: "knuckle.hubFace", length: 60 },
};
const entry: CheckEntry = {
  ...{ part: "fender lip", side: "left", verdict: "clear", point: [0, 0, 0] },
  ...{ gap: 12.7, bound: 12.65, tolerance: 0.1, travel: 0, steer: 0 },
};
const worst: WorstFacts = {
  state: "fromExample",
  told: { entry, twin: null, surface: "tire", part: "fender lip" },
};
/** Of a truck whose numbers are all its own. */
const own = { fromExample: null };
const example: Doubt = { kind: "fromExample", path: ["knuckle", "span"], text: "Span." };

describe("an answer with inputs in doubt", () => {
  it("is not told as clear; what rubs or is close stays told", () => {
    expect(answerState({ verdict: "clear" }, [])).toBe("clear");
    expect(answerState({ verdict: "clear" }, [example])).toBe("fromExample");
    expect(answerState({ verdict: "clear" }, [example, unusual])).toBe("unusual");
    for (const verdict of ["rubs", "close"] as const)
      expect(answerState({ verdict }, [unusual, example])).toBe(verdict);
  });

  it("a reading off the jig is of the knuckles as built, and withholds nothing of the truck", () => {
    const jig: Doubt = { ...unusual, path: ["asBuilt", "left", "faceFront"] };
    expect(ofTheTruck([jig, unusual, example])).toEqual([unusual, example]);
    expect(answerState({ verdict: "clear" }, ofTheTruck([jig]))).toBe("clear");
  });

  it("so it puts a condition on what the truck does on the knuckles as built alone", () => {
    const jig: Doubt = { ...unusual, path: ["asBuilt", "left", "front"] };
    const model = assembledModel(demoSetup());
    const check = { verdict: "clear", parts: [entry], worst: entry, limits: [] };
    const truck = { asOrdered: { check }, asBuilt: { check } } as unknown as AsBuiltTruck;
    const told = (...doubts: Doubt[]) =>
      gapSentences(truck, { ordered: model, built: model }, doubts, { units: "in" });
    const [asOrdered, asBuilt] = told(jig);
    expect(asOrdered).toMatch(/^As ordered: Everything clears/);
    expect(asBuilt).toMatch(/^As built: If what is unusual is right, everything clears/);
    for (const sentence of told(jig, example))
      expect(sentence).toMatch(/^As (ordered|built): If .*the example's numbers are this truck's, /);
  });

  it("and of a check that was cut short only what rubs is told as finished", () => {
    const cutShort = true as const;
    for (const verdict of ["close", "clear"] as const)
      expect(answerState({ verdict, cutShort }, [unusual, example])).toBe("unfinished");
    expect(answerState({ verdict: "rubs", cutShort }, [])).toBe("rubs");
    expect([answerHeadline("unfinished", own), answerWord("unfinished", own)]).toEqual([
      ...["Not finished", "not finished"],
    ]);
  });

  it("is put under its conditions in words", () => {
    const told = "Everything clears: the closest is the lip.";
    expect(answerSentence(told, "clear", [])).toBe(told);
    expect(answerSentence(told, "unusual", [unusual])).toBe(
      "If what is unusual is right, everything clears: the closest is the lip.",
    );
    expect(answerSentence(told, "fromExample", [example])).toBe(
      "If the example's numbers are this truck's, everything clears: the closest is the lip.",
    );
    expect(answerSentence(told, "unusual", [unusual, example])).toBe(
      "If what is unusual is right and the example's numbers are this truck's, everything clears: the closest is the lip.",
    );
    expect(answerHeadline("unusual", own) + answerWord("unusual", own)).not.toMatch(/clear/i);
  });

  it("is the example's own only as long as every number is the example's", () => {
    const marks = { of: "Half-ton", fields: [["knuckle", "span"]], mine: [], read: [], mineInAll: [] };
    const asItCame = { fromExample: { ...marks, isAsItCame: true } };
    const partly = { fromExample: { ...marks, isAsItCame: false } };
    const words = (of: typeof partly) => [
      answerHeadline("fromExample", of),
      answerWord("fromExample", of),
      worstFactsText(worst, of, { units: "in" }),
    ];
    expect(words(asItCame)).toEqual([
      ...["The example clears", "the example clears", "the example clears by 1/2 in"],
    ]);
    expect(words(partly)).toEqual([
      "Clears, partly from the example",
      "clears, partly from the example",
      "clears, partly from the example: 1/2 in",
    ]);
    for (const state of ["unusual", "clear"] as const)
      expect(answerHeadline(state, asItCame)).toBe(answerHeadline(state, own));
  });

  it("is put under its conditions once for all that is said of trucks side by side", () => {
    const lines = (a: readonly Doubt[], b: readonly Doubt[]) =>
      conditionLines([
        { letter: "A", doubts: a },
        { letter: "B", doubts: b },
      ]);
    expect(lines([], [])).toEqual([]);
    expect(lines([example], [example])).toEqual([
      "All that is said here holds only if the example's numbers are this truck's.",
    ]);
    expect(lines([], [unusual])).toEqual(["What is said of B holds only if what is unusual is right."]);
    expect(lines([example], [unusual, example])).toEqual([
      "What is said of A holds only if the example's numbers are this truck's.",
      "What is said of B holds only if what is unusual is right and the example's numbers are this truck's.",
    ]);
  });
});
