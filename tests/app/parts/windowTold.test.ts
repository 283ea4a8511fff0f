import { describe, expect, it } from "vitest";
import { windowTold } from "../../../src/app/parts/window/windowTold.ts";
import { askedOf } from "../../../src/app/state/madeOf.ts";
import type { Truck } from "../../../src/app/state/truck.ts";
import { createWorkbenchStore } from "../../../src/app/state/workbenchStore.ts";
import type { KeyPath } from "../../../src/setup/types/keyPath.ts";
import type { FieldWindow } from "../../../src/studies/window/windowTypes.ts";
import { exampleText } from "../exampleText.ts";

const FIELD = "knuckle.hubFace";
const NONE = { answer: null };

/** A window such as a worker answers. */
function windowOf(field: string, now: number): FieldWindow {
  const end = { kind: "range" } as const;
  const fits = [{ from: 120, to: 150, fromSetBy: end, toSetBy: end }];
  const looked = { from: 0, to: 300, tolerance: 0.1, between: { rank: "proven" } as const };
  return { field, kind: "length", now, ...looked, fits, closedBy: [], opens: null };
}

/** What was answered of a truck. */
function answeredOf(truck: Truck, field = FIELD) {
  const question = { document: askedOf(truck), field };
  const wish = { job: "window", truck, question, given: null } as const;
  return { wish, answer: windowOf(field, truck.setup.knuckle.hubFace) };
}

describe("the window of a truck whose answer is still worked out", () => {
  const store = createWorkbenchStore(exampleText, "test.json");
  const { editField, chooseVariant } = store.getState();
  const truck = () => store.getState().truck!;
  const edited = (path: KeyPath, value: unknown) => {
    editField(path, value as never);
    return truck();
  };
  const before = edited(["knuckle", "hubFace"], 6);
  const last = answeredOf(before);

  it("is what fits of the same truck, with the field's value of now", () => {
    const wider = edited(["knuckle", "hubFace"], 6.5);
    expect(windowTold(wider, FIELD, NONE, last)).toEqual({ ...last.answer, now: 6.5 * 25.4 });
    // A note beside the truck makes no other one.
    expect(windowTold(edited(["name"], "Another title"), FIELD, NONE, last)?.fits).toEqual(last.answer.fits);
  });

  it("is not that of a truck with another number, of another variant, aligned otherwise, or of another field", () => {
    const told = (now: Truck, field = FIELD) => windowTold(now, field, NONE, last);
    expect(told(truck())).not.toBeNull();
    // What differs of this variant is the field alone.
    chooseVariant("narrow");
    expect(told(truck())?.now).toBeCloseTo(5.625 * 25.4, 9);
    expect(told(edited(["wheel", "backspacing"], 4))).toBeNull();
    chooseVariant(null);
    expect(told(truck())).not.toBeNull();
    expect(told(truck(), "knuckle.span")).toBeNull();
    expect(told({ ...truck(), ask: { ...truck().ask, isAligned: true } })).toBeNull();
    expect(told({ ...truck(), document: null })).toBeNull();
    expect(told(edited(["allowance"], 0.4))).toBeNull();
  });

  it("is nothing before any answer, and the answer once it is there", () => {
    expect(windowTold(truck(), FIELD, NONE, null)).toBeNull();
    const own = answeredOf(truck());
    expect(windowTold(truck(), FIELD, own, last)).toBe(own.answer);
  });
});
