import { describe, expect, it } from "vitest";
import { GivenMeshes } from "../../src/app/state/givenMeshes.ts";
import {
  fieldDraft,
  fieldIssue,
  fieldText,
  isDirty,
  isOfVariant,
  variantFaults,
} from "../../src/app/state/selectors.ts";
import { shownIssues } from "../../src/app/state/shownIssues.ts";
import { createWorkbenchStore } from "../../src/app/state/workbenchStore.ts";
import type { KeyPath } from "../../src/setup/types/keyPath.ts";
import { valueAt } from "../../src/setup/types/keyPath.ts";
import { exampleDocument, exampleText } from "./exampleText.ts";

const HUB_FACE = ["knuckle", "hubFace"];
const SPAN = ["knuckle", "span"];

function opened() {
  const store = createWorkbenchStore(exampleText, "test.json");
  const at = (path: KeyPath) => valueAt(store.getState().document, path);
  return { store, at, actions: store.getState(), state: () => store.getState() };
}

describe("editing a field", () => {
  it("writes what was typed and moves the truck in the same step", () => {
    const { store, at, actions } = opened();
    const seen: unknown[] = [];
    store.subscribe((s) => seen.push([valueAt(s.document, HUB_FACE), s.truck?.setup.knuckle.hubFace]));
    actions.editField(HUB_FACE, "5 5/8 + 1/8");
    expect(at(HUB_FACE)).toBe("5 3/4");
    expect(seen).toEqual([["5 3/4", expect.closeTo(146.05, 9)]]);
  });

  it("keeps text that is no value as a draft with its mend, and the document and the truck as they were", () => {
    const { at, actions, state } = opened();
    const { document, truck } = state();
    actions.editField(HUB_FACE, "5 5/8 im");
    expect([state().document, state().truck]).toEqual([document, truck]);
    expect(fieldDraft(state(), HUB_FACE)).toMatchObject({
      text: "5 5/8 im",
      mend: expect.stringContaining('"in"'),
    });
    expect(fieldText(state(), HUB_FACE)).toBe("5 5/8 im");
    expect(isDirty(state())).toBe(true);
    actions.editField(HUB_FACE, "5 5/8");
    expect([at(HUB_FACE), fieldDraft(state(), HUB_FACE)]).toEqual(["5 5/8", null]);
  });

  it("forgets a draft when asked to, or when its block is replaced", () => {
    const { actions, state } = opened();
    actions.editField(HUB_FACE, "wide");
    actions.discardDraft(HUB_FACE);
    expect(fieldText(state(), HUB_FACE)).toBe("6 1/8");
    actions.editField(["knuckle", "steeringArm", 1], "x");
    actions.editField(["knuckle", "steeringArm"], ["-6", "-1", "1"]);
    expect(state().drafts).toEqual({});
  });

  it("keeps how well a number is known: typed, shown in other units, stepped, undone", () => {
    const { store, at, actions, state } = opened();
    const plain = state().truck!.setup;
    actions.editField(HUB_FACE, "6 1/8 +/- 1/16");
    expect(at(HUB_FACE)).toBe("6 1/8 ± 1/16");
    expect(fieldText(state(), HUB_FACE)).toBe("6 1/8 ± 1/16");
    expect(state().truck!.setup).toMatchObject({ knuckle: plain.knuckle, within: [{ path: HUB_FACE }] });
    actions.stepField(HUB_FACE, 1);
    expect(fieldText(state(), HUB_FACE)).toBe("6 3/16 ± 1/16");
    store.temporal.getState().undo();
    expect(at(HUB_FACE)).toBe("6 1/8 ± 1/16");
    actions.setLengths("mm");
    expect(fieldText(state(), HUB_FACE)).toBe("155.575 ± 1.5875");
    actions.stepField(HUB_FACE, 1);
    expect(state().truck!.setup.within[0]).toMatchObject({ kind: "length", within: 1.5875 });
    actions.editField(["knuckle", "pinAngle"], "8.4 ± 0.2");
    actions.stepField(["knuckle", "pinAngle"], 1);
    expect(at(["knuckle", "pinAngle"])).toBe("8.5 ± 0.2");
    // Typed without it, it is gone; text that is none stays as typed, with its mend.
    actions.editField(HUB_FACE, "150 ± some");
    expect(fieldDraft(state(), HUB_FACE)).toMatchObject({ text: "150 ± some" });
    actions.editField(HUB_FACE, "150");
    expect(state().truck!.setup.within.map(({ path }) => path)).toEqual([["knuckle", "pinAngle"]]);
  });

  it("takes numbers in the file's units and text in the units shown", () => {
    const { at, actions, state } = opened();
    actions.setLengths("mm");
    actions.editField(HUB_FACE, "150");
    expect(at(HUB_FACE)).toBe("150 mm");
    expect(fieldText(state(), HUB_FACE)).toBe("150");
    // Left as it was, or typed again, it is not written anew in other units.
    actions.editField(HUB_FACE, 6);
    actions.editField(HUB_FACE, "152.4");
    expect(at(HUB_FACE)).toBe(6);
    expect(fieldText(state(), HUB_FACE)).toBe("152.4");
    actions.setLengths("1/64");
    expect(fieldText(state(), HUB_FACE)).toBe("6");
  });

  it("steps by the fraction shown, and angles by tenths of a degree", () => {
    const { at, actions } = opened();
    actions.stepField(HUB_FACE, 1);
    expect(at(HUB_FACE)).toBe("6 3/16 in");
    actions.setLengths("1/32");
    actions.stepField(HUB_FACE, -1);
    expect(at(HUB_FACE)).toBe("6 5/32 in");
    actions.setLengths("mm");
    actions.stepField(HUB_FACE, 1);
    expect(at(HUB_FACE)).toBe("157 mm");
    actions.stepField(["knuckle", "pinAngle"], 1, 3);
    expect(at(["knuckle", "pinAngle"])).toBe(8.7);
  });

  it("takes a field out, so that its default holds", () => {
    const { actions, state } = opened();
    actions.editField(["allowance"], "1/2");
    actions.removeField(["allowance"]);
    expect("allowance" in state().document!).toBe(false);
    expect(state().truck?.setup.allowance).toBeCloseTo(6.35, 9);
  });

  it("refuses a field that no setup has", () => {
    const { actions, state } = opened();
    const { document } = state();
    actions.editField(["knuckle", "hubFaec"], "5");
    expect(state().document).toBe(document);
    expect(Object.values(state().drafts)).toHaveLength(1);
  });
});

