import { describe, expect, it } from "vitest";
import { chosenOf, noteChosen } from "../../../../src/app/choose/change/useChanges.ts";
import { chosenSentence } from "../../../../src/studies/wording/packetTexts.ts";

const report = { verdict: "rubs", changes: [], without: [] } as const;
const speech = { format: { units: "in", fraction: 16 }, document: {}, allowance: 6.35 } as const;

describe("a variant that was picked from a list of changes", () => {
  it("keeps the list of the truck it was worked out for, of its own document alone, the last where it was picked twice", () => {
    const one = { documentId: "d", variant: "nearer", of: null, report, speech, title: "Hub face to 5 in" };
    noteChosen(one);
    expect(chosenOf("d", "nearer")).toBe(one);
    expect([chosenOf("d", null), chosenOf("d", "wider"), chosenOf("other", "nearer")]).toEqual([
      null,
      null,
      null,
    ]);
    const again = { ...one, of: "wider" };
    noteChosen(again);
    expect(chosenOf("d", "nearer")).toBe(again);
  });

  it("is told with what the list was worked out for", () => {
    expect(chosenSentence(null, "Hub face to 5 in")).toBe(
      "Worked out for the current truck, before the change. Chosen: Hub face to 5 in.",
    );
    expect(chosenSentence("wider", "Hub face to 5 in")).toContain("for the variant “wider”");
  });
});
