import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";
import DxfParser from "dxf-parser";
import { STLLoader } from "three/addons/loaders/STLLoader.js";
import { beforeAll, describe, expect, it } from "vitest";
import { withExampleAt } from "../../../src/setup/exampleMarks.ts";
import { cornersVolume } from "../../files/meshCases.ts";
import { captured, capturedJson } from "../captured.ts";
import { setupFolder } from "../setupFolder.ts";

const EXAMPLE = "shared/tubular-knuckle.json";
/** What files of a truck without an order are named for. */
const STEM = "half-ton-on-a-tubular-knuckle";
const folder = setupFolder();
const at = (name: string) => join(folder.path, name);
const example = () => JSON.parse(readFileSync(EXAMPLE, "utf8"));

function refusal(...args: string[]): string {
  const { code, out, error } = captured(["sheet", ...args]);
  expect([code, out]).toEqual([2, ""]);
  expect(error).toMatch(/^[^\n]+\n$/);
  return error.trimEnd();
}

describe("sheet --json", () => {
  const out = at("drawn");
  // biome-ignore lint/suspicious/noExplicitAny: the test looks into a document whose shape is what it asserts
  let document: any;
  beforeAll(() => {
    ({ document } = capturedJson(["sheet", EXAMPLE, "--out", out, "--paper", "tabloid"]));
  });

  it("lists every file that is there, with kind, scale and paper, and nothing else is there", () => {
    expect(Object.keys(document)).toEqual([
      "units",
      "paper",
      "angle",
      "kerf",
      "files",
      "quantity",
      "pieces",
      "pin",
      "plates",
    ]);
    expect([document.units, document.paper, document.angle, document.kerf]).toEqual([
      "in",
      "tabloid",
      "third",
      0,
    ]);
    expect(document.files.map(({ file }: { file: string }) => basename(file)).sort()).toEqual(
      readdirSync(out).sort(),
    );
    for (const { file, bytes } of document.files) expect(statSync(file).size).toBe(bytes);
    const kinds = new Set(document.files.map(({ kind }: { kind: string }) => kind));
    for (const kind of ["drawing", "cut list", "template", "plate", "solid"])
      expect([...kinds]).toContain(kind);
    for (const { kind, format, scale, paper } of document.files) {
      if (kind === "template" || kind === "plate") expect(scale).toBe("1:1");
      if (kind === "drawing") expect(scale).toMatch(/^1:\d+$/);
      expect(paper).toBe(format === "pdf" || kind === "drawing" ? "tabloid" : null);
    }
  });

  it("has the cut list, lengths in the file's units, angles in degrees", () => {
    const post = document.pieces.find(({ name }: { name: string }) => name === "upper post");
    expect([post.kind, post.diameter, post.wall, post.turn]).toEqual(["tube", 1.75, 0.25, null]);
    expect(post.centers).toBeCloseTo(3.625, 9);
    expect(post.ends[0].fittedTo).toEqual(["pin"]);
    expect(post.ends[0].angle).toBeCloseTo(90 - 8.5, 9);
    expect(document.pieces.map(({ ends }: { ends: object[] }) => ends.length)).toEqual(new Array(6).fill(2));
  });

  it("a plate in inches is read by dxf-parser, the STL by three", () => {
    const dxf = new DxfParser().parseSync(
      readFileSync(join(out, `${STEM}-plate-caliper-bracket.dxf`), "utf8"),
    )!;
    expect(dxf.header.$INSUNITS).toBe(1);
    expect(dxf.entities.filter(({ type }) => type === "CIRCLE").length).toBe(3);
    const bytes = readFileSync(join(out, `${STEM}-knuckle.stl`));
    const solid = new STLLoader().parse(
      bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length),
    );
    const volume = cornersVolume(solid.getAttribute("position").array) / 25.4 ** 3;
    // By hand: bosses 7.07, posts about 6.3, pin 21.98, braces about 0.8, steering arm 6.74, bracket 2.26 in³.
    expect(volume).toBeGreaterThan(44);
    expect(volume).toBeLessThan(46);
  });

  it("a second run replaces its own files, with a kerf too", () => {
    const { code, document: again } = capturedJson(["sheet", EXAMPLE, "--out", out, "--kerf", "0.06"]);
    expect([code, again.kerf, again.paper]).toEqual([0, 0.06, "letter"]);
    const dxf = new DxfParser().parseSync(
      readFileSync(join(out, `${STEM}-plate-caliper-bracket.dxf`), "utf8"),
    )!;
    const radii = dxf.entities.flatMap((entity) => ("radius" in entity ? [entity.radius as number] : []));
    expect(radii[0]).toBeCloseTo((17 / 32 - 0.06) / 2, 6);
  });
});

