import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { startUsual } from "../../src/app/build/unbuilt/startUsual.ts";
import { shownDocument } from "../../src/app/state/selectors.ts";
import { workbench } from "../../src/app/state/workbench.ts";
import { createWorkbenchStore } from "../../src/app/state/workbenchStore.ts";
import { effectiveDocument } from "../../src/setup/editing/effectiveDocument.ts";
import { asExample, exampleFields, isExampleAt } from "../../src/setup/exampleMarks.ts";
import { fieldAt } from "../../src/setup/fieldCatalogue.ts";
import { readSetup } from "../../src/setup/readSetup.ts";
import { keyText } from "../../src/setup/types/keyPath.ts";
import { exampleDocument } from "../app/exampleText.ts";

const SHARED = ["half-ton-limits", "long-bed-steering-box", "compact-front-steer", "flatbed-long-arms"];

/** A board with an example on it. */
function board() {
  const store = createWorkbenchStore(JSON.stringify(asExample(exampleDocument, "Test truck")), "t.json");
  const left = () => store.getState().truck?.setup.fromExample?.fields.map(keyText) ?? [];
  return { store, state: () => store.getState(), left };
}

describe("an example's numbers", () => {
  it.each(SHARED)("are all of %s, each a field of the form, and the setup stays sound", (file) => {
    const text = readFileSync(`shared/${file}.json`, "utf8");
    const marked = asExample(JSON.parse(text), "x");
    const read = readSetup(JSON.stringify(marked), file);
    if (!read.ok) throw new Error(JSON.stringify(read.issues));
    const fields = read.value.setup.fromExample!.fields;
    expect(fields.length).toBeGreaterThan(50);
    for (const path of fields) expect([keyText(path), fieldAt(path, marked)]).not.toContain(null);
    expect(read.value.setup.fromExample?.isAsItCame).toBe(true);
  });

  it("are points that end an arm and sizes that start with a letter too, but no names", () => {
    const marked = (file: string) =>
      exampleFields(asExample(JSON.parse(readFileSync(`shared/${file}.json`, "utf8")), "x")).map(keyText);
    expect(marked("long-bed-steering-box")).toEqual(
      expect.arrayContaining(["truck.steering.pitman.end", "truck.steering.idler.end", "tire.size"]),
    );
    const ordered = marked("ordered-knuckle");
    expect(ordered).toEqual(expect.arrayContaining(["order.hub.boltPattern", "order.steeringArm.thread"]));
    for (const name of ["order.number", "order.stance", "order.upperBallJoint.item", "order.finish"])
      expect(ordered).not.toContain(name);
  });

  it("are no more the example's once they are touched, whatever way, and are again when that is undone", () => {
    const { state, left } = board();
    const all = left();
    expect(all).toContain("knuckle.hubFace");
    state().editField(["knuckle", "hubFace"], "6 1/2");
    expect(left()).toEqual(all.filter((key) => key !== "knuckle.hubFace"));
    state().stepField(["knuckle", "span"], 1);
    expect(left()).not.toContain("knuckle.span");
    state().undo();
    state().undo();
    expect(left()).toEqual(all);
    expect(state().truck?.setup.fromExample?.isAsItCame).toBe(true);
  });

  it("stay the example's in a point of which one coordinate was measured, until all are", () => {
    const { state, left } = board();
    const point = ["truck", "lowerArm", "ballJoint"] as const;
    const value = (exampleDocument.truck as unknown as { lowerArm: { ballJoint: number[] } }).lowerArm
      .ballJoint;
    state().editField([...point, 0], value[0]! + 0.125);
    expect(left()).toContain("truck.lowerArm.ballJoint");
    const theirs = () => [0, 1, 2].filter((axis) => isExampleAt(shownDocument(state()), [...point, axis]));
    expect(theirs()).toEqual([1, 2]);
    state().claimFields([
      [...point, 1],
      [...point, 2],
    ]);
    expect(left()).not.toContain("truck.lowerArm.ballJoint");
    expect(theirs()).toEqual([]);
  });

  it("may be said to be right one by one and by the block", () => {
    const { state, left } = board();
    state().claimFields([["knuckle", "span"]]);
    expect(left()).not.toContain("knuckle.span");
    state().claimFields([["knuckle"]]);
    expect(left().filter((key) => key.startsWith("knuckle"))).toEqual([]);
    state().claimFields(exampleFields(state().document));
    expect(state().truck?.setup.fromExample).toBeNull();
  });

  it("go with their place in a list, and what is added is no example's", () => {
    const { state, left } = board();
    const parts = state().document?.truck as { body: unknown[] };
    state().insertItem(["truck", "body"], 0, {
      name: "mine",
      kind: "box",
      min: [60, 12, 16],
      max: [62, 15, 22],
    });
    expect(left().filter((key) => key.startsWith("truck.body[0]"))).toEqual([]);
    expect(left().some((key) => key.startsWith("truck.body[1]"))).toBe(true);
    state().removeItem(["truck", "body"], 1);
    expect(left().filter((key) => key.startsWith("truck.body[0]"))).toEqual([]);
    expect((state().document!.truck as { body: unknown[] }).body).toHaveLength(parts.body.length);
  });

  it("are told for each variant: its own numbers are the example's too, until they are touched there", () => {
    const { state, left } = board();
    state().editField(["knuckle", "hubFace"], "6 1/2");
    expect(left()).not.toContain("knuckle.hubFace");
    state().chooseVariant("narrow");
    expect(left()).toContain("knuckle.hubFace");
    state().editField(["knuckle", "hubFace"], "5 3/4");
    expect(left()).not.toContain("knuckle.hubFace");
    state().chooseVariant(null);
    state().claimFields([["knuckle"]]);
    state().chooseVariant("narrow");
    expect(left().filter((key) => key.startsWith("knuckle"))).toEqual([]);
  });

  it("are none of what a variant's knuckle is made of where a usual one is started from, and undoing takes all of it back", () => {
    const { build, ...bare } = JSON.parse(readFileSync("shared/ordered-knuckle.json", "utf8"));
    const variants = [{ name: "as drawn", patch: { build } }];
    const { document, truck } = createWorkbenchStore(
      JSON.stringify({ ...bare, variants }),
      "t.json",
    ).getState();
    workbench.setState({ document, truck, variant: null });
    const left = (name: string | null) =>
      exampleFields(effectiveDocument(workbench.getState().document, name));
    startUsual();
    expect(left(null).length).toBeGreaterThan(40);
    expect(left("as drawn")).toEqual([]);
    workbench.getState().undo();
    expect(workbench.getState().document).toEqual(document);
  });
});
