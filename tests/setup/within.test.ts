import { describe, expect, it } from "vitest";
import * as z from "zod";
import { setupJsonSchemaText } from "../../src/setup/documentText.ts";
import { readTyped } from "../../src/setup/editing/readTyped.ts";
import { resolveShown } from "../../src/setup/editing/resolveShown.ts";
import { asExample, exampleFields, withChangesMine } from "../../src/setup/exampleMarks.ts";
import { fieldAt } from "../../src/setup/fieldCatalogue.ts";
import { numberNature } from "../../src/setup/fields/fieldKinds.ts";
import { setAt } from "../../src/setup/reading/setAt.ts";
import { withSameWithin } from "../../src/setup/reading/typedPair.ts";
import { resolveSetup } from "../../src/setup/resolveSetup.ts";
import { type KeyPath, keyText, valueAt } from "../../src/setup/types/keyPath.ts";
import { KnownParts } from "../../src/setup/types/knownParts.ts";
import type { Setup } from "../../src/setup/types/types.ts";
import { splitWithin } from "../../src/units/withinText.ts";
import { exampleDocuments } from "../fuzz/exampleDocuments.ts";
import { exampleDocument } from "./fixtures.ts";

/** Every number of a document at a field that may tell its uncertainty. */
function numbersOf(document: unknown, value: unknown = document, path: KeyPath = []): KeyPath[] {
  if (typeof value === "object" && value !== null) {
    const entries = Array.isArray(value) ? value.map((item, i) => [i, item] as const) : Object.entries(value);
    return entries.flatMap(([key, item]) =>
      key === "variants" ? [] : numbersOf(document, item, [...path, key]),
    );
  }
  const field = fieldAt(path, document);
  return field && numberNature(field.schema) !== null ? [path] : [];
}

function setupOf(document: unknown, variant: string | null = null): Setup {
  const read = resolveSetup(document, "truck.json", variant, { get: () => undefined });
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return read.value;
}

const hubFace: KeyPath = ["knuckle", "hubFace"];
const withHubFace = (typed: unknown) => setAt(exampleDocument(), hubFace, typed);

function issuesOf(document: unknown): string[] {
  const read = resolveSetup(document, "truck.json");
  return read.ok ? [] : read.issues.map(({ key, mend }) => `${key}: ${mend}`);
}

