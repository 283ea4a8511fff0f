import { execFileSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import ts from "typescript";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { builtCli } from "../cli/builtCli.ts";
import { runs } from "../runs.ts";

/**
 * README's library example as somebody else would have it: a folder of its own, the built package in its
 * `node_modules`, found by its name. With WELLSWEEP_BUILT=dist/lib the package is what `npm run build` wrote.
 */
const root = resolve(".");
/** With its types, which only a whole build writes; on every change the example is but run. */
const isWhole = runs(0, 1) === 1;
const folder = mkdtempSync(join(tmpdir(), "wellsweep-library-"));
const example = /```ts\n([\s\S]*?)```/.exec(readFileSync("README.md", "utf8"))?.[1] ?? "";

beforeAll(async () => {
  const packaged = join(folder, "node_modules", "wellsweep");
  const built = join(packaged, "dist", "lib");
  mkdirSync(built, { recursive: true });
  cpSync("package.json", join(packaged, "package.json"));
  if (isWhole && process.env.WELLSWEEP_BUILT === undefined) {
    const tsc = join(root, "node_modules", "typescript", "bin", "tsc");
    execFileSync(process.execPath, [tsc, "-p", "src/tsconfig.lib.json", "--outDir", built]);
  } else cpSync(await builtCli(), built, { recursive: true });
  // What the package depends on, as an installer would lay it out.
  symlinkSync(join(root, "node_modules"), join(packaged, "node_modules"));
  symlinkSync(join(root, "node_modules", "@types"), join(folder, "node_modules", "@types"));
  writeFileSync(join(folder, "package.json"), '{ "type": "module" }');
  cpSync("shared", join(folder, "shared"), { recursive: true });
  writeFileSync(join(folder, "example.ts"), example);
}, 240_000);

afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe("README's library example", () => {
  if (isWhole)
    it("fits the types of the built package, strictly", () => {
      expect(example).toContain('from "wellsweep"');
      const program = ts.createProgram([join(folder, "example.ts")], {
        module: ts.ModuleKind.NodeNext,
        target: ts.ScriptTarget.ES2023,
        strict: true,
        noEmit: true,
        types: ["node"],
        typeRoots: [join(folder, "node_modules", "@types")],
      });
      const faults = ts.getPreEmitDiagnostics(program).map(({ messageText, file }) => {
        return `${file?.fileName}: ${ts.flattenDiagnosticMessageText(messageText, "\n")}`;
      });
      expect(faults).toEqual([]);
    }, 120_000);

  it("runs in a folder of its own and says what the command line says", () => {
    const { outputText } = ts.transpileModule(example, {
      compilerOptions: { module: ts.ModuleKind.ESNext, target: ts.ScriptTarget.ES2023 },
    });
    writeFileSync(join(folder, "example.mjs"), outputText);
    const told = execFileSync(process.execPath, ["example.mjs"], { cwd: folder, encoding: "utf8" });
    expect(told).toMatch(/^rubs: The tire rubs the fender lip .+ by 3\/16 in/);
    expect(told.trim().split("\n")).toHaveLength(3);
  }, 120_000);
});