describe("a setup that does not go together", () => {
  it("keeps the last good picture, names the key, and offers the nearest value that does and the one before", () => {
    const { at, actions, state } = opened();
    const { truck } = state();
    actions.editField(SPAN, "40");
    expect(state().truck).toBe(truck);
    expect(fieldIssue(state(), SPAN)?.mend).toContain("it closes");
    const [issue] = shownIssues(state());
    expect(issue?.path).toEqual(SPAN);
    expect(issue?.suggestions.map(({ kind }) => kind)).toEqual(["nearest", "before"]);
    const [nearest, before] = issue!.suggestions;
    expect(before?.value).toBe(10.52);
    actions.applySuggestion(nearest!);
    expect(state().issues).toEqual([]);
    const span = state().truck!.setup.knuckle.span;
    expect(span / 25.4 / (1 / 16)).toBeCloseTo(Math.round(span / 25.4 / (1 / 16)), 9);
    // A sixteenth more does not go: it is the nearest.
    actions.stepField(SPAN, 1);
    expect(state().issues).not.toEqual([]);
    expect(at(SPAN)).not.toBe(nearest?.value);
  });

  it("offers the nearest value of the field that was changed, though another is named", () => {
    const { actions, state } = opened();
    const path = ["truck", "upperArm", "ballJoint", 1];
    actions.editField(path, 45);
    const [issue] = shownIssues(state());
    expect(issue?.key).toBe("knuckle.span");
    expect(issue?.suggestions[0]?.path).toEqual(path);
    actions.applySuggestion(issue!.suggestions[0]!);
    expect(state().issues).toEqual([]);
    actions.stepField(path, 1);
    expect(state().issues).not.toEqual([]);
  });

  it("offers nothing while a gesture goes on, so that a drag stays quick", () => {
    const { actions, state } = opened();
    actions.beginGesture();
    actions.editField(SPAN, "40");
    expect(shownIssues(state())[0]?.suggestions).toEqual([]);
    actions.endGesture();
    expect(shownIssues(state())[0]?.suggestions).toHaveLength(2);
    expect(shownIssues(state())).toBe(shownIssues(state()));
  });
});

