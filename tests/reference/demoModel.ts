import { readFileSync } from "node:fs";
import { readSetup } from "../../src/setup/readSetup.ts";
import type { Setup } from "../../src/setup/types/types.ts";
import { type Model, modelOf } from "../../src/studies/model/model.ts";

const SHARED = new URL("../../shared/", import.meta.url);

/** The half-ton with its body and moving parts, as the reader gives it. */
export function demoSetup(variant: string | null = null): Setup {
  return exampleSetup("half-ton-on-air.json", variant);
}

/** One of the example trucks, as the reader gives it. */
export function exampleSetup(file: string, variant: string | null = null): Setup {
  const read = readSetup(readFileSync(new URL(file, SHARED), "utf8"), file, variant);
  if (!read.ok) throw new TypeError(read.issues.map((i) => `${i.key}: ${i.mend}`).join("; "));
  return read.value.setup;
}

/** A setup assembled, or the test fails with the reason. */
export function assembledModel(setup: Setup): Model {
  const made = modelOf(setup, "test");
  if (!made.ok) throw new TypeError(made.issues.map((i) => `${i.key}: ${i.mend}`).join("; "));
  return made.value;
}

/** The demo truck with other body parts. */
export function demoWith(body: Setup["truck"]["body"], change: Partial<Setup> = {}): Model {
  const setup = demoSetup();
  return assembledModel({ ...setup, ...change, truck: { ...(change.truck ?? setup.truck), body } });
}
