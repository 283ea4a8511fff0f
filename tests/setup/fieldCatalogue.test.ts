import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readTyped } from "../../src/setup/editing/readTyped.ts";
import { fieldAt, setupFields } from "../../src/setup/fieldCatalogue.ts";
import type { KeyPath } from "../../src/setup/types/keyPath.ts";

const demo: unknown = JSON.parse(
  readFileSync(new URL("../../shared/half-ton-on-air.json", import.meta.url), "utf8"),
);

/** Every place of a document that holds a plain value. */
function leaves(value: unknown, path: KeyPath = []): KeyPath[] {
  if (typeof value !== "object" || value === null) return [path];
  const entries = Array.isArray(value) ? value.map((item, i) => [i, item] as const) : Object.entries(value);
  return entries.flatMap(([key, item]) => leaves(item, [...path, key]));
}

const read = (path: KeyPath, typed: unknown, bare: "in" | "mm" = "in") => {
  const field = fieldAt(path, demo);
  if (!field) throw new Error(`no field at ${path.join(".")}`);
  return readTyped(field, typed, "in", bare);
};

describe("the catalogue of fields", () => {
  it("knows every value of the example, and each as the file has it", () => {
    const { variants: _, ...plain } = demo as Record<string, unknown>;
    // Numbers of vertices are no fields of a form.
    const places = leaves(plain).filter((path) => !path.includes("triangles"));
    expect(places.length).toBeGreaterThan(100);
    for (const path of places) {
      const field = fieldAt(path, demo);
      expect([path, field?.meaning]).toEqual([path, expect.stringMatching(/\S/)]);
      const value = path.reduce<unknown>((at, step) => (at as Record<string | number, unknown>)[step], demo);
      expect([path, field?.schema.safeParse(value).success]).toEqual([path, true]);
    }
  });

  it("gives each field once a sort, with a label and a meaning that does not repeat its default", () => {
    const keys = setupFields().map(({ pattern, when }) => `${pattern.join(".")} ${when?.is ?? ""}`);
    expect(new Set(keys).size).toBe(keys.length);
    for (const { label, meaning, pattern } of setupFields()) {
      expect([pattern, label.length > 0, / default /.test(meaning)]).toEqual([pattern, true, false]);
    }
  });

  it("tells kind, range, step, default and choices from the schema", () => {
    expect(fieldAt(["knuckle", "hubFace"], demo)).toMatchObject({
      label: "Hub-face distance",
      kind: "length",
      required: true,
      default: null,
      range: { least: 0, leastExcluded: true },
    });
    expect(fieldAt(["travel", "droop"], demo)).toMatchObject({ kind: "signedLength", range: { most: 0 } });
    expect(fieldAt(["knuckle", "pinAngle"], demo)).toMatchObject({
      kind: "angle",
      range: { least: -45, most: 45 },
    });
    expect(fieldAt(["allowance"], demo)).toMatchObject({ default: "1/4 in", required: false });
    expect(fieldAt(["truck", "steering", "type"], demo)).toMatchObject({
      kind: "choice",
      choices: ["rack", "pitman"],
    });
    expect(fieldAt(["truck", "body", 0, "side"], demo)?.choices).toEqual(["both", "left", "right"]);
    expect(fieldAt(["truck", "upperArm", "ballJoint"], demo)).toMatchObject({
      kind: "point",
      label: "Upper ball joint",
    });
    expect(fieldAt(["truck", "upperArm", "ballJoint", 1], demo)).toMatchObject({
      kind: "signedLength",
      label: "y",
    });
    expect(fieldAt(["wheel", "rimDiameter"], demo)?.range).toMatchObject({ least: 152.4, most: 1524 });
  });

  it("knows only the fields of the sort that the document has", () => {
    expect(fieldAt(["truck", "steering", "stroke"], demo)?.when).toEqual({ key: "type", is: "rack" });
    expect(fieldAt(["truck", "steering", "swing"], demo)).toBeNull();
    expect(fieldAt(["truck", "steering", "swing"], { truck: { steering: { type: "pitman" } } })?.kind).toBe(
      "angle",
    );
    expect(fieldAt(["knuckle", "hubFaec"], demo)).toBeNull();
  });
});

