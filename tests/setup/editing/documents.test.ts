import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { documentText } from "../../../src/setup/documentText.ts";
import { resolveShown } from "../../../src/setup/editing/resolveShown.ts";
import { removeAt, setAt } from "../../../src/setup/reading/setAt.ts";
import { resolveSetup } from "../../../src/setup/resolveSetup.ts";
import { keyText, parseKeyText } from "../../../src/setup/types/keyPath.ts";
import { KnownParts } from "../../../src/setup/types/knownParts.ts";

const demo: Record<string, unknown> = JSON.parse(
  readFileSync(new URL("../../../shared/half-ton-on-air.json", import.meta.url), "utf8"),
);

describe("putting a value into a document", () => {
  it("copies what is on the way and shares the rest", () => {
    const after = setAt(demo, ["knuckle", "hubFace"], "6") as typeof demo;
    expect(after.knuckle).toEqual({ ...(demo.knuckle as object), hubFace: "6" });
    expect(after.truck).toBe(demo.truck);
    expect((demo.knuckle as { hubFace: string }).hubFace).toBe("6 5/16");
  });

  it("makes blocks that are missing, and gives back the same document for the same value", () => {
    expect(setAt({}, ["alignment", "toe"], 0)).toEqual({ alignment: { toe: 0 } });
    expect(setAt(demo, ["knuckle", "pinAngle"], 8.5)).toBe(demo);
  });

  it("refuses list positions that are not there, and a key in plain text", () => {
    expect(() => setAt(demo, ["stances", 9, "name"], "x")).toThrow(RangeError);
    expect(() => setAt(demo, ["name", "x"], "x")).toThrow(RangeError);
    expect(() => setAt({}, ["__proto__", "x"], 1)).toThrow(RangeError);
  });

  it("takes keys and entries out, and leaves alone what is not there", () => {
    expect(removeAt({ a: [1, 2, 3] }, ["a", 1])).toEqual({ a: [1, 3] });
    expect(removeAt({ a: { b: 1, c: 2 } }, ["a", "b"])).toEqual({ a: { c: 2 } });
    expect(removeAt(demo, ["knuckle", "nothing"])).toBe(demo);
  });
});

describe("the text of a document", () => {
  it("reads back as the same document, points on a line of their own", () => {
    const text = documentText(demo);
    expect(JSON.parse(text)).toEqual(demo);
    expect(text).toContain('"frontPivot": ["4 7/8", "16 3/8", "17 3/4"]');
    expect(Math.max(...text.split("\n").map((line) => line.length))).toBeLessThan(140);
  });

  it("reads back for any JSON", () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        // −0 is written 0, as JSON.stringify does.
        expect(JSON.parse(documentText(value))).toEqual(JSON.parse(JSON.stringify(value)));
      }),
      { seed: 1955, numRuns: 500 },
    );
  });
});

describe("the text of a key", () => {
  it("reads back as its path", () => {
    const step = fc.oneof(
      fc.nat({ max: 99 }),
      fc.stringMatching(/^[a-z$][\w$]{0,8}$/),
      fc.string({ minLength: 1, maxLength: 12 }).filter((text) => !text.endsWith("…")),
    );
    fc.assert(
      fc.property(fc.array(step, { maxLength: 5 }), (path) => {
        expect(parseKeyText(keyText(path))).toEqual(path);
      }),
      { seed: 1955, numRuns: 1000 },
    );
  });

  it("is refused where it is none", () => {
    for (const text of [".a", "a..b", "a[", "a[x]", "a b"]) expect(parseKeyText(text)).toBeNull();
  });
});

describe("a document while it is edited", () => {
  const known = new KnownParts();
  const shown = (document: unknown, variant: string | null = null) =>
    resolveShown(document, "x.json", variant, new Map(), known);

  it("gives the setup that the strict reading gives, with and without a variant", () => {
    for (const variant of [null, "narrow hub face", "steeper pin"]) {
      expect(shown(demo, variant)).toEqual(resolveSetup(demo, "x.json", variant));
    }
  });

  it("reads a body part once: what did not change is the very same part", () => {
    const before = shown(demo);
    const after = shown(setAt(demo, ["truck", "body", 0, "radius"], "1/4"));
    if (!before.ok || !after.ok) throw new Error("the example must be sound");
    const [lip, fender, rail] = before.value.truck.body;
    expect(after.value.truck.body.map((part) => [lip, fender, rail].indexOf(part))).toEqual([-1, 1, 2]);
    expect(after.value.truck.body[0]).toMatchObject({ radius: 6.35 });
  });

  it("reads a known part anew when the file's units change", () => {
    const millimeters = shown({ ...demo, units: "mm" });
    const issues = millimeters.ok ? [] : millimeters.issues;
    // Rims of 15 mm are refused; what matters is that no part kept its inches.
    expect(issues.map(({ key }) => key)).toContain("wheel.rimDiameter");
    const plain = {
      ...demo,
      wheel: {
        ...(demo.wheel as object),
        rimDiameter: "15 in",
        barrelDiameter: "13 in",
        rimWidth: "8 in",
        backspacing: "4 in",
      },
      tire: { size: "P235/70R15" },
    };
    const [inches, mm] = [shown(plain), shown({ ...plain, units: "mm" })];
    if (!inches.ok || !mm.ok) throw new Error("both must be sound");
    const rail = (setup: typeof mm.value) => setup.truck.body.find(({ kind }) => kind === "box");
    expect([rail(inches.value), rail(mm.value)]).toMatchObject([
      { max: [812.8, 387.35, 558.8] },
      { max: [32, 15.25, 22] },
    ]);
  });

  it("is shown though another variant is unsound", () => {
    const broken = setAt(demo, ["variants", 0, "patch", "knuckle", "hubFace"], "wide");
    expect(shown(broken).ok).toBe(true);
    expect(shown(broken, "steeper pin").ok).toBe(true);
    expect(shown(broken, "narrow hub face").ok).toBe(false);
    expect(resolveSetup(broken, "x.json").ok).toBe(false);
  });

  it("has an issue for a changed part that is unsound, at its place", () => {
    const broken = setAt(demo, ["truck", "body", 2, "name"], "");
    const result = shown(broken);
    expect(result.ok || result.issues.map(({ key }) => key)).toEqual(["truck.body[2].name"]);
  });
});
