import * as z from "zod";
import { setupDocument } from "./document.ts";
import { numberNature } from "./fields/fieldKinds.ts";

const MAX_LINE = 100;

/**
 * The text of a setup file: JSON with two spaces of indentation, where a list or object that fits a line stays on it,
 * so that a point reads as a point. Strings are written as typed; ends with a line break.
 */
export function documentText(document: unknown): string {
  return `${textOf(document, 0)}\n`;
}

function textOf(value: unknown, depth: number): string {
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  const entries = Array.isArray(value)
    ? value.map((item) => [null, item] as const)
    : Object.entries(value).filter(([, item]) => item !== undefined);
  const [open, close] = Array.isArray(value) ? "[]" : "{}";
  if (entries.length === 0) return `${open}${close}`;
  if (isFlat(value)) {
    const line = lineOf(value);
    if (2 * depth + line.length <= MAX_LINE) return line;
  }
  const indent = "  ".repeat(depth + 1);
  const lines = entries.map(
    ([key, item]) => `${indent}${key === null ? "" : `${JSON.stringify(key)}: `}${textOf(item, depth + 1)}`,
  );
  return `${open}\n${lines.join(",\n")}\n${"  ".repeat(depth)}${close}`;
}

/** Whether nothing below is deeper than a list of plain values: only such things are put on one line. */
function isFlat(value: object): boolean {
  const items = Object.values(value);
  return (
    items.length <= 16 && items.every((item) => isPlain(item) || (Array.isArray(item) && item.every(isPlain)))
  );
}

function isPlain(value: unknown): boolean {
  return typeof value !== "object" || value === null;
}

function lineOf(value: unknown): string {
  if (isPlain(value)) return JSON.stringify(value);
  if (Array.isArray(value)) return `[${value.map(lineOf).join(", ")}]`;
  const entries = Object.entries(value as object).filter(([, item]) => item !== undefined);
  return `{ ${entries.map(([key, item]) => `${JSON.stringify(key)}: ${lineOf(item)}`).join(", ")} }`;
}

/** The JSON Schema (2020-12) of a setup file, made from the same source as the checks. */
export function setupJsonSchema(): object {
  const { $schema, ...schema } = z.toJSONSchema(setupDocument, {
    target: "draft-2020-12",
    override: ({ zodSchema, jsonSchema, path }) => {
      // The number that a length may be is no field of its own.
      if (zodSchema instanceof z.ZodType && path.at(-2) !== "anyOf") alsoWithin(zodSchema, jsonSchema);
    },
  });
  return { $schema, title: "Wellsweep setup", ...schema, $defs: { ...schema.$defs, within: WITHIN_SCHEMA } };
}

/** A number and how well it is known, as two keys. */
const WITHIN_SCHEMA = {
  type: "object",
  properties: {
    value: { description: "the number, as it would stand alone", type: ["number", "string"] },
    within: {
      description: "how well it is known: one standard deviation, 0 or more",
      type: ["number", "string"],
    },
  },
  required: ["value", "within"],
  additionalProperties: false,
  description: "a number and how well it is known; as text: 5 5/8 ± 1/16",
} as const;

const TEXT_WITHIN = { type: "string", pattern: "[±+]" } as const;

/** Lets a number also be told with its uncertainty, in text or as two keys. */
function alsoWithin(schema: z.ZodType, json: z.core.JSONSchema.BaseSchema): void {
  const nature = numberNature(schema);
  if (nature === null) return;
  const { description, ...alone } = json;
  const forms = [...(alone.anyOf ?? [alone]), ...(nature.kind === "number" ? [TEXT_WITHIN] : [])];
  for (const key of Object.keys(json)) delete json[key];
  if (description !== undefined) json.description = description;
  json.anyOf = [...forms, { $ref: "#/$defs/within" }];
}

/** The text of the published schema file. */
export function setupJsonSchemaText(): string {
  return `${JSON.stringify(setupJsonSchema(), null, 2)}\n`;
}
