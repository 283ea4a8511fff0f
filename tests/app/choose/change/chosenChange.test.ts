import { describe, expect, it } from "vitest";
import { type ChosenChange, chosenChangesIn } from "../../../../src/app/choose/change/chosenChanges.ts";
import { chosenSentence } from "../../../../src/studies/wording/packetTexts.ts";
import { memoryStore } from "../../memoryStore.ts";

const document = { knuckle: { hubFace: 5 } };
const one: ChosenChange = {
  ...{ documentId: "d", variant: "nearer", document, of: null, at: 0 },
  report: { verdict: "rubs", changes: [], without: [] },
  speech: { document: {}, allowance: 6.35 },
};

describe("a variant that was picked from a list of changes", () => {
  it("keeps the list of the truck it was worked out for, of its own document alone, the last where it was picked twice", () => {
    const { note, of } = chosenChangesIn(memoryStore());
    note(one);
    expect(of("d", "nearer", { knuckle: { hubFace: 5 } })).toBe(one);
    expect([of("d", null, document), of("d", "wider", document), of("other", "nearer", document)]).toEqual([
      null,
      null,
      null,
    ]);
    const again = { ...one, of: "wider" };
    note(again);
    expect(of("d", "nearer", document)).toBe(again);
  });

  it("is none any more where it was changed since, and is one again where that is undone", () => {
    const { note, of } = chosenChangesIn(memoryStore());
    note(one);
    expect(of("d", "nearer", { knuckle: { hubFace: 5.5 } })).toBeNull();
    expect(of("d", "nearer", { knuckle: { hubFace: 5 } })?.documentId).toBe("d");
  });

  it("is one after a reload, beside what another page noted, and where it was noted before the box answered", async () => {
    const box = memoryStore();
    const [first, other] = [chosenChangesIn(box), chosenChangesIn(box)];
    first.note(one);
    other.note({ ...one, variant: "wider" });
    await Promise.all([first.written(), other.written()]);
    const reloaded = chosenChangesIn(box);
    reloaded.note({ ...one, variant: "early" });
    await reloaded.written();
    for (const variant of ["nearer", "wider", "early"])
      expect(reloaded.of("d", variant, document), variant).toMatchObject({ at: 0, of: null });
  });

  it("lasts as long as the page where the browser keeps nothing", async () => {
    const box = memoryStore();
    const refuse = () => Promise.reject(new Error("no storage"));
    Object.assign(box, { get: refuse, update: refuse });
    const { note, of, written } = chosenChangesIn(box);
    note(one);
    await written();
    expect(of("d", "nearer", document)).toBe(one);
  });

  it("is told with what the list was worked out for", () => {
    expect(chosenSentence(null, "Hub face to 5 in")).toBe(
      "Worked out for the current truck, before the change. Chosen: Hub face to 5 in.",
    );
    expect(chosenSentence("wider", "Hub face to 5 in")).toContain("for the variant “wider”");
  });
});
