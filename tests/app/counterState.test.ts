import { describe, expect, it } from "vitest";
import { hubFaceRange, withHubFace } from "../../src/app/show/counter/whatIf.ts";
import { fittedTruck } from "../../src/app/show/shop/fittedTruck.ts";
import { fitName, putFitOn, trucksToTry, withoutFit } from "../../src/app/show/shop/shopWheels.ts";
import { chosenPair } from "../../src/app/state/counterStore.ts";
import { isSameTruck } from "../../src/app/state/sameTruck.ts";
import { type Truck, truckOf, trucks } from "../../src/app/state/truck.ts";
import { createWorkbenchStore } from "../../src/app/state/workbenchStore.ts";
import { effectiveDocument } from "../../src/setup/editing/effectiveDocument.ts";
import { variantNames } from "../../src/setup/editing/resolveShown.ts";
import { asExample } from "../../src/setup/exampleMarks.ts";
import { valueAt } from "../../src/setup/types/keyPath.ts";
import { readFits } from "../../src/studies/chart/readFits.ts";
import { solvePose } from "../../src/suspension/solvePose.ts";
import { exampleText } from "./exampleText.ts";

const IN = 25.4;

function truck(variant: string | null): Truck {
  const made = truckOf(exampleText, "test.json", variant);
  if (!made.ok) throw new Error(made.issues.map(({ mend }) => mend).join("; "));
  return made.value;
}

describe("the two that are compared", () => {
  it("are the setup as it stands and the variant shown, or the first one, until others are chosen", () => {
    const none = { first: undefined, second: undefined };
    expect(chosenPair(none, ["a", "b"], "b")).toEqual([null, "b"]);
    expect(chosenPair(none, ["a", "b"], null)).toEqual([null, "a"]);
    expect(chosenPair(none, [], null)).toEqual([null, null]);
    expect(chosenPair({ first: "b", second: "a" }, ["a", "b"], null)).toEqual(["b", "a"]);
    expect(chosenPair({ first: "b", second: null }, ["a", "b"], "a")).toEqual(["b", null]);
  });

  it("are others when one chosen has been removed", () => {
    expect(chosenPair({ first: "gone", second: "gone" }, ["a"], "a")).toEqual([null, "a"]);
    expect(chosenPair({ first: "a", second: "gone" }, ["a"], "a")).toEqual(["a", null]);
  });
});

describe("another hub face", () => {
  it("gives the very truck that a variant with that hub face gives", () => {
    const changed = withHubFace(truck(null), 5.625 * IN);
    if (!changed.ok) throw new Error("a hub face half an inch narrower must go together");
    const asked = solvePose(changed.value.model.frontEnd, 30, 0.3);
    const typed = solvePose(truck("narrow").model.frontEnd, 30, 0.3);
    if (!asked.ok || !typed.ok) throw new Error("the test's own trucks must reach their poses");
    expect([...asked.left.row]).toEqual([...typed.left.row]);
  });

  it("runs half an inch past both, in whole sixteenths", () => {
    const range = hubFaceRange((6 + 5 / 16) * IN, (5 + 5 / 16) * IN, IN / 16);
    expect([range.least / 16, range.most / 16]).toEqual([4 + 13 / 16, 6 + 13 / 16]);
    const odd = hubFaceRange(6.01 * IN, 6.01 * IN, IN / 16);
    expect([odd.least / 16, odd.most / 16]).toEqual([5 + 9 / 16, 6.5]);
    expect(hubFaceRange(0.2 * IN, IN, IN / 16).least).toBe(1);
  });
});

