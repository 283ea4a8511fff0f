import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Mutant } from "./operators.ts";

/**
 * Lines of `file | from → to | the line it stands in | why no answer changes`, of mutants that were looked at by a person.
 * `/…/` is a pattern of all of a field.
 */
const LINES = readFileSync(join(import.meta.dirname, "survivors.txt"), "utf8")
  .split("\n")
  .filter((line) => line !== "" && !line.startsWith("#"))
  .map((line) => line.split(" | ") as [string, string, string, string]);

/** Why a mutant that no test notices changes no answer; null where nobody has found that it does not. */
export function alikeReason({ file, from, to, text }: Mutant): string | null {
  const change = `${from} → ${to}`.replace(/\s+/g, " ");
  const found = LINES.find(([inFile, told, line]) => is(inFile, file) && is(told, change) && is(line, text));
  return found?.[3] ?? null;
}

function is(field: string, text: string): boolean {
  const pattern = /^\/(.*)\/$/.exec(field)?.[1];
  return pattern === undefined ? field === text : new RegExp(`^(?:${pattern})$`).test(text);
}
