import * as z from "zod";
import { jointShape } from "../blocks/order/ballJoint.ts";
import { brakeShape } from "../blocks/order/brake.ts";
import { hubShape } from "../blocks/order/hub.ts";
import { block, list } from "../fields/blockFields.ts";
import { choiceField, textField } from "../fields/fields.ts";
import { catalogHead } from "./catalogHead.ts";
import { MATERIALS_DOCUMENT } from "./materialsDocument.ts";
import { tubeShape } from "./tube.ts";

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
