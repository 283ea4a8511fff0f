import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cameFrom, forgetUndone, kindOf, lastStep } from "../../../src/app/state/lastStep.ts";
import { documentSlice } from "../../../src/app/state/typedDocument.ts";
import { workbench } from "../../../src/app/state/workbench.ts";
import { createWorkbenchStore, type WorkbenchStore } from "../../../src/app/state/workbenchStore.ts";
import { runs } from "../../runs.ts";
import { exampleDocument, exampleText } from "../exampleText.ts";

const opened = () => createWorkbenchStore(exampleText, "test.json");
const steps = (store: WorkbenchStore) => store.temporal.getState().pastStates.length;
const HUB_FACE = ["knuckle", "hubFace"];

type Edit = (store: WorkbenchStore) => void;
const other = JSON.stringify({ ...exampleDocument, name: "Other truck" });

/** Anything a person may do to the board, in any order, sensible or not. */
const edit: fc.Arbitrary<Edit> = fc.oneof(
  fc
    .tuple(
      fc.constantFrom("6", "5 5/8", "wide", "40", "7 - 1/8", ""),
      fc.constantFrom("hubFace", "span", "pinAngle"),
    )
    .map(
      ([typed, key]): Edit =>
        (s) =>
          s.getState().editField(["knuckle", key], typed),
    ),
  fc.constantFrom("narrow", "two", null).map(
    (name): Edit =>
      (s) =>
        s.getState().chooseVariant(name),
  ),
  fc.constantFrom("narrow", "two", "").map(
    (name): Edit =>
      (s) =>
        void s.getState().duplicateAsVariant(name),
  ),
  fc.constantFrom("narrow", "two").map(
    (name): Edit =>
      (s) =>
        void s.getState().renameVariant(name, `${name}r`),
  ),
  fc.constantFrom("narrow", "two", "narrow 2").map(
    (name): Edit =>
      (s) =>
        s.getState().removeVariant(name),
  ),
  fc.nat({ max: 3 }).map(
    (at): Edit =>
      (s) =>
        s.getState().removeItem(["truck", "body"], at),
  ),
  fc.tuple(fc.nat({ max: 2 }), fc.nat({ max: 2 })).map(
    ([a, b]): Edit =>
      (s) =>
        s.getState().moveItem(["truck", "body"], a, b),
  ),
  fc.constant<Edit>((s) => s.getState().removeField(["allowance"])),
  fc.constant<Edit>((s) => s.getState().renamePart("lip", "arch")),
  fc.constant<Edit>((s) => s.getState().openText(other, "other.json")),
  fc.constant<Edit>((s) => s.getState().openText("{", "bad.json")),
  fc.constant<Edit>((s) => s.getState().setPose(10, 0.3)),
  fc.constant<Edit>((s) => s.getState().beginGesture()),
  fc.constant<Edit>((s) => s.getState().endGesture()),
  fc.constant<Edit>((s) => s.getState().cancelGesture()),
  fc.constant<Edit>((s) => s.getState().undo()),
  fc.constant<Edit>((s) => s.getState().redo()),
);

describe("undo", () => {
  it("of everything brings back the start, and redo of everything the end, whatever was done", () => {
    fc.assert(
      fc.property(fc.array(edit, { maxLength: 20 }), (edits) => {
        const store = opened();
        const start = documentSlice(store.getState());
        for (const one of edits) one(store);
        store.getState().endGesture();
        while (store.temporal.getState().futureStates.length > 0) store.getState().redo();
        const end = documentSlice(store.getState());
        // Openings past the eighth are forgotten, with the steps before them.
        fc.pre(edits.filter((one) => String(one).includes("openText")).length < 7);
        while (steps(store) > 0) store.getState().undo();
        const { document, drafts, documentId } = store.getState();
        expect([document, drafts, documentId]).toEqual([start.document, start.drafts, start.documentId]);
        while (store.temporal.getState().futureStates.length > 0) store.getState().redo();
        expect(store.getState().drafts).toEqual(end.drafts);
        expect(store.getState().document).toEqual(end.document);
      }),
      { seed: 1955, numRuns: runs(100, 300) },
    );
  }, 120_000);

  it("shows the truck, or the issues, of the document that comes back", () => {
    const store = opened();
    const { truck } = store.getState();
    store.getState().editField(HUB_FACE, "6");
    store.getState().editField(["knuckle", "span"], "40");
    expect(store.getState().issues).toHaveLength(1);
    store.getState().undo();
    expect(store.getState().issues).toEqual([]);
    expect(store.getState().truck?.setup.knuckle.hubFace).toBeCloseTo(152.4, 9);
    store.getState().undo();
    expect(store.getState().truck).toBe(truck);
    store.getState().redo();
    store.getState().redo();
    expect(store.getState().issues).toHaveLength(1);
  });

  it("of an opening brings back the setup before, and its file", () => {
    const store = opened();
    store.getState().editField(HUB_FACE, "6");
    store.getState().openText(other, "other.json");
    expect(store.getState().truck?.setup.name).toBe("Other truck");
    store.getState().undo();
    expect([store.getState().truck?.setup.name, store.getState().file]).toEqual(["Test truck", "test.json"]);
    expect(store.getState().truck?.setup.knuckle.hubFace).toBeCloseTo(152.4, 9);
  });

  it("takes no step for pose, view, selection, what is shown or refused", () => {
    const store = opened();
    const s = store.getState();
    s.setPose(20, 0.5);
    s.setView("top");
    s.select({ part: "lip", side: "left" });
    s.chooseVariant("narrow");
    s.setLengths("1/64");
    s.openText("{", "bad.json");
    s.editField(HUB_FACE, "5 5/8");
    expect(steps(store)).toBe(0);
  });

  it("keeps the steps of the last few setups opened, not of all", () => {
    const store = opened();
    for (let i = 0; i < 30; i++) store.getState().openText(other, `${i}.json`);
    expect(steps(store)).toBeLessThanOrEqual(8);
    store.getState().undo();
    expect(store.getState().file).toBe("28.json");
  });
});

