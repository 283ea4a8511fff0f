import { describe, expect, it } from "vitest";
import { keepWork } from "../../src/app/shell/storage/keepWork.ts";
import { restoreWork } from "../../src/app/shell/storage/restoreWork.ts";
import { createWorkbenchStore } from "../../src/app/state/workbenchStore.ts";
import { emptySteering, newTruckDocument } from "../../src/setup/newTruck.ts";
import { type KeyPath, valueAt } from "../../src/setup/types/keyPath.ts";
import { fieldName } from "../../src/studies/wording/fieldName.ts";
import { exampleDocument, exampleText } from "./exampleText.ts";
import { memoryLastWords, memoryStore } from "./memoryStore.ts";

function begun() {
  const store = createWorkbenchStore(exampleText, "test.json");
  store.getState().newTruck("in");
  const state = () => store.getState();
  const needs = () => state().needs.map((path) => fieldName(path, state().document));
  return { store, state, needs };
}

/** Types the example's number into a field or into each coordinate of a point, as text. */
function measure(store: ReturnType<typeof begun>["store"], path: KeyPath): void {
  const value = valueAt(exampleDocument, path);
  if (!Array.isArray(value)) store.getState().editField(path, String(value));
  else for (const [i, one] of value.entries()) store.getState().editField([...path, i], String(one));
}

describe("a new truck", () => {
  it("shows no truck, finds no fault, and says by name what it needs, in the order of measuring", () => {
    const { state, needs } = begun();
    expect(state()).toMatchObject({ truck: null, good: null, issues: [], refusal: null });
    expect(needs()).toEqual([
      ...["Upper arm, front pivot", "Upper arm, rear pivot", "Upper ball joint"],
      ...["Lower arm, front pivot", "Lower arm, rear pivot", "Lower ball joint"],
      ...["Inner tie rod end", "Rack stroke, each way"],
      ...["Ball joint span", "Pin height", "Pin angle", "Hub-face distance", "Outer tie rod end"],
      ...["Rim diameter", "Rim width", "Backspacing", "Tire size", "Full bump", "Full droop"],
    ]);
    expect(JSON.stringify(newTruckDocument("mm"))).not.toMatch(/"(?:frontPivot|stroke|hubFace)":[^"[]/);
  });

  it("has an answer exactly when the last number is in, and no sooner", () => {
    const { store, state, needs } = begun();
    const all = state().needs;
    for (const [i, path] of all.entries()) {
      expect([i, state().truck, state().issues]).toEqual([i, null, []]);
      measure(store, path);
      expect(needs()).toHaveLength(all.length - i - 1);
    }
    expect(state().truck?.setup.knuckle.hubFace).toBeCloseTo(155.575, 9);
    expect(state().issues).toEqual([]);
    expect(state().truck?.setup.fromExample).toBeNull();
  });

  it("keeps a half measured point as needed, and a slip is told as one", () => {
    const { state, needs } = begun();
    state().editField(["truck", "lowerArm", "ballJoint", 0], "0.35");
    expect(needs()).toContain("Lower ball joint");
    state().editField(["wheel", "rimWidth"], "8 im");
    expect(Object.values(state().drafts).map(({ mend }) => mend)).toEqual([
      expect.stringMatching(/did you mean "in"/),
    ]);
    for (const [key, value] of [
      ["rimWidth", "8"],
      ["rimDiameter", "15"],
      ["backspacing", "4"],
      ["barrelDiameter", "20"],
    ] as const)
      state().editField(["wheel", key], value);
    expect(state().issues.map(({ key }) => key)).toEqual(["wheel.barrelDiameter"]);
  });

  it("may have a steering box, with its own needs", () => {
    const { state, needs } = begun();
    state().applySuggestion({ path: ["truck", "steering"], value: emptySteering("pitman"), kind: "before" });
    expect(needs()).toEqual(
      expect.arrayContaining(["Pitman shaft", "Pitman arm end", "Idler shaft", "Pitman arm swing, each way"]),
    );
    expect(state().issues).toEqual([]);
  });

  it("is undone to the truck before, and redone to no truck", () => {
    const { store, state } = begun();
    measure(store, ["knuckle", "hubFace"]);
    state().undo();
    state().undo();
    expect(state().truck?.setup.name).toBe("Test truck");
    expect(state().needs).toEqual([]);
    state().redo();
    expect(state().truck).toBeNull();
    state().redo();
    expect(valueAt(state().document, ["knuckle", "hubFace"])).toBe("6 1/8");
  });

  it("is as it was after a reload, with all that was typed", async () => {
    const { store, state } = begun();
    const box = memoryStore();
    const keeper = keepWork(store, box, {
      delay: 1,
      now: () => 1,
      lastWords: memoryLastWords(),
      example: null,
      pointsOf: () => [],
      onWritten: () => {},
      onTrouble: () => {},
    });
    measure(store, ["truck", "upperArm", "frontPivot"]);
    await keeper.flush();
    keeper.stop();
    const again = createWorkbenchStore(exampleText, "test.json");
    await restoreWork(
      again,
      box,
      memoryLastWords(),
      async () => true,
      () => undefined,
      null,
    );
    expect(again.getState()).toMatchObject({ truck: null, issues: [], document: state().document });
    expect(again.getState().needs).toEqual(state().needs);
  });
});
