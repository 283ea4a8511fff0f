import { describe, expect, it } from "vitest";
import { takeWhole } from "../../../../src/app/measure/fields/takeWhole.ts";
import { createWorkbenchStore } from "../../../../src/app/state/workbenchStore.ts";
import { valueAt } from "../../../../src/setup/types/keyPath.ts";
import { exampleText } from "../../exampleText.ts";

const PIN = ["knuckle", "pinAngle"];
const HUB = ["knuckle", "hubFace"];

/** A store whose field is being visited, as a hand that types in it opens one. */
function visited() {
  const store = createWorkbenchStore(exampleText, "test.json");
  store.getState().beginGesture();
  const take = (path: string[], text: string) => takeWhole(store, path, text);
  const typed = (path: string[]) => valueAt(store.getState().document, path);
  return { store, take, typed };
}

describe("a number that is whole while it is typed", () => {
  it("is taken at once, digit by digit, and all of the visit is one step to undo", () => {
    const { store, take, typed } = visited();
    const { truck } = store.getState();
    expect(take(PIN, "9")).toBe(true);
    expect(typed(PIN)).toBe(9);
    expect(store.getState().truck).not.toBe(truck);
    expect(take(PIN, "9.")).toBe(false);
    expect(take(PIN, "9.5")).toBe(true);
    expect(take(HUB, "5 1/2")).toBe(true);
    expect([typed(PIN), typed(HUB)]).toEqual([9.5, "5 1/2"]);
    store.getState().endGesture();
    expect(store.temporal.getState().pastStates).toHaveLength(1);
    store.getState().undo();
    expect(store.getState().truck).toBe(truck);
  });

  it("waits where its first digits alone are far from what stands there", () => {
    const { take, typed } = visited();
    expect(take(PIN, "1")).toBe(false);
    expect(typed(PIN)).toBe(8.4);
    expect(take(PIN, "10")).toBe(true);
    expect(typed(PIN)).toBe(10);
    // Of inches in a fraction too; the whole inches of a nearby one are followed.
    expect(take(HUB, "1")).toBe(false);
    expect(take(HUB, "6")).toBe(true);
    expect(take(HUB, "6 1/8")).toBe(true);
    const arm = ["knuckle", "steeringArm", "0"];
    expect(take(arm, "5")).toBe(false);
  });

  it("is left where only half of it stands there, or the field, the truck or the eye would stumble over it", () => {
    const { store, take } = visited();
    const before = store.getState();
    for (const text of [
      "",
      "-",
      "5 ",
      "5 5/",
      "5 5/1",
      "5 1/3",
      "5 5/8 + 1/8",
      "9e",
      "nine",
      "9 ±",
      "5 5/8 in",
    ])
      expect(take(HUB, text), text).toBe(false);
    // Out of the field's range; no truck goes together so; a slip of ten.
    for (const [path, text] of [
      [PIN, "400"],
      [["knuckle", "span"], "90"],
      [HUB, "61"],
    ] as const)
      expect(take([...path], text), text).toBe(false);
    const now = store.getState();
    for (const key of ["document", "drafts", "truck", "issues", "travel", "good"] as const)
      expect(now[key], key).toEqual(before[key]);
    expect(now.truck).toBe(before.truck);
    store.getState().endGesture();
    expect(store.temporal.getState().pastStates).toEqual([]);
  });
});
