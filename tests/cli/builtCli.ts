import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { transformWithOxc } from "vite";
import { afterAll } from "vitest";

/** As `src/tsconfig.lib.json` has it. */
const AS_BUILT = {
  target: "es2022",
  sourcemap: false,
  typescript: { onlyRemoveTypeImports: true, rewriteImportExtensions: "rewrite" },
} as const;

/**
 * The command line as it is built, for tests that run it in processes of its own: it starts in a third of the time the
 * sources take. Of each file alone the types are taken out, which takes a fiftieth of the time of the compiler, into a
 * folder that is removed after the tests. With WELLSWEEP_BUILT=dist/lib it is what `npm run build` wrote.
 * @returns the folder of the build: `cli/main.js` is in it
 */
export async function builtCli(): Promise<string> {
  const ready = process.env.WELLSWEEP_BUILT;
  if (ready !== undefined) return resolve(ready);
  const folder = mkdtempSync(join(tmpdir(), "wellsweep-built-"));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  const built = join(folder, "dist", "lib");
  // All of them: which ones the entries need only a whole build finds out.
  const sources = readdirSync("src", { recursive: true, encoding: "utf8" })
    .map((name) => name.replaceAll("\\", "/"))
    .filter((name) => name.endsWith(".ts") && !/^(app|serve)\//.test(name));
  for (const name of sources) {
    const file = resolve("src", name);
    const { code } = await transformWithOxc(readFileSync(file, "utf8"), file, AS_BUILT);
    const target = join(built, name).replace(/\.ts$/, ".js");
    mkdirSync(dirname(target), { recursive: true });
    writeFileSync(target, code);
  }
  cpSync("package.json", join(folder, "package.json"));
  symlinkSync(resolve("node_modules"), join(folder, "node_modules"));
  return built;
}
