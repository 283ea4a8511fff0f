import { expect, it } from "vitest";
import { GivenMeshes } from "../../../src/app/state/givenMeshes.ts";
import { trucks } from "../../../src/app/state/truck.ts";
import { exampleDocument } from "../exampleText.ts";

const meshes = new GivenMeshes();

/** The truck under a name, read from a document of its own. */
function motionOf(name: string) {
  const document = { ...exampleDocument, variants: [{ name, patch: {} }] };
  const made = trucks.make(document, "test.json", name, meshes);
  if (!made.ok) throw new Error(made.issues[0]!.mend);
  return made.value.motion;
}

it("what was found of a truck stands for the next under its name, until many others were made since", () => {
  const first = motionOf("one of many");
  for (let i = 0; i < 40; i++) motionOf(`another ${i}`);
  // Made again it is the newest.
  expect(motionOf("one of many")).toBe(first);
  for (let i = 0; i < 40; i++) motionOf(`a third ${i}`);
  expect(motionOf("one of many")).toBe(first);
  for (let i = 0; i < 80; i++) motionOf(`a fourth ${i}`);
  expect(motionOf("one of many")).not.toBe(first);
});

it("a truck that is asked for again and again stays beside a long list of others", () => {
  const made = () => {
    const truck = trucks.make(exampleDocument, "test.json", null, meshes);
    if (!truck.ok) throw new Error(truck.issues[0]!.mend);
    return truck.value.motion;
  };
  const first = made();
  for (let i = 0; i < 80; i++) {
    motionOf(`of a long list ${i}`);
    expect(made()).toBe(first);
  }
  const renamed = trucks.make({ ...exampleDocument, name: "the same, renamed" }, "test.json", null, meshes);
  expect(renamed.ok && renamed.value.motion).toBe(first);
});
