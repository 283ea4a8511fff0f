import * as z from "zod";
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

/** A list of the setup file. */
export function list<Item extends z.ZodType>(description: string, item: Item) {
  return z
    .array(item, {
      error: ({ input }) => (input === undefined ? required(description) : "must be a list, [ … ]"),
    })
    .meta({ description });
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
