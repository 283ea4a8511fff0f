import fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import { keepWork } from "../../../../src/app/shell/storage/keepWork.ts";
import type { KeyValueStore } from "../../../../src/app/shell/storage/keyValueStore.ts";
import {
  LAST_KEY,
  RECENTS_KEY,
  type RecentSetup,
  recordKey,
} from "../../../../src/app/shell/storage/records.ts";
import { reopenSetup, restoreWork } from "../../../../src/app/shell/storage/restoreWork.ts";
import { stepsKey } from "../../../../src/app/shell/storage/storedSteps.ts";
import { GivenMeshes } from "../../../../src/app/state/givenMeshes.ts";
import type { KeptPoint } from "../../../../src/app/state/keptPoints.ts";
import { dropTyped, type } from "../../../../src/app/state/typing.ts";
import { createWorkbenchStore } from "../../../../src/app/state/workbenchStore.ts";
import { valueAt } from "../../../../src/setup/types/keyPath.ts";
import { exampleDocument, exampleText } from "../../exampleText.ts";
import { memoryLastWords, memoryStore } from "../../memoryStore.ts";

const mine = async () => true;
const give = () => undefined;
const HUB_FACE = ["knuckle", "hubFace"];

function working(box: KeyValueStore = memoryStore(), lastWords = memoryLastWords()) {
  const store = createWorkbenchStore(exampleText, "test.json");
  const told: (readonly RecentSetup[])[] = [];
  const troubles: unknown[] = [];
  const points = new Map<string, readonly KeptPoint[]>();
  let clock = 1000;
  const keeper = keepWork(store, box, {
    delay: 5,
    lastWords,
    example: store.getState().document,
    now: () => clock++,
    pointsOf: (documentId) => points.get(documentId) ?? [],
    onWritten: (recents) => told.push(recents),
    onTrouble: (error) => troubles.push(error),
  });
  return { store, state: () => store.getState(), keeper, points, told, troubles, box, lastWords };
}

/** Another page, opened later on the same box. */
async function later(
  box: KeyValueStore,
  lastWords = memoryLastWords(),
  claim = mine,
  tab: string | null = null,
) {
  const store = createWorkbenchStore(exampleText, "test.json");
  const points = new Map<string, readonly KeptPoint[]>();
  const give = (documentId: string, of: readonly KeptPoint[]) => void points.set(documentId, of);
  const recents = await restoreWork(store, box, lastWords, claim, give, tab);
  return { store, state: store.getState(), recents, points };
}

const mesh = {
  positions: Float64Array.of(0, 34, 24, 9, 34, 24, 0, 34, 30),
  triangles: Uint32Array.of(0, 1, 2),
  unit: null,
};
const scanned = {
  ...exampleDocument,
  name: "Scanned",
  truck: { ...exampleDocument.truck, body: [{ name: "scan", kind: "mesh", file: "fender.stl", unit: "in" }] },
};

