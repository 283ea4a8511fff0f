import { describe, expect, it } from "vitest";
import { readMesh } from "../../src/files/readMesh.ts";
import { MAX_ISSUES } from "../../src/setup/reading/limits.ts";
import { readSetup } from "../../src/setup/readSetup.ts";
import { captured } from "../cli/captured.ts";
import { runs } from "../runs.ts";
import { brokenMeshes } from "./brokenMeshes.ts";
import { brokenSetups } from "./brokenSetups.ts";

/** What takes a second in a reader that is quadratic in it takes minutes here; `npm run fuzz` reads 64 MB of each. */
const MEGABYTE = 1024 * 1024;

/** Of each, where no limit of size is asked for. */
const LARGE = runs(0.25, 1) * MEGABYTE;

/** Those that are large and nothing else. */
const SOUND = ["a mesh that is sound", "variants that are each a large body"];

describe("much of what is no setup ends with few issues, whatever it is made of", () => {
  it.each(Object.entries(brokenSetups))("%s", (name, textOf) => {
    const read = readSetup(textOf(LARGE), "huge.json");
    expect(read.ok).toBe(SOUND.includes(name));
    if (read.ok) return;
    expect(read.issues.length).toBeGreaterThan(0);
    expect(read.issues.length).toBeLessThanOrEqual(MAX_ISSUES + 1);
    for (const { key, value, mend } of read.issues) {
      expect(mend).not.toBe("");
      expect(`${key}${value}${mend}`.length).toBeLessThan(1000);
    }
  });
});

describe("limits of size are named, and what is past them is not read", () => {
  it.each<[string, RegExp]>([
    ["many variants", /^huge\.json: variants: a list of \d+: must have at most 200 entries$/],
    ["body parts without a radius", /: truck\.body: .*: must have at most 1000 entries$/],
    ["stances by nothing", /: stances: .*: must have at most 100 entries$/],
    ["unknown keys", /: line 1, column \d+: this object has more than 1000 keys; no setup needs that$/],
    ["lists in lists", /: objects and lists are nested more than 64 deep$/],
  ])("%s", (name, line) => {
    const read = readSetup(brokenSetups[name]!(MEGABYTE), "huge.json");
    const [issue, ...rest] = read.ok ? [] : read.issues;
    expect(rest).toEqual([]);
    expect(
      [issue?.file, issue?.key, issue?.value, issue?.mend].filter((part) => part !== "").join(": "),
    ).toMatch(line);
  });

  it("a document holds two million values at most", () => {
    const read = readSetup(brokenSetups["numbers that never end"]!(5 * MEGABYTE), "huge.json");
    expect(read.ok ? "" : read.issues[0]!.mend).toMatch(/a setup holds at most 2000000 numbers, texts, /);
  });

  it("the command line says the same on one line", () => {
    const { code, error } = captured(["check", "-"], brokenSetups["many variants"]!(MEGABYTE));
    expect(code).toBe(2);
    expect(error).toMatch(/^standard input: variants: a list of \d+: must have at most 200 entries\n$/);
  });
});

it("a list of mistakes counts them, and a place beside them is not taken for wrong", () => {
  const wrong = Array.from({ length: 500 }, () => [0, 0, "x"]);
  const text = brokenSetups["wrong points"]!(10).replace('[[0,0,"x"]]', JSON.stringify(wrong));
  const read = readSetup(text.replace('"hubFace":', '"hubface":'), "huge.json");
  const mends = read.ok ? [] : read.issues;
  expect(mends.at(-1)!.mend).toMatch(/^and 45\d more; fix these first$/);
  expect(mends[0]!.key).toBe("truck.body[0].points[0][2]");
});

describe("much of what is no mesh ends with one sentence", () => {
  it.each(Object.entries(brokenMeshes))("%s", (_, meshOf) => {
    const { name, bytes } = meshOf(LARGE);
    const read = readMesh(bytes, name);
    if (read.ok) expect(read.mesh.triangles.length).toBeGreaterThan(0);
    else expect(read.mend).toMatch(/^[^\n]{10,200}$/);
  });
});

describe("limits of a mesh file are named", () => {
  it("of tangled faces", () => {
    const { name, bytes } = brokenMeshes["OBJ of stars"]!(2 * MEGABYTE);
    const read = readMesh(bytes, name);
    expect(read.ok ? "" : read.mend).toMatch(/: a face is too tangled to cut up; export it as triangles$/);
  });

  it("of the list of parts in a GLB", () => {
    const { name, bytes } = brokenMeshes["GLB of brackets"]!(17 * MEGABYTE);
    const read = readMesh(bytes, name);
    expect(read.ok ? "" : read.mend).toBe(
      "JSON chunk: is larger than 16 MB; join the parts and export it again",
    );
  });
});
