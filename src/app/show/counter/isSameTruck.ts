import type { Truck } from "../../state/truck.ts";

/** What a setup is called and how it was written, which changes nothing of the truck. */
const NAMES: ReadonlySet<string> = new Set([
  "name",
  "variant",
  "variantNames",
  "fromExample",
  "within",
  "confirmed",
]);

/** Whether two trucks are one in every number, whatever their variants are called. */
export function isSameTruck({ setup: a }: Pick<Truck, "setup">, { setup: b }: Pick<Truck, "setup">): boolean {
  if (a === b) return true;
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...keys].every(
    (key) => NAMES.has(key) || isAlike(a[key as keyof typeof a], b[key as keyof typeof b]),
  );
}

function isAlike(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  const keys = Object.keys(a);
  if (keys.length !== Object.keys(b).length) return false;
  return keys.every((key) =>
    isAlike((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]),
  );
}
