import { resolveSetup } from "../../src/setup/resolveSetup.ts";
import type { Setup } from "../../src/setup/types/types.ts";
import { exampleDocument } from "./fixtures.ts";

const resolved = (patch: object) => resolveSetup({ ...exampleDocument(), ...patch }, "truck.json");

/** The example setup with some blocks given anew. @throws Error with every issue */
export function setupOf(patch: object): Setup {
  const result = resolved(patch);
  if (!result.ok) throw new Error(result.issues.map(({ key, mend }) => `${key}: ${mend}`).join("\n"));
  return result.value;
}

/** What is wrong with it, `key: mend`; none where it reads. */
export function issuesOf(patch: object): string[] {
  const result = resolved(patch);
  return result.ok ? [] : result.issues.map(({ key, mend }) => `${key}: ${mend}`);
}