describe("a gesture", () => {
  it("is one step, however many edits it is made of", () => {
    const store = opened();
    const { document } = store.getState();
    store.getState().beginGesture();
    for (let i = 0; i < 50; i++) store.getState().editField(HUB_FACE, 5 + i / 100);
    store.getState().endGesture();
    store.getState().editField(HUB_FACE, 6);
    expect(steps(store)).toBe(2);
    store.getState().undo();
    store.getState().undo();
    expect(store.getState().document).toBe(document);
  });

  it("that ends where it began is none", () => {
    const store = opened();
    const { document } = store.getState();
    store.getState().beginGesture();
    store.getState().editField(HUB_FACE, "6");
    store.getState().editField(HUB_FACE, "6 1/8");
    store.getState().endGesture();
    expect([steps(store), store.getState().document]).toEqual([0, document]);
    expect(store.getState().document).toBe(document);
  });

  it("can be called off", () => {
    const store = opened();
    const { document, truck } = store.getState();
    store.getState().beginGesture();
    store.getState().editField(HUB_FACE, "6");
    store.getState().editField(["knuckle", "span"], "x");
    store.getState().cancelGesture();
    const after = store.getState();
    expect([after.document, after.truck, after.drafts, after.isGesturing]).toEqual([
      document,
      truck,
      {},
      false,
    ]);
    expect(steps(store)).toBe(0);
  });
});

describe("the state before the last step", () => {
  /** Of each change of the history the hub face from where it came. */
  const followed = () => {
    const store = opened();
    const came: unknown[] = [];
    store.temporal.subscribe((now, then) => {
      const before = cameFrom(now, then);
      if (before !== undefined)
        came.push(before && (before.document as typeof exampleDocument).knuckle.hubFace);
    });
    return { store, came };
  };

  it("is the one left, be it done, undone or done again, also many at once", () => {
    const { store, came } = followed();
    store.getState().editField(HUB_FACE, "6");
    store.getState().editField(HUB_FACE, "5 7/8");
    store.getState().undo();
    store.getState().redo();
    store.getState().stepBy(-2);
    store.getState().stepBy(2);
    store.getState().undo();
    store.getState().editField(HUB_FACE, "5 3/4");
    expect(came).toEqual(["6 1/8", 6, "5 7/8", 6, "5 7/8", "6 1/8", "5 7/8", 6]);
  });

  it("is told as a change, as taken back or as done again", () => {
    const store = opened();
    const kinds: string[] = [];
    store.temporal.subscribe((now, then) => {
      if (cameFrom(now, then) !== undefined) kinds.push(kindOf(now, then));
    });
    store.getState().editField(HUB_FACE, "6");
    store.getState().editField(HUB_FACE, "5 7/8");
    store.getState().undo();
    store.getState().redo();
    store.getState().stepBy(-2);
    store.getState().stepBy(2);
    store.getState().undo();
    store.getState().editField(HUB_FACE, "5 3/4");
    expect(kinds).toEqual(["done", "done", "undone", "again", "undone", "again", "undone", "done"]);
  });

  it("stands after a change whatever is looked at, and goes with the next thing done after an undo", () => {
    const board = workbench.getState();
    const kept = () => lastStep.getState().before !== null;
    board.editField(HUB_FACE, "6");
    board.setPose(10, 0.5);
    forgetUndone();
    expect([kept(), lastStep.getState().kind]).toEqual([true, "done"]);
    board.undo();
    expect([kept(), lastStep.getState().kind]).toEqual([true, "undone"]);
    board.setPose(20, 0.5);
    expect(kept()).toBe(false);
    board.redo();
    expect([kept(), lastStep.getState().kind]).toEqual([true, "again"]);
    forgetUndone();
    expect(kept()).toBe(false);
    board.undo();
  });

  it("is none after a gesture that was called off, and the one before all of a gesture that was kept", () => {
    const { store, came } = followed();
    store.getState().beginGesture();
    store.getState().editField(HUB_FACE, "6");
    store.getState().editField(HUB_FACE, "5");
    store.getState().cancelGesture();
    expect(came).toEqual(["6 1/8", null]);
    store.getState().beginGesture();
    store.getState().editField(HUB_FACE, "6");
    store.getState().editField(HUB_FACE, "5");
    store.getState().endGesture();
    expect(came.at(-1)).toBe("6 1/8");
  });
});
