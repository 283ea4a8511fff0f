import type { BlockReading } from "../reading/blockReading.ts";

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
