import * as z from "zod";
import { block, list } from "../fields/blockFields.ts";
import { textField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import { MAX_VARIANTS } from "../reading/limits.ts";

/** Named changes to the setup, as typed. */
export const variantsField = list(
  "named changes to this setup; default none",
  block("a named change", {
    name: textField("name of the variant, unique in the setup"),
    patch: z
      .record(z.string(), z.unknown(), {
        error: ({ input }) =>
          input === undefined ? "required: the keys to change" : "must be an object, { … }",
      })
      .meta({
        description: "JSON Merge Patch (RFC 7396) on the whole setup: keys to change; null takes a key out",
      }),
  }),
  { most: MAX_VARIANTS },
);

export type VariantsAsTyped = z.infer<typeof variantsField>;

/** Adds an issue for every name of a list that stood before. Entries whose shape is wrong are passed over. */
export function refuseRepeatedNames(entries: readonly unknown[], reading: BlockReading): void {
  const firstAt = new Map<string, number>();
  entries.forEach((entry, i) => {
    const name = (entry as { readonly name?: unknown } | null | undefined)?.name;
    if (typeof name !== "string") return;
    const first = firstAt.get(name);
    if (first === undefined) firstAt.set(name, i);
    else reading.issue([i, "name"], name, `is the name of entry ${first} already; each needs its own`);
  });
}