describe("editing while a variant is shown", () => {
  it("goes to the variant, unless it is meant for the setup below", () => {
    const { at, actions, state } = opened();
    actions.chooseVariant("narrow");
    actions.editField(SPAN, "10 5/8");
    expect(at(SPAN)).toBe(10.52);
    expect(at(["variants", 0, "patch"])).toEqual({ knuckle: { hubFace: "5 5/8", span: "10 5/8" } });
    expect([isOfVariant(state(), SPAN), isOfVariant(state(), ["knuckle", "pinAngle"])]).toEqual([
      true,
      false,
    ]);
    actions.editField(["knuckle", "pinAngle"], 9, "base");
    expect([at(["knuckle", "pinAngle"]), state().truck?.setup.variant]).toEqual([9, "narrow"]);
    actions.editField(SPAN, 10.52);
    expect(at(["variants", 0, "patch"])).toEqual({ knuckle: { hubFace: "5 5/8" } });
  });

  it("keeps drafts of the variant and of the setup apart", () => {
    const { actions, state } = opened();
    actions.editField(HUB_FACE, "base text");
    actions.chooseVariant("narrow");
    expect(fieldText(state(), HUB_FACE)).toBe("5 5/8");
    actions.editField(HUB_FACE, "variant text");
    actions.chooseVariant(null);
    expect(fieldText(state(), HUB_FACE)).toBe("base text");
  });

  it("duplicates what is shown, under a name that is free, and shows it", () => {
    const { store, at, actions, state } = opened();
    actions.chooseVariant("narrow");
    const name = actions.duplicateAsVariant("narrow", [{ path: ["knuckle", "pinAngle"], value: 9 }]);
    expect([name, state().variant]).toEqual(["narrow 2", "narrow 2"]);
    expect(at(["variants", 1, "patch"])).toEqual({ knuckle: { hubFace: "5 5/8", pinAngle: 9 } });
    expect(at(["variants", 0, "patch"])).toEqual({ knuckle: { hubFace: "5 5/8" } });
    expect(store.temporal.getState().pastStates).toHaveLength(1);
  });

  it("renames and removes a variant, with its drafts, and refuses a name that is taken", () => {
    const { actions, state } = opened();
    actions.chooseVariant("narrow");
    actions.editField(HUB_FACE, "x");
    actions.duplicateAsVariant("other");
    expect(actions.renameVariant("other", "narrow")).toMatch(/already/);
    actions.chooseVariant("narrow");
    expect(actions.renameVariant("narrow", " slim ")).toBeNull();
    expect([state().variant, state().truck?.setup.variant, fieldText(state(), HUB_FACE)]).toEqual([
      "slim",
      "slim",
      "x",
    ]);
    actions.removeVariant("slim");
    expect([state().variant, state().truck?.setup.variantNames]).toEqual([null, ["other"]]);
  });

  it("shows a variant that is sound though another is not, and says which are not", () => {
    const { actions, state } = opened();
    actions.chooseVariant("narrow");
    actions.editField(SPAN, "40");
    actions.chooseVariant(null);
    expect(state().issues).toEqual([]);
    expect([...variantFaults(state()).keys()]).toEqual(["narrow"]);
  });
});

describe("lists", () => {
  const POINTS = ["truck", "body", 0, "points"];
  it("take, move and lose items, and drafts go with their items", () => {
    const { at, actions, state } = opened();
    actions.editField([...POINTS, 2, 0], "two");
    actions.insertItem(POINTS, 1, [7, 34, 28]);
    expect(at(POINTS)).toEqual([
      [14, 34, 24],
      [7, 34, 28],
      [0, 34, 30],
      [-14, 34, 24],
    ]);
    expect(fieldText(state(), [...POINTS, 3, 0])).toBe("two");
    actions.moveItem(POINTS, 3, 0);
    expect(at(POINTS)).toEqual([
      [-14, 34, 24],
      [14, 34, 24],
      [7, 34, 28],
      [0, 34, 30],
    ]);
    expect(fieldText(state(), [...POINTS, 0, 0])).toBe("two");
    actions.removeItem(POINTS, 0);
    expect([at(POINTS), state().drafts]).toEqual([
      [
        [14, 34, 24],
        [7, 34, 28],
        [0, 34, 30],
      ],
      {},
    ]);
    expect(state().truck?.setup.truck.body[0]).toMatchObject({ points: { length: 3 } });
  });

  it("that are not there yet are made", () => {
    const { stances: _, ...without } = exampleDocument;
    const store = createWorkbenchStore(JSON.stringify(without), "test.json");
    store.getState().insertItem(["stances"], 0, { name: "low", travel: "3" });
    expect(store.getState().truck?.setup.stances).toEqual([{ name: "low", travel: expect.closeTo(76.2, 9) }]);
  });

  it("of a variant go whole into its patch", () => {
    const { at, actions } = opened();
    actions.chooseVariant("narrow");
    actions.removeItem(["truck", "body"], 1);
    expect(valueAt(at(["variants", 0, "patch"]), ["truck", "body"])).toEqual([exampleDocument.truck.body[0]]);
    expect(at(["truck", "body"])).toEqual(exampleDocument.truck.body);
  });

  it("rename a part in the setup and in every variant that lists it, and what points at it follows", () => {
    const { at, actions, state } = opened();
    actions.chooseVariant("narrow");
    actions.removeItem(["truck", "body"], 1);
    actions.select({ part: "lip", side: "left" });
    actions.setHidden("lip", true);
    actions.renamePart("lip", "fender lip");
    expect(at(["truck", "body", 0, "name"])).toBe("fender lip");
    expect(at(["variants", 0, "patch", "truck", "body", 0, "name"])).toBe("fender lip");
    expect([state().selection?.part, state().hiddenParts]).toEqual(["fender lip", ["fender lip"]]);
  });
});

