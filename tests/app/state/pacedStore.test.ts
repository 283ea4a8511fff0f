import { describe, expect, it } from "vitest";
import { pacedStore } from "../../../src/app/state/pacedStore.ts";
import { shownGaps } from "../../../src/app/state/shown.ts";
import { createWorkbenchStore } from "../../../src/app/state/workbenchStore.ts";
import { exampleText } from "../exampleText.ts";

function paced() {
  const store = createWorkbenchStore(exampleText, "test.json");
  const frames: (() => void)[] = [];
  const page = pacedStore(store, (tell) => frames.push(tell));
  const told: number[] = [];
  page.subscribe(({ travel }) => told.push(travel));
  return {
    actions: store.getState(),
    store,
    page,
    told,
    frames,
    draw() {
      for (const tell of frames.splice(0)) tell();
    },
  };
}

describe("a store as a page follows it", () => {
  it("tells a pose moved over and over once a frame, as it is then", () => {
    const { actions, page, told, frames, draw } = paced();
    for (const mm of [10, 20, 30]) actions.setTravel(mm);
    expect(page.getState().travel).toBe(0);
    expect(frames.length).toBe(1);
    draw();
    expect(told).toEqual([30]);
    expect(page.getState().travel).toBe(30);
    actions.setSteer(0.5);
    draw();
    expect(page.getState()).toMatchObject({ travel: 30, steer: 0.5 });
  });

  it("tells all else at once, with the pose it came at", () => {
    const { actions, store, page, told, draw } = paced();
    actions.setTravel(10);
    actions.setView("front");
    expect(page.getState()).toBe(store.getState());
    expect(told).toEqual([10]);
    draw();
    expect(told, "nothing is left to tell").toEqual([10]);
  });

  it("tells nobody who has gone", () => {
    const { actions, page, draw } = paced();
    let heard = 0;
    const stop = page.subscribe(() => {
      heard += 1;
    });
    actions.setTravel(10);
    stop();
    draw();
    expect(heard).toBe(0);
  });

  it("finds the pose it was told while another one is asked for at every move", () => {
    const { actions, store, page } = paced();
    const told = shownGaps(page.getState());
    for (const mm of [10, 20, 30]) {
      actions.setTravel(mm);
      const [now, again] = [shownGaps(store.getState()), shownGaps(page.getState())];
      expect(shownGaps(store.getState()), `at ${mm} mm`).toBe(now);
      expect(shownGaps(page.getState()), `at ${mm} mm`).toBe(again);
    }
    expect(shownGaps(page.getState())).toEqual(told);
  });
});
