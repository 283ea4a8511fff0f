import { expect, it } from "vitest";
import { type StepState, stepWords, undoneWords } from "../../../src/app/words/stepWords.ts";

const DOCUMENT = {
  name: "Half-ton",
  knuckle: { hubFace: "6 1/8", pinAngle: 8 },
  truck: {
    lowerArm: { ballJoint: [0, 28, 9] },
    body: [
      {
        name: "front lip",
        side: "left",
        points: [
          [0, 30, 25],
          [4, 30, 26],
        ],
      },
      { name: "inner fender", side: "left", points: [[0, 20, 25]] },
    ],
  },
  tire: { size: "P235/70R15", loadedRadius: 13 },
  stances: [{ name: "driving", travel: 0 }],
  variants: [{ name: "narrow", set: { knuckle: { hubFace: 5 } } }],
};
const MESHES = {};
const DRAFTS = {};
const state = (document: object, more: Partial<StepState> = {}): StepState => ({
  documentId: "a",
  document: document as StepState["document"],
  drafts: DRAFTS,
  meshes: MESHES,
  ...more,
});

/** The document with a value put somewhere; `undefined` takes it out. */
function put(document: object, [key, ...rest]: readonly (string | number)[], value: unknown): object {
  const copy = structuredClone(document) as Record<string | number, unknown>;
  copy[key!] = rest.length > 0 ? put(copy[key!] as object, rest, value) : value;
  if (copy[key!] === undefined) delete copy[key!];
  return copy;
}

const BODY = DOCUMENT.truck.body;

it.each<[string, readonly (string | number)[], unknown]>([
  ["Hub-face distance 6 1/8 → 6", ["knuckle", "hubFace"], "6"],
  ["Pin lead set to 1/4", ["knuckle", "pinLead"], "1/4"],
  ["Pin angle left out", ["knuckle", "pinAngle"], undefined],
  ["Knuckle: 2 values", ["knuckle"], { hubFace: 5, pinAngle: 9 }],
  [
    "Tire given by tire diameter and section width",
    ["tire"],
    { diameter: 28, sectionWidth: 9, loadedRadius: 13 },
  ],
  ["driving given by height, floor to frame", ["stances", 0], { name: "driving", frameHeight: 7 }],
  ["Tire: 2 values", ["tire"], { size: "P215/70R15", loadedRadius: 12 }],
  ["Lower ball joint z 9 → 9.5", ["truck", "lowerArm", "ballJoint", 2], 9.5],
  ["Lower ball joint: 3 values", ["truck", "lowerArm", "ballJoint"], [1, 2, 3]],
  ["front lip, point 2, z 26 → 27", ["truck", "body", 0, "points", 1, 2], 27],
  ["front lip, side of the truck left → right", ["truck", "body", 0, "side"], "right"],
  ["Body parts: inner fender removed", ["truck", "body"], BODY.slice(0, 1)],
  ["Body parts: spare added", ["truck", "body"], [...BODY, { name: "spare" }]],
  ["Variants: wide added", ["variants"], [...DOCUMENT.variants, { name: "wide", set: {} }]],
  ["narrow, hub-face distance 5 → 4", ["variants", 0, "set", "knuckle", "hubFace"], 4],
])("says: %s", (words, path, value) => {
  expect(stepWords(state(DOCUMENT), state(put(DOCUMENT, path, value)))).toBe(words);
});

it("counts what has nothing in common", () => {
  const two = { ...put(DOCUMENT, ["knuckle", "hubFace"], 5), name: "Other" };
  expect(stepWords(state(DOCUMENT), state(two))).toBe("2 values");
});

it("passes over the marks of an example that follow an edit", () => {
  const marked = { ...DOCUMENT, fromExample: { name: "Half-ton", mine: ["knuckle.hubFace"] } };
  expect(stepWords(state(DOCUMENT), state(marked))).toBe("Marked numbers as the truck's own");
  expect(stepWords(state(DOCUMENT), state(put(marked, ["knuckle", "hubFace"], "6")))).toBe(
    "Hub-face distance 6 1/8 → 6",
  );
});

it("names an opening, a draft and a mesh file", () => {
  const now = state(DOCUMENT);
  expect(stepWords(now, state({ name: "Flatbed" }, { documentId: "b" }))).toBe("Opened Flatbed");
  const drafts = { hub: { path: ["knuckle", "hubFace"], text: "34 5/" } };
  expect(stepWords(now, { ...now, drafts })).toBe("Hub-face distance: typed “34 5/”, which cannot be read");
  expect(stepWords({ ...now, drafts }, { ...now, drafts: {} })).toBe("Took away what could not be read");
  expect(stepWords(now, { ...now, meshes: {} })).toBe("Mesh file opened");
});

it("says of a step taken back what stands there again", () => {
  const named = (_: unknown, at: number) => `reading ${at + 1}`;
  const undone = (left: object, back: object) => undoneWords(state(left), state(back), named);
  const changed = put(DOCUMENT, ["knuckle", "hubFace"], "5");
  expect(undone(changed, DOCUMENT)).toBe("Hub-face distance, back to 6 1/8");
  expect(undone(put(DOCUMENT, ["knuckle", "pinLead"], "1/4"), DOCUMENT)).toBe("Pin lead, empty again");
  // What a reading puts elsewhere follows it.
  const read = (is: string) => ({
    ...put(DOCUMENT, ["knuckle", "hubFace"], is),
    readings: [{ height: "wheelCenter", is }],
  });
  expect(undone(read("26 3/4"), read("26 1/2"))).toBe("reading 1, back to 26 1/2");
  expect(undone({ ...changed, name: "Other" }, DOCUMENT)).toBe("2 values");
  expect(undone(put(DOCUMENT, ["truck", "body"], BODY.slice(0, 1)), DOCUMENT)).toBe(
    "Body parts: inner fender removed",
  );
});
