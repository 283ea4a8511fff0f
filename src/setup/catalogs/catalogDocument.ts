import * as z from "zod";
import { jointShape } from "../blocks/order/ballJoint.ts";
import { brakeShape } from "../blocks/order/brake.ts";
import { hubShape } from "../blocks/order/hub.ts";
import { block, list } from "../fields/blockFields.ts";
import { choiceField, textField } from "../fields/fields.ts";
import { tubeShape } from "./tube.ts";

/** The version of the catalog file this program reads. */
const CATALOG_VERSION = 1;

/** What every catalog says of itself before its items. */
function catalogHead<const Kind extends string>(kind: Kind) {
  return {
    $schema: z
      .string({ error: "must be text in double quotes" })
      .meta({ description: "the JSON Schema of this file" })
      .optional(),
    format: choiceField('what this file is: "wellsweep-catalog"', ["wellsweep-catalog"]),
    version: z
      .literal(CATALOG_VERSION, { error: `must be ${CATALOG_VERSION}, the only version this program reads` })
      .meta({ description: "version of the format" }),
    kind: choiceField("what the catalog holds", [kind]),
  };
}

const strength = (what: string) => textField(`${what} with its unit, such as 75 ksi or 517 MPa`);

/** A catalog of materials, as typed: the one source of its JSON Schema and checks. */
export const MATERIALS_DOCUMENT = block("a catalog of materials that a build may name", {
  ...catalogHead("materials"),
  about: textField("what holds for all of it", 1000).optional(),
  items: list(
    "the materials",
    block("one material", {
      name: textField("what a build calls it, unique in the catalog"),
      yield: strength("yield strength"),
      ultimate: strength("ultimate tensile strength"),
      source: textField("where the values are published"),
    }),
  ),
});

/** What a catalog holds. */
export type CatalogKind = "ballJoints" | "brakes" | "hubs" | "tubes" | "materials";

function catalogBlock<const Kind extends CatalogKind, Shape extends z.ZodRawShape>(
  kind: Kind,
  what: string,
  shape: Shape,
) {
  return block(`a catalog of ${what}s to choose from`, {
    ...catalogHead(kind),
    units: choiceField("unit of bare lengths in this file", ["in", "mm"]),
    items: list(
      `the ${what}s`,
      block(`one ${what}`, {
        name: textField("what it is called, unique in the catalog"),
        source: textField("where its numbers come from").optional(),
        ...shape,
      }),
    ),
  });
}

/** The sorts of catalog, as typed: the one source of their JSON Schemas and checks. */
export const CATALOG_DOCUMENTS = {
  ballJoints: catalogBlock("ballJoints", "ball joint", jointShape),
  brakes: catalogBlock("brakes", "brake", brakeShape),
  hubs: catalogBlock("hubs", "hub set", hubShape),
  tubes: catalogBlock("tubes", "tube", tubeShape),
  materials: MATERIALS_DOCUMENT,
} as const;

/** File names of the catalogs that come with the program, and of their schemas before `.schema.json`. */
export const CATALOG_FILES: Readonly<Record<CatalogKind, string>> = {
  ballJoints: "ball-joints",
  brakes: "brakes",
  hubs: "hubs",
  tubes: "tubes",
  materials: "materials",
};

/** The text of the published JSON Schema (2020-12) of a sort of catalog. */
export function catalogSchemaText(kind: CatalogKind): string {
  const { $schema, ...schema } = z.toJSONSchema(CATALOG_DOCUMENTS[kind], { target: "draft-2020-12" });
  const title = `Wellsweep catalog: ${CATALOG_FILES[kind].replace("-", " ")}`;
  return `${JSON.stringify({ $schema, title, ...schema }, null, 2)}\n`;
}
