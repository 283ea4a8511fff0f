import * as z from "zod";
import { MAX_ENTRIES, MAX_MISTAKES } from "../reading/limits.ts";
import { choiceMend, required } from "./fields.ts";

/** Between the known keys in the message of an unknown key: `shapeIssues` takes the message apart again. */
export const KNOWN_KEYS_SEPARATOR = "\n";

/**
 * An object of the setup file. Unknown keys are errors, whose message lists the known keys. `schema` adds
 * JSON Schema keywords for rules between keys, which `resolve…` checks at run time.
 */
export function block<Shape extends z.ZodRawShape>(description: string, shape: Shape, schema: object = {}) {
  const known = Object.keys(shape);
  return z
    .strictObject(shape, {
      error: (issue) => {
        if (issue.code === "unrecognized_keys") return known.join(KNOWN_KEYS_SEPARATOR);
        return issue.input === undefined ? required(description) : "must be an object, { … }";
      },
    })
    .meta({ description, ...schema });
}

/** How many entries a list may have, and has to have by the published schema. */
interface ListSize {
  readonly least?: number;
  /** Default `MAX_ENTRIES`. */
  readonly most?: number;
}

/**
 * A list of the setup file. One that is too long is refused before its entries are looked at, and of one with many
 * wrong entries the rest is not, so that the issues of a file stay few.
 */
export function list<Item extends z.ZodType>(
  description: string,
  item: Item,
  { least, most = MAX_ENTRIES }: ListSize = {},
) {
  const schema = z
    .array(item, {
      error: ({ input }) => (input === undefined ? required(description) : "must be a list, [ … ]"),
    })
    .meta({ description, ...(least === undefined ? {} : { minItems: least }), maxItems: most });
  const { parse } = schema._zod;
  const stopping: typeof parse = (payload, context) => {
    const { value: input, issues } = payload;
    if (!Array.isArray(input)) return parse(payload, context);
    const refuse = (message: string) => {
      issues.push({ code: "custom", path: [], input, inst: schema, message });
      return payload;
    };
    if (input.length > most) return refuse(`must have at most ${most} entries`);
    for (const [i, value] of input.entries()) {
      if (issues.length >= MAX_MISTAKES)
        return refuse(`has more than ${MAX_MISTAKES} mistakes; fix the first ones first`);
      const read = item._zod.run({ value, issues: [] }, context);
      if (read instanceof Promise) throw new TypeError("list: entries are read at once");
      if (read.issues.length > 0) issues.push(...z.core.util.prefixIssues(i, read.issues));
    }
    return payload;
  };
  schema._zod.parse = stopping;
  schema._zod.run = stopping;
  return schema;
}

/** Objects told apart by the word at one key. */
export function oneOfBlocks<
  Key extends string,
  const Options extends readonly [z.core.$ZodTypeDiscriminable, ...z.core.$ZodTypeDiscriminable[]],
>(description: string, key: Key, words: readonly string[], options: Options) {
  return z
    .discriminatedUnion(key, options, {
      error: ({ code, input }) => {
        if (input === undefined) return required(description);
        if (code !== "invalid_union") return "must be an object, { … }";
        const word = (input as Record<string, unknown>)[key];
        return word === undefined ? `required: ${choiceMend(word, words)}` : choiceMend(word, words);
      },
    })
    .meta({ description });
}
