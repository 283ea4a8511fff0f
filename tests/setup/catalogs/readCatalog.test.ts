import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import * as z from "zod";
import {
  CATALOG_FILES,
  type CatalogKind,
  catalogSchemaText,
} from "../../../src/setup/catalogs/catalogDocument.ts";
import { readCatalog } from "../../../src/setup/catalogs/readCatalog.ts";

const FOLDER = new URL("../../../shared/catalogs/", import.meta.url);

const KINDS = Object.entries(CATALOG_FILES) as [CatalogKind, string][];

describe.each(KINDS)("the catalog of %s that comes with the program", (kind, name) => {
  const text = readFileSync(new URL(`${name}.json`, FOLDER), "utf8");

  it("reads without an issue, each item with its source", () => {
    const read = readCatalog(text, name);
    if (!read.ok) throw new Error(JSON.stringify(read.issues));
    const items = read.value[kind]!;
    expect(items.length).toBeGreaterThanOrEqual(3);
    // Parts are invented, or say what is published; strengths of materials are as published.
    for (const item of items)
      expect(item.source).toMatch(kind === "materials" ? /Shigley|ASTM|AMS/ : /^invented/);
  });

  it("has the published schema the checks are made from, and keeps it (npm run schema writes it anew)", () => {
    const published = readFileSync(new URL(`${name}.schema.json`, FOLDER), "utf8");
    expect(published).toBe(catalogSchemaText(kind));
    const schema = z.fromJSONSchema(JSON.parse(published));
    const { $schema: _, ...catalog } = JSON.parse(text);
    expect(schema.safeParse(catalog).error).toBeUndefined();
    expect(schema.safeParse({ ...catalog, itmes: [] }).success).toBe(false);
  });
});

it("the tubes that come with the program are of materials that come with it", () => {
  const [tubes, materials] = ["tubes", "materials"].map((name) => {
    const read = readCatalog(readFileSync(new URL(`${name}.json`, FOLDER), "utf8"), name);
    if (!read.ok) throw new Error(JSON.stringify(read.issues));
    return read.value;
  });
  const known = materials!.materials!.map(({ name }) => name);
  for (const { part } of tubes!.tubes!) expect(known).toContain(part.material);
});

/** Bores and cups of tapered roller bearings, inches: ANSI/ABMA 19.2, from memory. */
const BEARINGS: Readonly<Record<string, { readonly bore: number; readonly cup: number }>> = {
  LM67048: { bore: 1.25, cup: 2.328 },
  L44649: { bore: 1.0625, cup: 1.98 },
  LM48548: { bore: 1.375, cup: 2.5625 },
  LM11949: { bore: 0.75, cup: 1.781 },
};

describe("the bearings of the hubs", () => {
  const read = readCatalog(readFileSync(new URL("hubs.json", FOLDER), "utf8"), "hubs");
  const hubs = read.ok ? read.value.hubs! : [];
  const bearings = hubs.flatMap(({ part }) => [part.innerBearing, part.outerBearing]);

  it("that have a published number have its bore", () => {
    const numbered = bearings.filter(({ number }) => number !== null);
    expect(numbered.length).toBeGreaterThan(1);
    for (const { number, bore } of numbered)
      expect(bore, number!).toBeCloseTo(25.4 * BEARINGS[number!]!.bore, 6);
  });

  it.each(Object.entries(BEARINGS))(
    "a hub with %s keeps its bore to the micrometer, below its cup",
    (number, { bore, cup }) => {
      const items = [{ name: "one", innerBearing: { number, bore: `${bore} in`, width: 15 } }];
      const own = readCatalog(JSON.stringify({ ...good, kind: "hubs", items }), "own.json");
      if (!own.ok) throw new Error(JSON.stringify(own.issues));
      const inner = own.value.hubs![0]!.part.innerBearing;
      expect(inner).toMatchObject({ number });
      expect(inner.bore).toBeCloseTo(25.4 * bore, 9);
      expect(inner.bore!).toBeLessThan(25.4 * cup);
    },
  );
});

const good = {
  format: "wellsweep-catalog",
  version: 1,
  kind: "ballJoints",
  units: "mm",
  items: [{ name: "one", taper: "1:8", studLength: 40 }],
};

