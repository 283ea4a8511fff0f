import { describe, expect, it } from "vitest";
import { shownGaps, shownPose } from "../../../src/app/state/shown.ts";
import { createWorkbenchStore } from "../../../src/app/state/workbenchStore.ts";
import { exampleDocument, exampleText } from "../exampleText.ts";

const opened = () => createWorkbenchStore(exampleText, "test.json");

describe("the workbench's store", () => {
  it("opens with a truck, at rest, and nothing to mend", () => {
    const { truck, issues, travel, steer } = opened().getState();
    expect(truck?.setup.name).toBe("Test truck");
    expect([issues, travel, steer]).toEqual([[], 0, 0]);
  });

  it("keeps the last good truck, its file and its pose when a text cannot be shown, and says what to mend", () => {
    const store = opened();
    store.getState().setPose(20, 0.5);
    const before = store.getState();
    store.getState().openText('{ "format": ', "broken.json");
    const after = store.getState();
    expect(after.truck).toBe(before.truck);
    expect(after.document).toBe(before.document);
    expect([after.file, after.travel, after.steer, after.issues]).toEqual(["test.json", 20, 0.5, []]);
    expect(after.refusal?.issues[0]?.file).toBe("broken.json");
    expect(after.refusal?.document).toBeNull();
    store.getState().dismissRefusal();
    expect(store.getState().refusal).toBeNull();
  });

  it("refuses a sound file that does not go together, and puts it on the board to be mended when asked to", () => {
    const store = opened();
    const before = store.getState().truck;
    const bent = { ...exampleDocument, knuckle: { ...exampleDocument.knuckle, span: 40 } };
    store.getState().openText(JSON.stringify(bent), "bent.json");
    expect(store.getState().truck).toBe(before);
    expect(store.getState().refusal?.issues.map(({ key }) => key)).toContain("knuckle.span");
    store.getState().openRefused();
    const { document, file, truck, issues, refusal } = store.getState();
    expect([document, file, refusal]).toEqual([bent, "bent.json", null]);
    expect(truck).toBe(before);
    expect(issues.map(({ key }) => key)).toEqual(["knuckle.span"]);
    store.getState().editField(["knuckle", "span"], "10 1/2");
    expect(store.getState().issues).toEqual([]);
    expect(store.getState().truck?.setup.knuckle.span).toBeCloseTo(266.7, 9);
  });

  it("opens with a refusal and no truck when the first text is bad, and recovers with a good one", () => {
    const store = createWorkbenchStore("[]", "empty.json");
    expect(store.getState().truck).toBeNull();
    expect(store.getState().refusal?.issues.length).toBeGreaterThan(0);
    store.getState().openText(exampleText, "test.json");
    expect(store.getState().truck).not.toBeNull();
    expect([store.getState().issues, store.getState().refusal]).toEqual([[], null]);
  });

  it("gives back the very same truck when a variant is chosen again", () => {
    const store = opened();
    const base = store.getState().truck;
    store.getState().chooseVariant("narrow");
    const narrow = store.getState().truck;
    expect(narrow?.setup.knuckle.hubFace).toBeCloseTo(5.625 * 25.4, 9);
    store.getState().chooseVariant(null);
    expect(store.getState().truck).toBe(base);
    store.getState().chooseVariant("narrow");
    expect(store.getState().truck).toBe(narrow);
  });

  it("keeps the height, which a variant may not reach, inside the variant's range", () => {
    const variants = [{ name: "stiff", patch: { travel: { bump: 1 } } }];
    const store = createWorkbenchStore(JSON.stringify({ ...exampleDocument, variants }), "test.json");
    store.getState().setTravel(80);
    store.getState().chooseVariant("stiff");
    expect(store.getState().travel).toBeCloseTo(25.4, 9);
  });

  it("stays in the range of travel and steering", () => {
    const store = opened();
    store.getState().setPose(1e6, -7);
    expect(store.getState().travel).toBeCloseTo(3.5 * 25.4, 9);
    expect(store.getState().steer).toBe(-1);
  });

  it("starts at rest with another file", () => {
    const store = opened();
    store.getState().setPose(20, 0.5);
    store.getState().chooseVariant("narrow");
    store.getState().select({ part: "lip", side: "left" });
    store.getState().openText(JSON.stringify({ ...exampleDocument, name: "Another" }), "another.json");
    const { truck, travel, steer, variant, selection } = store.getState();
    expect(truck?.setup.name).toBe("Another");
    expect([travel, steer, variant, selection]).toEqual([0, 0, null, null]);
  });

  it("lets go of a part that is selected again", () => {
    const store = opened();
    store.getState().select({ part: "lip", side: "left" });
    store.getState().select({ part: "lip", side: "right" });
    expect(store.getState().selection).toEqual({ part: "lip", side: "right" });
    store.getState().select({ part: "lip", side: "right" });
    expect(store.getState().selection).toBeNull();
  });
});

describe("what is shown", () => {
  it("is the same pose and the same gaps until an input of theirs changes", () => {
    const store = opened();
    const pose = shownPose(store.getState());
    const gaps = shownGaps(store.getState());
    store.getState().setView("top");
    store.getState().select({ part: "lip", side: "left" });
    expect(shownPose(store.getState())).toBe(pose);
    expect(shownGaps(store.getState())).toBe(gaps);
    store.getState().setSteer(0.1);
    expect(shownPose(store.getState())).not.toBe(pose);
    expect(shownGaps(store.getState())).not.toBe(gaps);
  });

  it("has each part on both sides, smallest gap first", () => {
    const gaps = shownGaps(opened().getState());
    expect(gaps.map(({ part, side }) => `${part} ${side}`).sort()).toEqual([
      "lip left",
      "lip right",
      "rail left",
      "rail right",
    ]);
    expect(gaps.map(({ gap }) => gap)).toEqual(gaps.map(({ gap }) => gap).sort((a, b) => a - b));
  });
});
