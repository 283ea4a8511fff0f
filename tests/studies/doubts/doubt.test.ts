import { describe, expect, it } from "vitest";
import { answerState, type Doubt } from "../../../src/studies/doubts/doubt.ts";
import {
  answerHeadline,
  answerSentence,
  answerWord,
  conditionLines,
} from "../../../src/studies/wording/answerWords.ts";

const unusual: Doubt = {
  kind: "unusual",
  path: ["knuckle", "hubFace"],
  also: [],
  readings: [],
  text: "Hub-face distance 60 in.",
  confirm: { check: "hubFace", at: "knuckle.hubFace", length: 60 },
};
const example: Doubt = { kind: "fromExample", path: ["knuckle", "span"], text: "Span." };

describe("an answer with inputs in doubt", () => {
  it("is not told as clear; what rubs or is close stays told", () => {
    expect(answerState({ verdict: "clear" }, [])).toBe("clear");
    expect(answerState({ verdict: "clear" }, [example])).toBe("fromExample");
    expect(answerState({ verdict: "clear" }, [example, unusual])).toBe("unusual");
    for (const verdict of ["rubs", "close"] as const)
      expect(answerState({ verdict }, [unusual, example])).toBe(verdict);
  });

  it("and of a check that was cut short only what rubs is told as finished", () => {
    const cutShort = true as const;
    for (const verdict of ["close", "clear"] as const)
      expect(answerState({ verdict, cutShort }, [unusual, example])).toBe("unfinished");
    expect(answerState({ verdict: "rubs", cutShort }, [])).toBe("rubs");
    expect([answerHeadline("unfinished"), answerWord("unfinished")]).toEqual([
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
    expect(answerHeadline("unusual") + answerWord("unusual")).not.toMatch(/clear/i);
    expect([answerHeadline("fromExample"), answerWord("fromExample")]).toEqual([
      "The example clears",
      "the example clears",
    ]);
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
