import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Mutant } from "./operators.ts";

/** Lines of `file | what stands there | why no answer changes`, of mutants that were looked at by a person. */
const LINES = readFileSync(join(import.meta.dirname, "survivors.txt"), "utf8")
  .split("\n")
  .filter((line) => line !== "" && !line.startsWith("#"))
  .map((line) => line.split(" | ") as [string, string, string]);

/** Why a mutant that no test notices changes no answer; null where nobody has found that it does not. */
export function alikeReason({ file, from }: Mutant): string | null {
  const text = from.replace(/\s+/g, " ");
  return LINES.find(([inFile, expression]) => inFile === file && expression === text)?.[2] ?? null;
}