describe("what is on the board", () => {
  it("comes back as it was left: document, drafts, variant, pose, view, what is hidden, preferences", async () => {
    const { state, keeper, box } = working();
    state().editField(HUB_FACE, "6");
    state().editField(["knuckle", "span"], "ten");
    state().chooseVariant("narrow");
    state().setPose(20, 0.5);
    state().setView("top");
    state().setHidden("lip", true);
    state().setLengths("mm");
    state().setTheme("dark");
    await keeper.flush();
    const { state: back, store } = await later(box);
    const kept = [
      "documentId",
      "document",
      "drafts",
      "variant",
      "travel",
      "steer",
      "view",
      "hiddenParts",
      "preferences",
      "file",
    ] as const;
    for (const key of kept) expect([key, back[key]]).toEqual([key, state()[key]]);
    expect(back.truck?.setup.variant).toBe("narrow");
    expect(store.temporal.getState().futureStates).toEqual([]);
  });

  it("comes back with its steps, undone ones as well, and with what was given a name", async () => {
    const { state, store, keeper, box, points } = working();
    const before = state().document!;
    state().editField(HUB_FACE, "6");
    state().editField(HUB_FACE, "6.1");
    state().editField(HUB_FACE, "6.2");
    state().undo();
    points.set(state().documentId, [{ name: "as measured", at: 7, document: before }]);
    await keeper.flush();
    const back = await later(box);
    expect(back.points.get(state().documentId)).toEqual([{ name: "as measured", at: 7, document: before }]);
    const seen = (act: () => void) => {
      act();
      return valueAt(back.store.getState().document, HUB_FACE);
    };
    expect(seen(() => undefined)).toBe(6.1);
    expect(seen(back.state.redo)).toBe(6.2);
    expect(seen(() => back.state.stepBy(-2))).toBe(6);
    expect(seen(back.state.undo)).toEqual(valueAt(before, HUB_FACE));
    expect(back.store.temporal.getState().pastStates).toEqual([]);
    expect(store.temporal.getState().pastStates).toHaveLength(2);
  });

  it("takes what was written after its steps were for one step more", async () => {
    const { state, keeper, box, lastWords } = working();
    state().editField(HUB_FACE, "6");
    await keeper.flush();
    state().editField(HUB_FACE, "6.3"); // noted at once; the page ends before its steps are written
    const back = await later(box, lastWords);
    expect(back.state.document?.knuckle).toMatchObject({ hubFace: 6.3 });
    back.state.undo();
    expect(back.store.getState().document?.knuckle).toMatchObject({ hubFace: 6 });
    back.state.undo();
    expect(back.store.getState().document).toEqual(exampleDocument);
  });

  it("has the steps of its own opening alone, and none of a record that cannot be read", async () => {
    const { state, keeper, box } = working();
    state().editField(HUB_FACE, "6");
    state().openText(JSON.stringify({ ...exampleDocument, name: "Other" }), "other.json");
    state().editField(HUB_FACE, "5.9");
    await keeper.flush();
    expect((await later(box)).store.temporal.getState().pastStates).toHaveLength(1);
    await box.put([
      [stepsKey(state().documentId), { version: 1, past: [{ document: 3 }], now: {}, future: 4 }],
    ]);
    const back = await later(box);
    expect(back.state.document?.name).toBe("Other");
    expect(back.store.temporal.getState().futureStates).toEqual([]);
  });

  it("comes back with its issues when it does not go together", async () => {
    const { state, keeper, box } = working();
    state().editField(["knuckle", "span"], "40");
    await keeper.flush();
    const { state: back } = await later(box);
    expect(back.document?.knuckle).toMatchObject({ span: 40 });
    expect(back.issues.map(({ key }) => key)).toEqual(["knuckle.span"]);
  });

  it("comes back with its mesh files, each written once", async () => {
    const box = memoryStore();
    const { state, keeper } = working(box);
    const put = vi.spyOn(box, "put");
    state().openText(JSON.stringify(scanned), "scan.json", new GivenMeshes(new Map([["fender.stl", mesh]])));
    await keeper.flush();
    state().editField(HUB_FACE, "6");
    await keeper.flush();
    const written = put.mock.calls.flatMap(([entries]) => entries.map(([key]) => key));
    expect(written.filter((key) => key.startsWith("mesh:"))).toHaveLength(1);
    const { state: back } = await later(box);
    expect(back.issues).toEqual([]);
    expect(back.truck?.setup.truck.body[0]).toMatchObject({ kind: "mesh", triangles: mesh.triangles });
  });

  it("is written a moment after the last change, once for many", async () => {
    const { state, box, told } = working();
    for (let i = 0; i < 20; i++) state().editField(HUB_FACE, 5 + i / 20);
    await vi.waitFor(() => expect(told).toHaveLength(1));
    expect((box as ReturnType<typeof memoryStore>).writes).toBe(1);
  });

  it("is not lost by a page that is ended before it could be written", async () => {
    const stuck: KeyValueStore = { ...memoryStore(), put: () => new Promise(() => {}), putNow: () => false };
    const { state, lastWords } = working(stuck);
    state().editField(HUB_FACE, "7 1/8");
    state().editField(["knuckle", "span"], "ten");
    const { state: back } = await later(memoryStore(), lastWords);
    expect(back.document?.knuckle).toMatchObject({ hubFace: "7 1/8" });
    expect(Object.values(back.drafts).map(({ text }) => text)).toEqual(["ten"]);
  });

  it("is taken from the last words only where they are of the setup this page had", async () => {
    const box = memoryStore();
    const first = working(box);
    first.state().editField(HUB_FACE, "6");
    await first.keeper.flush();
    const lastWords = memoryLastWords();
    const stuck: KeyValueStore = { ...memoryStore(), put: () => new Promise(() => {}), putNow: () => false };
    const second = working(stuck, lastWords);
    second.state().editField(HUB_FACE, "7");
    const { state: back } = await later(box, lastWords, mine, first.state().documentId);
    expect(back.document?.knuckle).toMatchObject({ hubFace: 6 });
  });
});

