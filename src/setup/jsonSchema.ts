import * as z from "zod";
import { setupDocument } from "./document.ts";

/** The JSON Schema (2020-12) of a setup file, made from the same source as the checks. */
export function setupJsonSchema(): object {
  const { $schema, ...schema } = z.toJSONSchema(setupDocument, { target: "draft-2020-12" });
  return { $schema, title: "Wellsweep setup", ...schema };
}

/** The text of the published schema file. */
export function setupJsonSchemaText(): string {
  return `${JSON.stringify(setupJsonSchema(), null, 2)}\n`;
}
