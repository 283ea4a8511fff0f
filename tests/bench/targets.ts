import { printColumns } from "./printColumns.ts";

/** What was set as an aim, and what was found. */
export interface Target {
  readonly what: string;
  readonly found: number;
  readonly limit: { readonly atMost: number } | { readonly atLeast: number };
  /** After the numbers: "×", "ms". */
  readonly unit: string;
}

/** Prints each target with "met" or "not met". */
export function printTargets(targets: readonly Target[]): void {
  printColumns([
    ["target", "found", "wanted", ""],
    ...targets.map(({ what, found, limit, unit }) => {
      const isMet = "atMost" in limit ? found <= limit.atMost : found >= limit.atLeast;
      const wanted = "atMost" in limit ? `≤ ${digits(limit.atMost)}` : `≥ ${digits(limit.atLeast)}`;
      return [what, `${digits(found)} ${unit}`, `${wanted} ${unit}`, isMet ? "met" : "not met"];
    }),
  ]);
}

function digits(value: number): string {
  return value >= 1000 ? String(Math.round(value)) : String(Number(value.toPrecision(3)));
}
