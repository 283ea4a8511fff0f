import { spawn, spawnSync } from "node:child_process";
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { beforeEach, describe, expect, it } from "vitest";
import { runs } from "../runs.ts";
import { demoDocument, lipAlone } from "../studies/demoModel.ts";
import { builtCli } from "./builtCli.ts";
import { setupFolder } from "./setupFolder.ts";

const folder = setupFolder();
const lip = folder.write("lip.json", demoDocument(lipAlone()));
const built = await builtCli();
const main = join(built, "cli", "main.js");
const out = (name: string) => join(folder.path, "out", name);

const OLD = { "a.stl": "Wellsweep, mm: old a", "b.stl": "Wellsweep, mm: old b" };

beforeEach(() => {
  rmSync(out(""), { recursive: true, force: true });
  mkdirSync(out(""));
  for (const [name, text] of Object.entries(OLD)) folder.write(`out/${name}`, text);
});

/** Writes two files over and over, the n-th time full of the n-th letter, until it is ended; says so before one of them. */
const WRITER = `
import { writeSync } from "node:fs";
import { InputFiles } from ${JSON.stringify(pathToFileURL(join(built, "cli/disk/readBytes.js")).href)};
import { writeFiles } from ${JSON.stringify(pathToFileURL(join(built, "cli/disk/writeFiles.js")).href)};
const [told, ...files] = process.argv.slice(2);
const rules = { inputs: new InputFiles(), force: true };
const refuse = (file, mend) => new Error(file + mend);
for (let n = 0; ; n++) {
  const bytes = Buffer.alloc(2_000_000, 65 + n);
  if (n === Number(told)) writeSync(1, "go");
  writeFiles(files.map((file) => ({ file, bytes })), rules, refuse);
  await new Promise(setImmediate);
}`;

/** Ends a process by a signal some time after it has said something. @returns what the shell would make of its end */
async function ended(args: readonly string[], signal: NodeJS.Signals, after: number): Promise<string> {
  const child = spawn(process.execPath, args, { stdio: ["ignore", "pipe", "inherit"] });
  child.stdout.once("data", () => setTimeout(() => child.kill(signal), after));
  return new Promise((resolve) => child.on("exit", (code, by) => resolve(by ?? String(code))));
}

describe("an interrupt while files are written", () => {
  it("leaves both files whole and of the same run, nothing beside them, and ends the program as interrupted", async () => {
    const writer = folder.write("writer.mjs", WRITER);
    for (let i = 0; i < runs(9, 20); i++) {
      const signal = i % 3 === 2 ? "SIGTERM" : "SIGINT";
      const told = 1 + (i % 4);
      expect(await ended([writer, String(told), out("a.stl"), out("b.stl")], signal, (7 * i) % 41)).toBe(
        signal,
      );
      expect(readdirSync(out(""))).toEqual(["a.stl", "b.stl"]);
      const [a, b] = ["a.stl", "b.stl"].map((name) => readFileSync(out(name))) as [Buffer, Buffer];
      expect(a.length).toBe(2_000_000);
      expect(a.equals(b)).toBe(true);
      // Of one round, and no earlier one than had been written when it was told.
      expect(a.equals(Buffer.alloc(a.length, a[0]))).toBe(true);
      expect(a[0]).toBeGreaterThanOrEqual(65 + told - 1);
    }
  });

  it("or worked out: exit 130 for the shell, and the old files are there", () => {
    const line = `timeout --preserve-status -s INT 0.6 "$0" "$1" envelope "$2" --out "$3" --out "$4"; echo $?`;
    const args = [process.execPath, main, lip, out("a.stl"), out("b.stl")];
    const { stdout } = spawnSync("bash", ["-c", line, ...args], {
      encoding: "utf8",
    });
    expect(stdout).toBe("130\n");
    expect(readdirSync(out(""))).toEqual(["a.stl", "b.stl"]);
    for (const [name, text] of Object.entries(OLD)) expect(readFileSync(out(name), "utf8")).toBe(text);
  });
});

describe("a disk that is full while files are written", () => {
  it("leaves the old files as they were, nothing beside them, exit 2 and one line", () => {
    // The first file fits, the second does not.
    const line =
      'ulimit -f 40; "$0" "$1" envelope "$2" --travel 0 --straight --section x=0 --out "$3" --out "$4"';
    const svg = out("a.svg");
    writeFileSync(svg, '<svg xmlns="x">\n<!-- Wellsweep section, 1:1 -->');
    const args = [process.execPath, main, lip, svg, out("b.stl")];
    const { status, stdout, stderr } = spawnSync("bash", ["-c", line, ...args], { encoding: "utf8" });
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toMatch(
      /^[^\n]*: --out: "[^"]*b\.stl": is larger than a file may be here; [^\n]*; nothing was written, and what was there stays as it was\n$/,
    );
    expect(readdirSync(out("")).sort()).toEqual(["a.stl", "a.svg", "b.stl"]);
    expect(readFileSync(svg, "utf8")).toMatch(/section, 1:1 -->$/);
    expect(readFileSync(out("b.stl"), "utf8")).toBe(OLD["b.stl"]);
  });
});
