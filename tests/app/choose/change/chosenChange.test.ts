import { describe, expect, it } from "vitest";
import { chosenOf, noteChosen } from "../../../../src/app/choose/change/useChanges.ts";
import { chosenSentence } from "../../../../src/studies/wording/packetTexts.ts";

const report = { verdict: "rubs", changes: [], without: [] } as const;
const speech = { format: { units: "in", fraction: 16 }, document: {}, allowance: 6.35 } as const;

describe("a variant that was picked from a list of changes", () => {
  it("keeps the list of the truck it was worked out for, of its own document alone, the last where it was picked twice", () => {
    const document = { knuckle: { hubFace: 5 } };
    const title = "Hub face to 5 in";
    const one = { documentId: "d", variant: "nearer", document, of: null, report, speech, title };
    noteChosen(one);
    expect(chosenOf("d", "nearer", { knuckle: { hubFace: 5 } })).toBe(one);
    expect([
      chosenOf("d", null, document),
      chosenOf("d", "wider", document),
      chosenOf("other", "nearer", document),
    ]).toEqual([null, null, null]);
    const again = { ...one, of: "wider" };
    noteChosen(again);
    expect(chosenOf("d", "nearer", document)).toBe(again);
  });

  it("is none any more where it was changed since, and is one again where that is undone", () => {
    const document = { knuckle: { hubFace: 5 } };
    const title = "Hub face to 5 in";
    noteChosen({ documentId: "e", variant: "nearer", document, of: null, report, speech, title });
    expect(chosenOf("e", "nearer", { knuckle: { hubFace: 5.5 } })).toBeNull();
    expect(chosenOf("e", "nearer", { knuckle: { hubFace: 5 } })?.documentId).toBe("e");
  });

  it("is told with what the list was worked out for", () => {
    expect(chosenSentence(null, "Hub face to 5 in")).toBe(
      "Worked out for the current truck, before the change. Chosen: Hub face to 5 in.",
    );
    expect(chosenSentence("wider", "Hub face to 5 in")).toContain("for the variant “wider”");
  });
});