describe("a field asked for again", () => {
  it("is of the sort that the document has now, and of the very place, whatever was asked before", () => {
    const steering = (type: string) => ({ truck: { steering: { type } } });
    const swing: KeyPath = ["truck", "steering", "swing"];
    for (let turn = 0; turn < 2; turn++) {
      expect(fieldAt(swing, steering("rack"))).toBeNull();
      expect(fieldAt(swing, steering("pitman"))?.kind).toBe("angle");
      expect(fieldAt(["truck", "steering", "stroke"], steering("pitman"))).toBeNull();
      expect(fieldAt(["truck", "steering", "stroke"], steering("rack"))?.kind).toBe("length");
      expect(fieldAt(["truck", "steering", "type"], steering("none"))?.kind).toBe("choice");
      const body = (kind: string) => ({ truck: { body: Array.from({ length: 30 }, () => ({ kind })) } });
      const y: KeyPath = ["truck", "body", 20, "points", 12, 1];
      expect(fieldAt(y, body("path"))?.label).toBe("y");
      expect(fieldAt(y, body("box"))).toBeNull();
      expect(fieldAt([...y.slice(0, -1), 3], body("path"))).toBeNull();
      expect(fieldAt(["truck", "body", 20, "min", 12], body("box"))).toBeNull();
      expect(fieldAt(["truck", "body", "20", "min", 1], body("box"))).toBeNull();
      expect(fieldAt(["truck", "body", 20, "min", 1], body("box"))?.label).toBe("y");
    }
    expect(fieldAt(["knuckle", "hubFace"], demo)).toBe(fieldAt(["knuckle", "hubFace"], null));
  });
});

describe("what is typed into a field", () => {
  it("stays as typed when the file can hold it, and arithmetic is worked out", () => {
    expect(read(["knuckle", "hubFace"], "5 5/8")).toEqual({ ok: true, value: "5 5/8" });
    expect(read(["knuckle", "hubFace"], "5 5/8 + 1/8")).toEqual({ ok: true, value: "5 3/4" });
    expect(read(["knuckle", "hubFace"], "6")).toEqual({ ok: true, value: 6 });
    expect(read(["knuckle", "hubFace"], "6.50")).toEqual({ ok: true, value: "6.50" });
    expect(read(["knuckle", "pinAngle"], "8.5")).toEqual({ ok: true, value: 8.5 });
    expect(read(["knuckle", "pinAngle"], "8° 30'")).toEqual({ ok: true, value: "8° 30'" });
  });

  it("in other units than the file's gets its unit", () => {
    expect(read(["knuckle", "hubFace"], "142.9", "mm")).toEqual({ ok: true, value: "142.9 mm" });
    expect(read(["knuckle", "hubFace"], "5 5/8 in", "mm")).toEqual({ ok: true, value: "5 5/8 in" });
    expect(read(["knuckle", "hubFace"], "140 + 2.9", "mm")).toEqual({ ok: true, value: "142.9 mm" });
    expect(read(["travel", "bump"], "0", "mm")).toEqual({ ok: true, value: 0 });
  });

  it("is refused with its mend when the field cannot hold it", () => {
    expect(read(["knuckle", "hubFace"], "0 - 1")).toEqual({ ok: false, mend: "must be more than 0" });
    expect(read(["knuckle", "pinAngle"], 60)).toEqual({
      ok: false,
      mend: expect.stringContaining("less than 45"),
    });
    expect(read(["truck", "body", 0, "side"], "booth")).toMatchObject({ ok: false });
    expect(read(["truck", "body", 0, "name"], " ")).toEqual({ ok: false, mend: "must not be empty" });
    expect(read(["truck", "steering", "type"], "pitman")).toEqual({ ok: true, value: "pitman" });
  });
});
