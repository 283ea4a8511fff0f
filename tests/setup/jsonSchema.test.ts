import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import * as z from "zod";
import { setupJsonSchema, setupJsonSchemaText } from "../../src/setup/documentText.ts";
import { barestDocument, exampleDocument, pitmanSteering } from "./fixtures.ts";

const published = new URL("../../public/wellsweep-setup.schema.json", import.meta.url);

type Node = { readonly [key: string]: unknown };

/** Every schema in a schema, with its path. */
function nodes(node: Node, path = "#"): [string, Node][] {
  const inner = ["properties", "items", "prefixItems", "anyOf", "oneOf"].flatMap((keyword) => {
    const value = node[keyword];
    return typeof value === "object" && value !== null
      ? Object.entries(value)
          .filter(([, entry]) => typeof entry === "object")
          .flatMap(([key, entry]) => nodes(entry as Node, `${path}/${keyword}/${key}`))
      : [];
  });
  return [[path, node], ...inner];
}

describe("the published JSON Schema", () => {
  it("is the one the checks are made from (npm run schema writes it anew)", () => {
    expect(readFileSync(published, "utf8")).toBe(setupJsonSchemaText());
  });

  it("is of draft 2020-12, allows no unknown keys and describes every key", () => {
    const schema = setupJsonSchema() as Node;
    expect(schema.$schema).toBe("https://json-schema.org/draft/2020-12/schema");
    const all = nodes(schema);
    const objects = all.filter(([, node]) => node.properties !== undefined);
    expect(objects.length).toBeGreaterThan(10);
    for (const [path, node] of objects) expect([path, node.additionalProperties]).toEqual([path, false]);
    const keys = all.filter(([path]) => /\/properties\/[^/]+$/.test(path));
    expect(keys.length).toBeGreaterThan(50);
    for (const [path, node] of keys) expect([path, typeof node.description]).toEqual([path, "string"]);
  });

  it("takes the example setups and refuses a misspelled key, read back by zod's own schema reader", () => {
    // That reader knows no rules between keys; those are tested on `resolveSetup` itself.
    const readable = JSON.parse(setupJsonSchemaText(), (key, value) => {
      const isKeyRule = key === "oneOf" && Object.keys(value[0]).join() === "required";
      return isKeyRule || key === "dependentRequired" ? undefined : value;
    });
    const read = z.fromJSONSchema(readable as Parameters<typeof z.fromJSONSchema>[0]);
    const example = exampleDocument();
    const withPitman = { ...example, truck: { ...example.truck, steering: pitmanSteering() } };
    for (const document of [example, barestDocument(), withPitman])
      expect(read.safeParse(document).error).toBeUndefined();
    expect(read.safeParse({ ...example, travle: {} }).success).toBe(false);
    expect(read.safeParse({ ...example, knuckle: { ...example.knuckle, hubFase: 1 } }).success).toBe(false);
  });
});