describe("how well a number is known", () => {
  it("changes nothing of the setup, in either notation, whichever numbers of whichever example tell it", () => {
    let wrapped = 0;
    for (const [name, document] of exampleDocuments) {
      const meshless = name === "scanned-fender" ? setAt(document, ["truck", "body"], []) : document;
      const plain = setupOf(meshless);
      const paths = numbersOf(meshless);
      expect(paths.length).toBeGreaterThan(40);
      wrapped += paths.length;
      const forms = [
        (was: unknown) => `${was} ± 0`,
        (was: unknown) => `${was} +/- 0.001`,
        (was: unknown) => ({ value: was, within: 0.001 }),
      ];
      for (const form of forms) {
        const told = paths.reduce((all: unknown, path) => {
          const was = valueAt(all, path);
          return setAt(all, path, typeof was === "string" && /[a-z"'°]/i.test(was) ? was : form(was));
        }, meshless);
        const { within, ...others } = setupOf(told);
        const { within: none, ...alone } = plain;
        expect(none).toEqual([]);
        expect(within.length).toBeGreaterThan(40);
        expect([name, { ...others, measuredStances: [], fromExample: null }]).toEqual([
          name,
          { ...alone, measuredStances: [], fromExample: null },
        ]);
      }
    }
    expect(wrapped).toBeGreaterThan(600);
  });

  it("is kept by its path, in mm, radians or the number itself", () => {
    let document: unknown = withHubFace("5 5/8 ± 1/16");
    document = setAt(document, ["knuckle", "pinAngle"], "8.4 +- 0.25");
    document = setAt(document, ["truck", "upperArm", "ballJoint", 2], { value: "19 3/8", within: "1 mm" });
    document = setAt(document, ["truck", "body", 0, "points", 1, 2], "31.5 in ± 1/8");
    document = setAt(document, ["masses"], { corner: "1000 lb +/- 20", unsprung: 120 });
    const setup = setupOf(document);
    expect(setup.knuckle.hubFace).toBeCloseTo(142.875, 12);
    const told = setup.within.map(({ path, kind, within }) => [keyText(path), kind, within]);
    expect(told).toEqual([
      ["truck.upperArm.ballJoint[2]", "length", 1],
      ["truck.body[0].points[1][2]", "length", 3.175],
      ["knuckle.pinAngle", "angle", (0.25 / 180) * Math.PI],
      ["knuckle.hubFace", "length", 1.5875],
      ["masses.corner", "weight", 20 * 0.45359237],
    ]);
  });

  it("goes through variants: a patch may tell it, take it away, or change it alone", () => {
    const document = {
      ...(withHubFace({ value: 5.5, within: "1/16" }) as object),
      variants: [
        { name: "told", patch: { knuckle: { hubFace: "5 3/8 ± 1/32" } } },
        { name: "plain", patch: { knuckle: { hubFace: 5 } } },
        { name: "better", patch: { knuckle: { hubFace: { within: "1/64" } } } },
      ],
    };
    const told = ["told", "plain", "better"].map((name) => {
      const { knuckle, within } = setupOf(document, name);
      return [Number((knuckle.hubFace / 25.4).toFixed(9)), within.map((one) => one.within / 25.4)];
    });
    expect(told).toEqual([
      [5.375, [1 / 32]],
      [5, []],
      [5.5, [1 / 64]],
    ]);
  });

  it("is taken from text by the notations people type, a unit told with the value going for both", () => {
    for (const [text, value, within] of [
      ["5 5/8 ± 1/16", "5 5/8", "1/16"],
      ["5 5/8±1/16", "5 5/8", "1/16"],
      ["5 5/8 +/- 1/16", "5 5/8", "1/16"],
      ['5-5/8" +- 1/16', '5-5/8"', '1/16"'],
      ["5 5/8 +/\u2212 1/16", "5 5/8", "1/16"],
      ["142.9 mm ± 1", "142.9 mm", "1 mm"],
      ["142.9 mm ± 1/16 in", "142.9 mm", "1/16 in"],
      ["8.4° ± 0.1", "8.4°", "0.1°"],
      ["-6.2 ± 0.1", "-6.2", "0.1"],
      ["1e3 ± 2", "1e3", "2"],
    ])
      expect([text, splitWithin(text!)]).toEqual([text, { ok: true, value, within }]);
    for (const text of ["5 5/8", "5 + -3", "8° 24'", "-1/2"])
      expect([text, splitWithin(text)]).toEqual([text, null]);
  });

  it("that is wrong is one issue at its number, with a mend", () => {
    for (const [typed, mend] of [
      ["5 5/8 ± -1/16", "after the ±: must be 0 or more"],
      [{ value: 5.6, within: -1 }, "after the ±: must be 0 or more"],
      ["5 5/8 ± a bit", /^after the ±: no number found/],
      ["5 5/8 ±", "has nothing after the ±; write a number there, or leave the ± out"],
      ["5 5/8 ± 1/16 ± 1/8", "has ± twice; write the value, then ± and one number"],
      ["± 1/16", /^empty; write a length/],
      ["5 5/8 ± 0.1°", /^after the ±: unknown unit "°"/],
      ["5 5/8 ± 1 mm", /^has its unit on one side of the ± only, and not the file's/],
      [{ value: "142.9 mm", within: 1 }, /^has its unit on one side of the ± only, and not the file's/],
      ["5' ± 1/4", "needs a unit after the ± too, such as 5' ± 1/4\""],
      ["5 9/8 ± 1/16", /is not less than 1; check the reading$/],
      ["-5 ± 1/16", "must be more than 0"],
      ["5 ± 1e9", /^after the ±: is more than anything on a truck is off by/],
      [{ value: 5.6 }, 'must have "value" and "within", each a number or text, and nothing else'],
      [{ value: 5.6, within: 1, by: "tape" }, /^must have "value" and "within"/],
      [{ value: [5], within: 1 }, /^must have "value" and "within"/],
    ] as const) {
      const found = issuesOf({ ...(withHubFace(typed) as object), variants: [] });
      expect([typed, found]).toEqual([typed, [expect.stringMatching(/^knuckle\.hubFace: ./)]]);
      const said = found[0]!.slice("knuckle.hubFace: ".length);
      expect([typed, said]).toEqual([typed, typeof mend === "string" ? mend : expect.stringMatching(mend)]);
    }
  });

  it("has no place where there is no number: a size, a list, a count; and in a name it is a name", () => {
    expect(issuesOf(setAt(exampleDocument(), ["tire", "size"], "P225/70R15 ± 1/8"))[0]).toMatch(
      /^tire\.size: not a tire size/,
    );
    const point = { value: [0, 1, 2], within: 1 };
    expect(issuesOf(setAt(exampleDocument(), ["knuckle", "steeringArm"], point))[0]).toMatch(
      /must be a point/,
    );
    expect(issuesOf(setAt(exampleDocument(), ["version"], "1 ± 0"))[0]).toMatch(/^version: must be 1/);
    const corner = ["truck", "body", 2, "triangles", 0, 0];
    expect(issuesOf(setAt(exampleDocument(), corner, "0 ± 1"))[0]).toMatch(/whole number$/);
    const named = setupOf(setAt(exampleDocument(), ["name"], "lowered 3 ± 1 in"));
    expect([named.name, named.within]).toEqual(["lowered 3 ± 1 in", []]);
  });

  it("is accepted by the published schema in both notations", () => {
    const readable = JSON.parse(setupJsonSchemaText(), (key, value) => {
      const isKeyRule = key === "oneOf" && Object.keys(value[0]).join() === "required";
      return isKeyRule || key === "dependentRequired" ? undefined : value;
    });
    const schema = z.fromJSONSchema(readable as Parameters<typeof z.fromJSONSchema>[0]);
    const multiple: KeyPath = ["loads", "cases", 0, "up"];
    const start = setAt(exampleDocument(), ["loads"], {
      cases: [{ name: "pothole", kind: "multiples", up: 3 }],
    });
    for (const path of [hubFace, ["knuckle", "pinAngle"], ["truck", "body", 0, "points", 0, 1], multiple])
      for (const typed of ["5 ± 0.5", { value: 5, within: "0.5" }, 5]) {
        expect([path, schema.safeParse(setAt(start, path, typed)).error]).toEqual([path, undefined]);
        expect([path, issuesOf(setAt(start, path, typed)).filter((one) => !/loads/.test(one))]).toEqual([
          path,
          [],
        ]);
      }
    for (const typed of [{ value: 5 }, { value: 5, within: 1, of: 2 }, true])
      expect(schema.safeParse(setAt(start, hubFace, typed)).success).toBe(false);
    expect(schema.safeParse(setAt(start, multiple, "three")).success).toBe(false);
  });

  it("is read where it is typed, arithmetic and shown units included", () => {
    const field = fieldAt(hubFace, exampleDocument())!;
    const typed = (text: string, bare: "in" | "mm" = "in") => readTyped(field, text, "in", bare);
    expect(typed("5 5/8 + 1/8 +/- 1/16")).toEqual({ ok: true, value: "5 3/4 ± 1/16" });
    expect(typed("142.9 ± 1", "mm")).toEqual({ ok: true, value: "142.9 mm ± 1 mm" });
    expect(typed("5 5/8 ± 1/16 in")).toEqual({ ok: true, value: "5 5/8 ± 1/16 in" });
    expect(typed("5 5/8 ± x")).toMatchObject({ ok: false, mend: expect.stringMatching(/^after the ±/) });
    expect(typed("5 5/8 ± -1")).toMatchObject({ ok: false, mend: expect.stringMatching(/0 or more/) });
    const part = fieldAt(["truck", "body", 0, "points"], exampleDocument())!;
    expect(readTyped(part, [[1, "2 ± 1", { value: 3, within: 1 }]], "in")).toMatchObject({ ok: true });
    expect(readTyped(part, [[1, "x ± 1", 3]], "in")).toMatchObject({ ok: false });
  });

  it("stays beside another value in the notation it had, with units where one would be read in the other's", () => {
    expect(withSameWithin("5 5/8 ± 1/16", "5 3/4", "in")).toBe("5 3/4 ± 1/16");
    expect(withSameWithin("5 5/8 ± 1/16", "146 mm", "in")).toBe("146 mm ± 1/16 in");
    expect(withSameWithin("142.9 mm ± 1", "5 5/8", "in")).toBe("5 5/8 in ± 1 mm");
    expect(withSameWithin({ value: 5, within: 0.1 }, 6, "in")).toEqual({ value: 6, within: 0.1 });
    expect(withSameWithin("8° 24' ± 6'", 8.5, "°")).toBe("8.5° ± 6'");
    expect(withSameWithin("5 5/8", "5 3/4", "in")).toBe("5 3/4");
    expect(withSameWithin("5 5/8 ± 1/16", "5 3/4 ± 1/8", "in")).toBe("5 3/4 ± 1/8");
  });

  it("of an example's number is the example's with it, and typed anew it is the truck's", () => {
    const example = asExample(withHubFace({ value: 5, within: 1 }), "an example");
    const isMarked = (document: unknown) =>
      exampleFields(document).some((path) => keyText(path) === "knuckle.hubFace");
    expect(isMarked(example)).toBe(true);
    const changed = withChangesMine(example, setAt(example, [...hubFace, "within"], 2));
    expect(isMarked(changed)).toBe(false);
    expect(exampleFields(changed).length).toBe(exampleFields(example).length - 1);
  });

  it("of a part of the body leaves the part known while something else is edited", () => {
    const known = new KnownParts();
    const document = setAt(exampleDocument(), ["truck", "body", 0, "radius"], "1/8 ± 1/32");
    const bodyOf = (typed: unknown) => {
      const read = resolveShown(typed, "truck.json", null, { get: () => undefined }, known);
      if (!read.ok) throw new Error(JSON.stringify(read.issues));
      expect(read.value.within.map(({ path }) => keyText(path))).toEqual(["truck.body[0].radius"]);
      return read.value.truck.body;
    };
    const [before, after] = [bodyOf(document), bodyOf(setAt(document, hubFace, 5))];
    expect(after[0]).toBe(before[0]);
    expect(after[0]).toMatchObject({ radius: 3.175 });
  });
});