const steel = { name: "one", yield: "60 ksi", ultimate: "80 ksi", source: "its certificate" };
const { units: _units, ...unitless } = good;
const steels = { ...unitless, kind: "materials", items: [steel] };
const tubes = { ...good, kind: "tubes", items: [{ name: "a", diameter: 40, wall: 5 }] };

describe("a catalog of one's own", () => {
  it("of tubes is read in its own units, of materials in MPa", () => {
    expect(readCatalog(JSON.stringify({ ...tubes, units: "in" }), "own.json")).toMatchObject({
      ok: true,
      value: { tubes: [{ name: "a", source: null, part: { diameter: 1016, wall: 127, material: null } }] },
    });
    // 1 ksi = 6.894757 MPa
    expect(readCatalog(JSON.stringify(steels), "own.json")).toMatchObject({
      ok: true,
      value: { materials: [{ name: "one", yield: expect.closeTo(413.685, 3) }] },
    });
  });

  it.each([
    [{ ...tubes, items: [{ name: "a", diameter: 40, wall: 20 }] }, "items[0].wall", "20", /less than half/],
    [{ ...tubes, items: [{ name: "a", diameter: -40, wall: 5 }] }, "items[0].diameter", "-40", /more than 0/],
    [{ ...tubes, items: [{ name: "a", diameter: 40 }] }, "items[0].wall", "nothing", /required/],
    [{ ...tubes, items: [{ ...tubes.items[0], wal: 5 }] }, "items[0].wal", "5", /did you mean "wall"/],
    [{ ...steels, items: [{ ...steel, yield: "60" }] }, "items[0].yield", '"60"', /stress such as "75 ksi"/],
    [
      { ...steels, items: [{ ...steel, yield: "999999999 ksi" }] },
      "items[0].yield",
      '"999999999 ksi"',
      /such as "75 ksi"/,
    ],
    [{ ...steels, items: [steel, steel] }, "items[1].name", '"one"', /already/],
    [{ ...steels, units: "in" }, "units", '"in"', /unknown key/],
  ])("%j is refused with file, key, value and mend", (content, key, value, mend) => {
    const read = readCatalog(JSON.stringify(content), "own.json");
    expect(read.ok ? [] : read.issues).toEqual([
      { file: "own.json", key, value, mend: expect.stringMatching(mend) },
    ]);
  });

  it("is read in its own units", () => {
    const read = readCatalog(
      JSON.stringify({ ...good, units: "in", items: [{ name: "a", studLength: 2 }] }),
      "own.json",
    );
    expect(read).toMatchObject({
      ok: true,
      value: { ballJoints: [{ name: "a", part: { studLength: 50.8 } }] },
    });
  });

  it.each([
    ["that is no JSON", "{", "", /line 1/],
    ["that is a setup", JSON.stringify({ format: "wellsweep-setup" }), "format", /is this a catalog/],
    ["that is a list", "[]", "format", /is this a catalog/],
    ["of unknown kind", { ...good, kind: "balljoints" }, "kind", /did you mean "ballJoints"/],
    ["without units", { ...good, units: undefined }, "units", /required/],
    ["of another version", { ...good, version: 2 }, "version", /must be 1/],
    [
      "with an unknown key",
      { ...good, items: [{ name: "a", tapr: "1:8" }] },
      "items[0].tapr",
      /did you mean "taper"/,
    ],
    [
      "with a negative stud",
      { ...good, items: [{ name: "a", studLength: -1 }] },
      "items[0].studLength",
      /more than 0/,
    ],
    ["with an item without name", { ...good, items: [{ taper: "1:8" }] }, "items[0].name", /required/],
    ["with a name twice", { ...good, items: [{ name: "a" }, { name: "a" }] }, "items[1].name", /already/],
    [
      "with a stud a mile long",
      { ...good, items: [{ name: "a", studLength: 1e6 }] },
      "items[0].studLength",
      /100 m/,
    ],
  ])("%s is refused with file, key and mend", (_, content, key, mend) => {
    const read = readCatalog(typeof content === "string" ? content : JSON.stringify(content), "own.json");
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(read.issues.map((issue) => issue.key)).toEqual([key]);
    expect(read.issues[0]).toMatchObject({ file: "own.json", mend: expect.stringMatching(mend) });
  });
});
