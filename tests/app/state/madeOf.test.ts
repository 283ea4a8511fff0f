import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { variantsBeside } from "../../../src/app/clear/plots/laidOver.ts";
import { askedOf, shownOf } from "../../../src/app/state/madeOf.ts";
import { alignedTruck } from "../../../src/app/state/truck.ts";
import { createWorkbenchStore } from "../../../src/app/state/workbenchStore.ts";
import { valueAt } from "../../../src/setup/types/keyPath.ts";
import { exampleText } from "../exampleText.ts";

const PIN = ["knuckle", "pinAngle"];
const HUB = ["knuckle", "hubFace"];

describe("while fields change, what is asked and shown of a truck", () => {
  it("is of the document that very truck was made of, whatever is on the board by now", () => {
    const store = createWorkbenchStore(exampleText, "test.json");
    const held = store.getState().truck!;
    const was = valueAt(shownOf(held), PIN);
    store.getState().editField(PIN, "11");
    const now = store.getState().truck!;
    expect(was).not.toBe(11);
    expect([held, now].map((truck) => valueAt(shownOf(truck), PIN))).toEqual([was, 11]);
    expect([held, now].map((truck) => valueAt(askedOf(truck), PIN))).toEqual([was, 11]);
    expect(valueAt(shownOf(alignedTruck(held)), PIN)).toBe(was);
    // Worked out once: what follows from it is not drawn anew.
    expect(askedOf(held)).toBe(askedOf(held));
    expect(valueAt(askedOf(held), ["truck", "body"])).toBeUndefined();
    expect(valueAt(shownOf(held), ["variants"])).toBeUndefined();
  });

  it("has the truck's own variant in it, and is laid over by variants of that document alone", () => {
    const store = createWorkbenchStore(exampleText, "test.json");
    const { file, meshes, isAligned } = store.getState();
    const held = store.getState().truck!;
    store.getState().chooseVariant("narrow");
    store.getState().editField(HUB, "5");
    store.getState().editField(PIN, "11", "base");
    const now = store.getState().truck!;
    expect([valueAt(shownOf(now), HUB), valueAt(shownOf(now), PIN)]).toEqual([5, 11]);
    const making = { file, meshes, isAligned };
    const beside = (truck: typeof now, names?: string[]) =>
      variantsBeside(truck, making, names).map(({ name, truck: { setup } }) => [
        name,
        Math.round((setup.knuckle.pinAngle * 180) / Math.PI),
      ]);
    expect(beside(now)).toEqual([["current truck", 11]]);
    expect(beside(held, ["narrow"])).toEqual([
      ["narrow", Math.round(held.setup.knuckle.pinAngle * (180 / Math.PI))],
    ]);
    expect(beside(held, ["narrow"])[0]![1]).not.toBe(11);
    expect(beside(held, [])).toEqual([]);
  });

  it("is nowhere put together of a truck and the board's own document", () => {
    const app = join(import.meta.dirname, "..", "..", "..", "src", "app");
    const rooms = ["choose", "parts", "clear/plots", "measure/fields", "build", "shell/saves"];
    const sources = rooms.flatMap((room) =>
      readdirSync(join(app, room), { recursive: true, encoding: "utf8" })
        .filter((name) => /\.tsx?$/.test(name))
        .map((name) => join(app, room, name)),
    );
    expect(sources.length).toBeGreaterThan(80);
    expect(sources.filter((path) => /\.good\b/.test(readFileSync(path, "utf8")))).toEqual([]);
  });
});
