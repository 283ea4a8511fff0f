import { setupFields } from "../../../setup/fieldCatalogue.ts";
import { type KeyPath, valueAt } from "../../../setup/types/keyPath.ts";

/**
 * The keys a block of the setup may have, in the schema's order. Where there are several sorts of the block, those of the
 * sort that the document says.
 */
export function keysOf(path: KeyPath, document: unknown): readonly string[] {
  const pattern = path.map((key) => (typeof key === "number" ? "*" : key));
  const keys = new Set<string>();
  for (const field of setupFields()) {
    const isInside = pattern.every((key, i) => field.pattern[i] === key);
    const key = field.pattern[pattern.length];
    if (!isInside || key === undefined || key === "*") continue;
    const isOwn = field.pattern.length === pattern.length + 1;
    const { when } = field;
    if (isOwn && when && valueAt(document, [...path, when.key]) !== when.is) continue;
    keys.add(key);
  }
  return [...keys];
}
