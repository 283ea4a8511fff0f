import * as z from "zod";
import { block } from "../fields/blockFields.ts";
import { textField } from "../fields/fields.ts";

/** Marks the numbers of a setup that began as an example: all of them, but those that somebody has said are the truck's. */
export const fromExampleField = block(
  "this setup began as an example: its numbers are an example's, but for those under mine",
  {
    of: textField("name of the example"),
    mine: z
      .record(z.string(), z.boolean(), {
        error: 'must be a list of places with true or false, such as { "knuckle.hubFace": true }',
      })
      .meta({
        description: "places whose numbers were measured on this truck; a place tells for all inside it",
      })
      .optional(),
  },
);
