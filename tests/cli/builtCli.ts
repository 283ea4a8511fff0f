import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import ts from "typescript";
import { afterAll } from "vitest";

/**
 * The command line as it is built, for tests that run it in processes of its own: it starts in a third of the time the
 * sources take. Each file is translated alone, with the build's own settings, into a folder that is removed after the
 * tests. With WELLSWEEP_BUILT=dist/lib it is what `npm run build` wrote.
 * @returns the folder of the build: `cli/main.js` is in it
 */
export function builtCli(): string {
  const ready = process.env.WELLSWEEP_BUILT;
  if (ready !== undefined) return resolve(ready);
  const folder = mkdtempSync(join(tmpdir(), "wellsweep-built-"));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  const built = join(folder, "dist", "lib");
  const { options, fileNames } = settings();
  for (const file of fileNames.filter((name) => !/\/src\/(app|serve)\//.test(name))) {
    const { outputText } = ts.transpileModule(readFileSync(file, "utf8"), {
      compilerOptions: options,
      fileName: file,
    });
    const target = join(built, file.slice(resolve("src").length + 1)).replace(/\.ts$/, ".js");
    mkdirSync(dirname(target), { recursive: true });
    writeFileSync(target, outputText);
  }
  cpSync("package.json", join(folder, "package.json"));
  symlinkSync(resolve("node_modules"), join(folder, "node_modules"));
  return built;
}

function settings(): ts.ParsedCommandLine {
  const { config } = ts.readConfigFile("src/tsconfig.lib.json", ts.sys.readFile);
  const { files: _, ...rest } = config;
  // All of them: which ones the entries need only a whole build finds out.
  return ts.parseJsonConfigFileContent({ ...rest, include: ["**/*.ts"] }, ts.sys, resolve("src"));
}