describe("a page that may end at any moment", () => {
  it("has noted each change, and has it in the box, before whoever made it goes on", () => {
    const { state, box, lastWords } = working();
    state().editField(HUB_FACE, "6 1/2");
    const ended = (box as ReturnType<typeof memoryStore>).held.get(recordKey(state().documentId));
    expect(ended).toMatchObject({ document: { knuckle: { hubFace: "6 1/2" } } });
    expect(lastWords.hear()).toMatchObject([{ document: { knuckle: { hubFace: "6 1/2" } } }]);
  });

  it("brings back what was typed into a field and not yet put into the document", async () => {
    const { state, keeper, lastWords, box } = working();
    type({ path: HUB_FACE, text: "6 3/4", isOptional: false }, () => {});
    expect(state().document?.knuckle).not.toMatchObject({ hubFace: "6 3/4" });
    keeper.stop();
    dropTyped();
    for (const from of [await later(memoryStore(), lastWords), await later(box)])
      expect(from.state.document?.knuckle).toMatchObject({ hubFace: "6 3/4" });
  });

  it("takes back what was noted once the box has all of it, and not before", async () => {
    const { state, keeper, lastWords } = working();
    state().editField(HUB_FACE, "6");
    expect(lastWords.hear()).toHaveLength(1);
    await keeper.flush();
    expect(lastWords.hear()).toEqual([]);
  });

  it("keeps the notes of two pages apart, and the newer one comes back where no page asks for its own", async () => {
    const lastWords = memoryLastWords();
    const stuck = (): KeyValueStore => ({
      ...memoryStore(),
      put: () => new Promise(() => {}),
      putNow: () => false,
    });
    const first = working(stuck(), lastWords);
    first.state().editField(HUB_FACE, "6");
    const second = working(stuck(), lastWords);
    second.state().editField(HUB_FACE, "7");
    const { state: newest } = await later(memoryStore(), lastWords);
    expect(newest.document?.knuckle).toMatchObject({ hubFace: 7 });
    const { state: own } = await later(memoryStore(), lastWords, mine, first.state().documentId);
    expect(own.document?.knuckle).toMatchObject({ hubFace: 6 });
  });

  it("never writes something older over what is newer", async () => {
    const box = memoryStore();
    let letGo = () => {};
    const gate = new Promise<void>((done) => {
      letGo = done;
    });
    const slow: KeyValueStore = { ...box, put: (entries) => gate.then(() => box.put(entries)) };
    const { state, keeper } = working(slow);
    state().editField(HUB_FACE, "6");
    const first = keeper.flush();
    state().editField(HUB_FACE, "7");
    const second = keeper.flush();
    letGo();
    await Promise.all([first, second]);
    expect(box.held.get(recordKey(state().documentId))).toMatchObject({
      document: { knuckle: { hubFace: 7 } },
    });
  });
});