describe("mesh files", () => {
  const document = {
    ...exampleDocument,
    truck: {
      ...exampleDocument.truck,
      body: [{ name: "scan", kind: "mesh", file: "scans/fender.stl", unit: "in" }],
    },
  };
  const mesh = {
    positions: Float64Array.of(0, 34, 24, 9, 34, 24, 0, 34, 30),
    triangles: Uint32Array.of(0, 1, 2),
    unit: null,
  };

  it("are asked for, and the setup opens when they come", () => {
    const { actions, state } = opened();
    actions.openText(JSON.stringify(document), "scan.json");
    expect(state().refusal?.issues[0]).toMatchObject({ key: "truck.body[0].file" });
    actions.addMeshes(new GivenMeshes(new Map([["fender.stl", mesh]])));
    expect([state().refusal, state().file]).toEqual([null, "scan.json"]);
    expect(state().truck?.setup.truck.body[0]).toMatchObject({ kind: "mesh", name: "scan" });
    const part = state().truck?.setup.truck.body[0];
    actions.editField(HUB_FACE, "6");
    expect(state().truck?.setup.truck.body[0]).toBe(part);
    actions.editField(["truck", "body", 0, "file"], "fender.stl");
    expect(state().issues).toEqual([]);
  });

  it("that no part asks for become parts in one step, and one that could not be read is told of", () => {
    const { actions, state } = opened();
    const before = state().document;
    const count = state().truck!.setup.truck.body.length;
    actions.addMeshes(new GivenMeshes(new Map([["other.stl", { ...mesh, unit: "in" as const }]])));
    expect(valueAt(state().document, ["truck", "body", count])).toEqual({
      name: "other",
      kind: "mesh",
      file: "other.stl",
    });
    actions.undo();
    expect(state().document).toEqual(before);
    // A file that does not say its unit: guessed by where it lies, and by its size.
    const large = { ...mesh, positions: mesh.positions.map((one) => 50 * one) };
    actions.addMeshes(new GivenMeshes(new Map(Object.entries({ "here.stl": mesh, "large.stl": large }))));
    expect([count, count + 1].map((at) => valueAt(state().document, ["truck", "body", at, "unit"]))).toEqual([
      "in",
      "mm",
    ]);
    actions.undo();
    actions.addMeshes(new GivenMeshes(new Map([["bad.stl", { refused: "no triangles" }]])));
    expect(state().refusal?.issues).toEqual([{ file: "bad.stl", key: "", value: "", mend: "no triangles" }]);
    expect(state().document).toEqual(before);
  });
});

describe("the dirty mark", () => {
  it("is gone when the board is as its file again", () => {
    const { actions, state } = opened();
    expect(isDirty(state())).toBe(false);
    actions.editField(HUB_FACE, "6");
    expect(isDirty(state())).toBe(true);
    actions.undo();
    expect(isDirty(state())).toBe(false);
    actions.redo();
    actions.markSaved(state().document!, "new name.json");
    expect([isDirty(state()), state().file]).toEqual([false, "new name.json"]);
    actions.undo();
    expect(isDirty(state())).toBe(true);
  });
});
