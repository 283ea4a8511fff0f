import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Numbered, switched } from "./switched.ts";

/** What a copy needs for its sources and tests to run. */
const COPIED = ["src", "tests", "shared", "public", "package.json", "tsconfig.json"];

/**
 * A copy of the repository in a folder for temporary files, whose sources hold mutants behind switches and whose Vitest is
 * `miniVitest.ts`. @returns its path
 */
export function mutatedCopy(root: string, mutants: readonly Numbered[]): string {
  const copy = mkdtempSync(join(tmpdir(), "wellsweep-mutants-"));
  for (const name of COPIED) cpSync(join(root, name), join(copy, name), { recursive: true });
  const modules = join(copy, "node_modules");
  mkdirSync(join(modules, "vitest"), { recursive: true });
  for (const name of readdirSync(join(root, "node_modules")))
    if (name !== "vitest") symlinkSync(join(root, "node_modules", name), join(modules, name));
  writeFileSync(join(modules, "vitest", "package.json"), '{ "type": "module", "exports": "./index.js" }');
  writeFileSync(join(modules, "vitest", "index.js"), 'export * from "../../tests/mutation/miniVitest.ts";\n');
  for (const file of new Set(mutants.map(({ mutant }) => mutant.file))) {
    const own = mutants.filter(({ mutant }) => mutant.file === file);
    writeFileSync(join(copy, file), switched(readFileSync(join(root, file), "utf8"), own));
  }
  return copy;
}
