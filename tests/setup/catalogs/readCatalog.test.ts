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
    // Numbers are invented, or say where they are published.
    for (const item of items) expect(item.source).toMatch(/^invented/);
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

const good = {
  format: "wellsweep-catalog",
  version: 1,
  kind: "ballJoints",
  units: "mm",
  items: [{ name: "one", taper: "1:8", studLength: 40 }],
};

describe("a catalog of one's own", () => {
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
