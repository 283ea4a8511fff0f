import { readFileSync } from "node:fs";
import { resolveSetup } from "../../../src/setup/resolveSetup.ts";
import { carriersOf } from "../../../src/studies/loads/carriers.ts";
import { modelOf } from "../../../src/studies/model/model.ts";

/** An example of the repository as a document. */
export function example(name: string): Record<string, unknown> {
  const url = new URL(`../../../shared/${name}`, import.meta.url);
  return JSON.parse(readFileSync(url, "utf8")) as Record<string, unknown>;
}

/** A truck put together of a document, with what carries it. */
export function truckOf(document: object) {
  const read = resolveSetup(document, "truck.json");
  if (!read.ok) throw new Error(read.issues.map(({ key, mend }) => `${key}: ${mend}`).join("\n"));
  const made = modelOf(read.value, "truck.json");
  if (!made.ok) throw new Error(made.issues.map(({ mend }) => mend).join("\n"));
  const carriers = carriersOf(made.value.setup, "truck.json");
  if (!carriers.ok) throw new Error(carriers.issue.mend);
  return { model: made.value, carriers: carriers.value };
}
