import { describe, expect, it } from "vitest";
import { fieldAt, setupFields } from "../../../src/setup/fieldCatalogue.ts";
import { parseKeyText } from "../../../src/setup/types/keyPath.ts";
import { fieldName } from "../../../src/studies/wording/fieldName.ts";
import { exampleDocument } from "../../app/exampleText.ts";

const scan = { name: "scan", kind: "mesh", file: "a.stl", place: { from: [], to: [] } };
const document = {
  ...exampleDocument,
  truck: { ...exampleDocument.truck, body: [scan, { name: "lip", kind: "path", points: [[1, 2, 3]] }] },
};
const name = (key: string) => fieldName(parseKeyText(key)!, document);

describe("a place of a setup", () => {
  it.each([
    ["knuckle.hubFace", "Hub-face distance"],
    ["truck.lowerArm.ballJoint", "Lower ball joint"],
    ["truck.lowerArm.ballJoint[2]", "Lower ball joint, z"],
    ["truck.body[0].place.from", "Body parts “scan”: three points of the mesh"],
    ["truck.body[0].place.from[1][0]", "Body parts “scan”: three points of the mesh: point 2, x"],
    ["truck.body[1].points[0][1]", "Body parts “lip”: points: point 1, y"],
    ["knuckle.hubFcae", "Knuckle: “hubFcae”"],
    ["knuckle", "Knuckle"],
    ["", ""],
  ])("%s is called %s", (key, words) => expect(name(key)).toBe(words));

  it("is never called by a key of the file", () => {
    for (const { pattern } of setupFields()) {
      const path = pattern.map((key) => (key === "*" || /^\d+$/.test(key) ? 0 : key));
      if (fieldAt(path, document) === null) continue; // of another sort of its block
      expect(fieldName(path, document)).not.toMatch(/[a-z][A-Z]/);
    }
  });
});
