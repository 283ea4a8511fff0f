import * as z from "zod";
import { choiceField } from "../fields/fields.ts";

/** The version of the catalog file this program reads. */
const CATALOG_VERSION = 1;

/** What every catalog says of itself before its items. */
export function catalogHead<const Kind extends string>(kind: Kind) {
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