describe("sheet for a person", () => {
  it("remarks on a knuckle that is made as the example's", () => {
    const marked = folder.write("marked.json", withExampleAt(example(), ["build"], "a knuckle"));
    const { code, error } = captured(["sheet", marked, "--out", at("marked")]);
    expect(code).toBe(0);
    expect(error).toMatch(
      /marked\.json: ⋯ \d+ numbers of this knuckle's build are from the example.*licensed engineer/,
    );
  });

  it("tells what was written, the cut list and cautions", () => {
    const { code, out, error } = captured(["sheet", EXAMPLE, "--out", at("told")]);
    expect([code, error]).toEqual([0, ""]);
    expect(out).toContain("template-upper-post-pin-seat.svg");
    expect(out).toContain("to pin, 81.5°");
    expect(out).toContain("pin: from its root out Ø 2 1/4 in");
    expect(out).toContain("Outline and hole pattern: sheet “Plate: caliper bracket”.");
    expect(out).toContain("reviewed by a licensed engineer");
    expect(out).not.toMatch(/\bsafe\b/i);
  });
});

describe("sheet refuses, and leaves no folder behind", () => {
  it.each([
    ["no folder", [], "--out"],
    ["a paper that is none", ["--out", at("x"), "--paper", "leter"], 'did you mean "letter"?'],
    ["an angle that is none", ["--out", at("x"), "--angle", "second"], "must be one of first, third"],
    ["a kerf below nothing", ["--out", at("x"), "--kerf", "-1"], "must be from 0 to 10 mm"],
    ["a kerf that is no length", ["--out", at("x"), "--kerf", "thin"], "--kerf"],
    ["a folder in none", ["--out", at("no/such")], "there is no such folder"],
  ] as const)("%s", (_, args, words) => {
    expect(refusal(EXAMPLE, ...args)).toContain(words);
    expect(existsSync(at("x"))).toBe(false);
  });

  it("a setup without a build", () => {
    expect(refusal("shared/half-ton-on-air.json", "--out", at("x"))).toContain("build: is missing");
    expect(existsSync(at("x"))).toBe(false);
  });

  it("a build of stiff connections alone, and one of nothing", () => {
    const setup = { ...example(), variants: [] };
    setup.build = {
      members: [{ name: "a", kind: "link", from: "lowerBallJoint", to: "upperBallJoint" }],
    };
    expect(refusal(folder.write("links.json", setup), "--out", at("x"))).toContain("nothing to draw");
    setup.build = {};
    expect(refusal(folder.write("empty.json", setup), "--out", at("x"))).toContain("nothing to draw");
  });

  it("a plate whose hole meets its edge, at its key", () => {
    const setup = example();
    setup.build.plates[1].holes[1].diameter = 2;
    const said = refusal(folder.write("hole.json", setup), "--out", at("x"));
    expect(said).toContain("build.plates[1].holes[1].diameter");
    expect(said).toContain("caliper bracket");
  });

  it("a file in place of the folder, a stranger's file in it, and the setup itself", () => {
    expect(refusal(EXAMPLE, "--out", folder.write("file", "x"))).toContain("is a file, not a folder");
    mkdirSync(at("theirs"));
    writeFileSync(at(`theirs/${STEM}-knuckle.stl`), "solid of another program");
    expect(refusal(EXAMPLE, "--out", at("theirs"))).toContain("was not written by this program");
    expect(readdirSync(at("theirs"))).toEqual([`${STEM}-knuckle.stl`]);
    const { code } = captured(["sheet", EXAMPLE, "--out", at("theirs"), "--force"]);
    expect(code).toBe(0);
  });
});