describe("a wheel of the shop's list on either of the two", () => {
  const board = (text = exampleText) => {
    const store = createWorkbenchStore(text, "test.json");
    const { good, file, truck } = store.getState();
    const list = "name,wheel.rimDiameter,wheel.rimWidth,wheel.backspacing\nDeep,15,8,5\nWide,15,10,5 1/2\n";
    const read = readFits(list, { document: good!.document, setup: truck!.setup, file });
    if (!read.ok) throw new Error(read.issues[0]!.mend);
    const held = (name: string | null) => effectiveDocument(store.getState().document, name);
    return { store, fits: read.value, held, names: () => variantNames(store.getState().document) };
  };

  it("is a variant of that truck with that wheel, one step to undo, and the board stays as it was", () => {
    const { store, fits, held, names } = board();
    const before = store.getState();
    const put = putFitOn(store, "narrow", fits[0]!);
    expect(put).toBe("narrow, Deep");
    expect(valueAt(held(put), ["wheel", "backspacing"])).toBe(5);
    expect(valueAt(held(put), ["knuckle", "hubFace"])).toEqual(
      valueAt(held("narrow"), ["knuckle", "hubFace"]),
    );
    expect(store.getState().variant).toBe(before.variant);
    store.getState().undo();
    expect(names()).toEqual(variantNames(before.document));
  });

  it("is the same variant when it is asked for again, and another wheel goes in its place", () => {
    const { store, fits, names } = board();
    const put = putFitOn(store, null, fits[0]!);
    expect(putFitOn(store, null, fits[0]!)).toBe(put);
    expect(put).toBe("current truck, Deep");
    expect(names().filter((name) => name.endsWith("Deep"))).toEqual([put]);
    expect(withoutFit(put, fits, names())).toBeNull();
    expect(withoutFit("narrow, Deep", fits, names())).toBe("narrow");
    expect(withoutFit("narrow", fits, names())).toBe("narrow");
  });

  it("is known before it is put on: the truck told of is the one that it becomes", () => {
    const { store, fits, held } = board();
    const told = fittedTruck(store.getState(), "narrow", fits[1]!);
    if (!told?.ok) throw new Error("it must go together");
    const put = putFitOn(store, "narrow", fits[1]!);
    const { good, file, meshes } = store.getState();
    const made = trucks.make(good!.document, file, put, meshes);
    if (!made.ok) throw new Error(made.issues[0]!.mend);
    expect(valueAt(held(put), ["wheel", "rimWidth"])).toBe(10);
    expect(isSameTruck(made.value, told.value)).toBe(true);
    // What was worked out of the one is known of the other.
    expect(made.value.motion).toBe(told.value.motion);
  });

  it("on an example has numbers of its own before it is put on, as after", () => {
    const example = JSON.stringify(asExample(JSON.parse(exampleText), "Test truck"));
    const { store, fits } = board(example);
    const told = fittedTruck(store.getState(), "narrow", fits[1]!);
    const put = putFitOn(store, "narrow", fits[1]!);
    const { good, file, meshes } = store.getState();
    const made = trucks.make(good!.document, file, put, meshes);
    if (!told?.ok || !made.ok) throw new Error("both must go together");
    const [before, after] = [told, made].map(({ value }) => value.setup.fromExample!);
    expect(before!.isAsItCame).toBe(false);
    // What of it holds for other variants too is another matter.
    expect({ ...before, mineInAll: [] }).toEqual({ ...after, mineInAll: [] });
  });

  it("is tried on both trucks compared, without the wheel they have of the list; on one where that is the same", () => {
    const { store, fits, names } = board();
    const tried = (a: string | null, b: string | null) =>
      trucksToTry([a, b], "B", fits, names()).map(({ letter, base, chosen }) => [letter, base, chosen]);
    expect(tried(null, "narrow")).toEqual([
      ["A", null, null],
      ["B", "narrow", "narrow"],
    ]);
    const [wide, narrow] = [putFitOn(store, null, fits[0]!), putFitOn(store, "narrow", fits[0]!)];
    expect(tried(wide, narrow)).toEqual([
      ["A", null, wide],
      ["B", "narrow", narrow],
    ]);
    expect(tried(null, wide)).toEqual([["B", null, wide]]);
    // On one truck it is made, on the others it is still to be had.
    expect(names()).toContain(fitName("narrow", fits[0]!));
    expect(names()).not.toContain(fitName("narrow", fits[1]!));
    expect(putFitOn(store, null, fits[1]!)).toBe("current truck, Wide");
  });
});
