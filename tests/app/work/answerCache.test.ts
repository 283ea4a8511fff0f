import { expect, it } from "vitest";
import demo from "../../../shared/half-ton-limits.json?raw";
import { shownOf } from "../../../src/app/state/madeOf.ts";
import { createWorkbenchStore } from "../../../src/app/state/workbenchStore.ts";
import { AnswerCache } from "../../../src/app/work/answerCache.ts";
import type { JobName, Question } from "../../../src/app/work/jobs.ts";
import { oddsDocument } from "../../../src/studies/odds/oddsTruck.ts";
import { newOrder } from "../../../src/studies/order/writeOrder.ts";

it("gives a file that is saved all the time it takes, anything that is waited for some", () => {
  const cache = new AnswerCache(2);
  expect(cache.secondsFor("report")).toBe(Number.POSITIVE_INFINITY);
  for (const job of ["check", "map", "envelope", "odds"] as const)
    expect(cache.secondsFor(job)).toBeLessThan(60);
});

it("loads where they are worst are kept beside those at the pose shown: a file saved of them changes nothing that is looked at", () => {
  const cache = new AnswerCache(2);
  const truck = createWorkbenchStore(demo, "test.json").getState().truck!;
  const at = (pose: Question<"loads">["pose"]) =>
    cache.entry<"loads">({ job: "loads", truck, question: { pose }, given: null });
  const shown = at({ travel: 0, steer: 0 });
  expect(at({ travel: 10, steer: 0.5 })).toBe(shown);
  expect(at(null)).not.toBe(shown);
  expect(at(null)).toBe(at(null));
  expect(at({ travel: 0, steer: 0 })).toBe(shown);
});

it("a reading off the jig, an order begun and another title leave what was found of the truck standing; a number of the truck does not", () => {
  const cache = new AnswerCache(2);
  const store = createWorkbenchStore(demo, "test.json");
  const { editField, applySuggestion, setAligned } = store.getState();
  const places = () => {
    const truck = store.getState().truck!;
    const entry = <J extends JobName>(job: J, question: Question<J>) =>
      cache.entry<J>({ job, truck, question, given: null as never });
    return {
      truck,
      moved: [entry("check", null), entry("map", null), entry("wayEnds", null)],
      read: entry("asBuilt", { isAligned: false }),
    };
  };
  const notes = [
    () => editField(["asBuilt", "left", "front"], "5 11/16"),
    () => editField(["jig", "halfLength"], 8),
    () => editField(["name"], "Another title"),
    () => applySuggestion({ path: ["order"], value: newOrder(store.getState().document), kind: "nearest" }),
    () => editField(["order", "hubFace"], "5 3/4"),
  ];
  for (const isAligned of [true, false]) {
    setAligned(isAligned);
    expect(store.getState().truck!.ask.isAligned).toBe(isAligned);
    store.getState().removeField(["order"]);
    for (const note of notes) {
      const before = places();
      note();
      const after = places();
      expect(after.moved.map((one, i) => one === before.moved[i])).toEqual([true, true, true]);
    }
    const before = places();
    editField(["knuckle", "hubFace"], isAligned ? "5 3/4" : "5 7/8");
    expect(places().moved.some((one, i) => one === before.moved[i])).toBe(false);
  }
  const before = places();
  editField(["asBuilt", "left", "front"], "5 3/4");
  const after = places();
  expect(after.truck).not.toBe(before.truck);
  // What the readings tell is asked anew.
  expect(after.read).not.toBe(before.read);
});

it("odds are worked out anew for another tolerance of the jig, which tells how well a knuckle is known, and for no other change of it", () => {
  const cache = new AnswerCache(2);
  const store = createWorkbenchStore(demo, "test.json");
  const { editField } = store.getState();
  const odds = () => {
    const truck = store.getState().truck!;
    const question = { document: oddsDocument(shownOf(truck)) };
    const share = { ...question, at: 0, of: 2 };
    return {
      entry: cache.entry({ job: "odds", truck, question, given: null }),
      share: cache.entry({ job: "oddsShare", truck, question: share, given: null }),
      check: cache.entry({ job: "check", truck, question: null, given: null }),
    };
  };
  const before = odds();
  editField(["jig", "halfLength"], 8);
  expect(odds().entry).toBe(before.entry);
  editField(["jig", "tolerances", "tape"], "1/8");
  const after = odds();
  expect(after.entry).not.toBe(before.entry);
  expect(after.share).not.toBe(before.share);
  expect(after.check).toBe(before.check);
  // A worker is handed the truck with that tolerance.
  expect(after.entry.wish.truck.ask.setup.jig.tolerances.tape).toBeCloseTo(25.4 / 8, 9);
});
