import type { Truck } from "../state/truck.ts";

/** What a truck is called beside its other variants. */
export function variantLabel({ setup }: Truck): string {
  return setup.variant ?? "as it stands";
}