describe("the setups worked on before", () => {
  it("are listed newest first, and one that is opened over another is not lost, not even its last edit", async () => {
    const { state, keeper, box, told } = working();
    const first = state().documentId;
    state().editField(HUB_FACE, "6");
    state().openText(JSON.stringify({ ...exampleDocument, name: "Second" }), "second.json");
    await keeper.flush();
    expect(told.at(-1)?.map(({ name }) => name)).toEqual(["Second", "Test truck"]);
    const { store } = await later(box);
    expect(store.getState().truck?.setup.name).toBe("Second");
    expect(await reopenSetup(store, box, memoryLastWords(), mine, give, first)).toBe(true);
    expect(store.getState().document?.knuckle).toMatchObject({ hubFace: 6 });
    store.getState().undo();
    expect(store.getState().truck?.setup.name).toBe("Second");
  });

  it("say what they are, and do not list the example as it came", async () => {
    const { state, keeper, told, box } = working();
    state().setPose(20, 0.5);
    await keeper.flush();
    expect(told).toEqual([]);
    expect((await later(box)).state.travel).toBe(20);
    state().editField(HUB_FACE, "6 1/4");
    await keeper.flush();
    expect(told.at(-1)).toMatchObject([
      { name: "Test truck", file: "test.json", summary: "P235/70R15, hub face 6 1/4, 1 variant" },
    ]);
  });

  it("are fifty at most, and what falls off the list is gone with its mesh files", async () => {
    const { state, keeper, box, told } = working();
    state().openText(JSON.stringify(scanned), "scan.json", new GivenMeshes(new Map([["fender.stl", mesh]])));
    const scan = state().documentId;
    for (let i = 0; i < 50; i++)
      state().openText(JSON.stringify({ ...exampleDocument, name: `T${i}` }), "t.json");
    await keeper.flush();
    expect(told.at(-1)).toHaveLength(50);
    expect((await box.keys()).filter((key) => key.includes(scan))).toEqual([]);
  });

  it("are not opened on two boards at once: the second gets a copy", async () => {
    const { state, keeper, box } = working();
    state().editField(HUB_FACE, "6");
    await keeper.flush();
    const { state: back } = await later(box, memoryLastWords(), async () => false);
    expect(back.document).toEqual(state().document);
    expect(back.documentId).not.toBe(state().documentId);
  });
});

describe("a storage that fails", () => {
  it("never keeps a page from opening, whatever it holds", async () => {
    const anything = fc.oneof(fc.jsonValue(), fc.constant(undefined), fc.constant(Number.NaN));
    const record = fc.record({
      version: fc.constantFrom(1, 2),
      documentId: fc.constantFrom("x", 7),
      document: fc.oneof(
        fc.dictionary(fc.constantFrom("truck", "knuckle", "variants", "units"), anything),
        anything,
      ),
      file: fc.constantFrom("f.json", null),
      variant: anything,
      drafts: fc.oneof(
        anything,
        fc.array(fc.record({ variant: anything, path: anything, text: anything, mend: anything })),
      ),
      travel: anything,
      steer: anything,
      hiddenParts: anything,
      meshNames: anything,
    });
    await fc.assert(
      fc.asyncProperty(
        fc.oneof(record, anything),
        anything,
        anything,
        async (stored, recents, preferences) => {
          const box = memoryStore();
          box.held
            .set(LAST_KEY, "x")
            .set(recordKey("x"), stored)
            .set(RECENTS_KEY, recents)
            .set("preferences", preferences);
          const { state } = await later(box);
          expect(state.truck?.setup.name).toBe("Test truck");
          expect(Number.isFinite(state.travel) && Number.isFinite(state.steer)).toBe(true);
        },
      ),
      { seed: 1955, numRuns: 300 },
    );
  });

  it("is told of, and all else works", async () => {
    const none = async () => {
      throw new Error("no storage");
    };
    const box: KeyValueStore = {
      get: none,
      put: none,
      update: none,
      remove: none,
      keys: none,
      putNow: () => false,
    };
    const { state, keeper, troubles } = working(box);
    state().editField(HUB_FACE, "6");
    await keeper.flush();
    expect(troubles).toHaveLength(1);
    expect(state().truck?.setup.knuckle.hubFace).toBeCloseTo(152.4, 9);
    await expect(
      restoreWork(createWorkbenchStore(exampleText, "t.json"), box, memoryLastWords(), mine, give, null),
    ).rejects.toThrow();
  });
});
