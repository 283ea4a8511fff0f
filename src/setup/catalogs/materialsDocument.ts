import * as z from "zod";
import { block, list } from "../fields/blockFields.ts";
import { textField } from "../fields/fields.ts";
import { catalogHead } from "./catalogDocument.ts";

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

/** File name of the catalog that comes with the program, and of its schema before `.schema.json`. */
export const MATERIALS_FILE = "materials";

/** The text of its published JSON Schema (2020-12). */
export function materialsSchemaText(): string {
  const { $schema, ...schema } = z.toJSONSchema(MATERIALS_DOCUMENT, { target: "draft-2020-12" });
  return `${JSON.stringify({ $schema, title: "Wellsweep catalog: materials", ...schema }, null, 2)}\n`;
}
