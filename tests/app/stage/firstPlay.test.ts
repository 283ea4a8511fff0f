import { describe, expect, it } from "vitest";
import { eased, isFreshExample, isPlayed, poseAfterHand } from "../../../src/app/stage/firstPlay.ts";
import { createWorkbenchStore } from "../../../src/app/state/workbenchStore.ts";
import { asExample } from "../../../src/setup/exampleMarks.ts";
import { exampleDocument, exampleText } from "../exampleText.ts";

const marked = JSON.stringify(asExample(exampleDocument, exampleDocument.name));

describe("the first view of an example", () => {
  it("is one that nobody has done anything to", () => {
    const store = createWorkbenchStore(marked, "test.json");
    expect(isFreshExample(store.getState())).toBe(true);
    store.getState().setPose(10, 0);
    expect(isFreshExample(store.getState())).toBe(false);
    store.getState().setPose(0, 0);
    store.getState().editField(["knuckle", "hubFace"], "6 1/16");
    expect(isFreshExample(store.getState())).toBe(false);
  });

  it("is no truck of somebody's own, and none that was shared", () => {
    const own = createWorkbenchStore(exampleText, "mine.json");
    expect(isFreshExample(own.getState())).toBe(false);
    const shared = createWorkbenchStore(marked, "test.json");
    const { document, openDocument } = shared.getState();
    openDocument({ document: structuredClone(document!), file: "test.json" });
    expect(isFreshExample(shared.getState())).toBe(false);
  });

  it("plays where this page put it on the board, and stands still where motion is to be reduced", () => {
    const state = createWorkbenchStore(marked, "test.json").getState();
    expect(isPlayed(state, true, false)).toBe(true);
    expect(isPlayed(state, true, true)).toBe(false);
    expect(isPlayed(state, false, false)).toBe(false);
  });

  it("ends where it was going when a hand comes, but for one that poses the truck, which takes over as it is", () => {
    const worst = { travel: 82, steer: -1 };
    expect(poseAfterHand(worst, false)).toBe(worst);
    expect(poseAfterHand(worst, true)).toBeNull();
    expect(poseAfterHand(null, false)).toBeNull();
  });

  it("goes from where the truck drives all the way, and never back", () => {
    expect([eased(0), eased(0.5), eased(1), eased(2)]).toEqual([0, 0.5, 1, 1]);
    for (let t = 0; t < 1; t += 0.01) expect(eased(t + 0.01)).toBeGreaterThan(eased(t));
  });
});
