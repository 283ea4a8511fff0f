import * as z from "zod";
import { block, list } from "../fields/blockFields.ts";
import { choiceField, textField } from "../fields/fields.ts";

const strength = (what: string) => textField(`${what} with its unit, such as 75 ksi or 517 MPa`);

/** A catalog of materials, as typed: the one source of its JSON Schema and checks. */
export const MATERIALS_DOCUMENT = block("a catalog of materials that a build may name", {
  $schema: z
    .string({ error: "must be text in double quotes" })
    .meta({ description: "the JSON Schema of this file" })
    .optional(),
  format: choiceField('what this file is: "wellsweep-catalog"', ["wellsweep-catalog"]),
  version: z
    .literal(1, { error: "must be 1, the only version this program reads" })
    .meta({ description: "version of the format" }),
  kind: choiceField("what the catalog holds", ["materials"]),
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
