import type { KeyPath } from "../../src/setup/types/keyPath.ts";
import type { SetupJson } from "./exampleDocuments.ts";
import { type Json, pathsIn, valueIn, withValue } from "./jsonPaths.ts";

/** One number of a setup set to something wild. */
export interface WildCase {
  readonly path: KeyPath;
  readonly value: Json;
  /** The setup's text. */
  readonly text: string;
}

/** Stands for a number too large for JSON's own writer. */
const HUGE = "\u0001";

/** What no number of a setup is meant to be; a text stands for itself. */
const WILD: readonly Json[] = [
  ...[0, -0, 1e-300, 1e-9, -1e-9, 1e300, -1e300, HUGE, 1e6, -99_999],
  ...["0", "1e300", "999999999999999999999999", "-", "1/0", "", "1 ± 1/16", "1 ±"],
];

/** Four more that lie near what stands there: nearly a truck. */
function near(was: number | string): readonly Json[] {
  if (typeof was === "number") return [10 * was, -was, 0.1 * was, 1.2 * was];
  return [`${was} ft`, was.startsWith("-") ? was.slice(1) : `-${was}`, "1/64", `${was} mm`];
}

/** Every number of a setup, written as a number or as text, set to 22 wild values each. */
export function wildCases(document: SetupJson): WildCase[] {
  const { variants: _, ...plain } = document;
  return pathsIn(plain).flatMap((path) => {
    const was = valueIn(plain, path);
    const isNumber = typeof was === "number" || (typeof was === "string" && /^-?[\d/ .]+$/.test(was));
    if (!isNumber) return [];
    return [...WILD, ...near(was)].map((value) => ({ path, value, text: textOf(plain, path, value) }));
  });
}

function textOf(document: SetupJson, path: KeyPath, value: Json): string {
  const text = JSON.stringify(withValue(document, path, value)).replace(JSON.stringify(HUGE), "1e999");
  // JSON's writer drops the sign of −0.
  return Object.is(value, -0)
    ? JSON.stringify(withValue(document, path, HUGE)).replace(JSON.stringify(HUGE), "-0")
    : text;
}
