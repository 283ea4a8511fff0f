import { mkdirSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { demoDocument } from "../studies/demoModel.ts";
import { captured } from "./captured.ts";
import { setupFolder } from "./setupFolder.ts";

const folder = setupFolder();
const good = folder.write("good.json", demoDocument({ truck: { body: null } }));
const text = JSON.stringify(demoDocument({ truck: { body: null } }));
const broken = (name: string, patch: Record<string, unknown>) => folder.write(name, demoDocument(patch));

/** Runs a bad command line: exit 2, nothing printed, one line on standard error, which is returned. */
function refusal(...args: string[]): string {
  const { code, out, error } = captured(args);
  expect([code, out]).toEqual([2, ""]);
  expect(error).toMatch(/^[^\n\r]+\n$/);
  expect(error).not.toMatch(/\n\s+at |Error:|node:|undefined|\[object/);
  return error.trimEnd();
}

describe("a file that cannot be used is refused with its name and a mend", () => {
  const missing = join(folder.path, "missing.json");
  mkdirSync(join(folder.path, "a folder"));
  symlinkSync("loop.json", join(folder.path, "loop.json"));

  it.each([
    ["that is missing", missing, /there is no such file/],
    ["below a file", `${good}/inside.json`, /there is no such file/],
    ["that is a folder", join(folder.path, "a folder"), /is a folder; name the setup file inside it/],
    ["that is a link to itself", join(folder.path, "loop.json"), /is a link that leads to itself/],
    ["whose name is too long", `${folder.path}/${"x".repeat(300)}`, /the name is too long/],
    ["whose name holds a zero byte", "a\0b", /cannot be read/],
    ["that is empty", folder.write("empty.json", ""), /empty/],
    ["that is not JSON", folder.write("not.json", "knuckle: 3"), /line 1, column 1/],
    ["that is cut off", folder.write("cut.json", text.slice(0, 200)), /line 1, column/],
    ["with a comment", folder.write("comment.json", text.replace("{", "{ // hello\n")), /line 1, column/],
    ["with NaN", folder.write("nan.json", text.replace('"15"', "NaN").replace(":15,", ":NaN,")), /NaN/],
    [
      "that is not UTF-8",
      folder.write("latin.json", Uint8Array.from([0x7b, 0x22, 0xe9, 0x22, 0x7d])),
      /UTF-8/,
    ],
    [
      "in UTF-16",
      folder.write("utf16.json", new Uint8Array(Buffer.from(`\ufeff${text}`, "utf16le"))),
      /UTF-8/,
    ],
    ["with a byte order mark", folder.write("bom.json", `\ufeff${text}`), /byte order mark/],
    ["that is a list", folder.write("list.json", []), /object/],
    ["that is null", folder.write("null.json", "null"), /object/],
    ["nested too deep", folder.write("deep.json", "[".repeat(50_000)), /deep/],
  ])("%s", (_, file, mend) => {
    for (const verb of ["pose", "check", "sweep"]) {
      const line = refusal(verb, file);
      expect(line.startsWith(`${file.replace("\0", "\\u0000")}: `)).toBe(true);
      expect(line).toMatch(mend);
    }
  });

  it("named by nothing", () => {
    expect(refusal("check", "")).toBe('"": there is no such file; check the name and the folder');
  });

  it("with a line break in its name, still on one line", () => {
    expect(refusal("check", "one\ntwo.json")).toBe(
      "one\\ntwo.json: there is no such file; check the name and the folder",
    );
  });

  it("from standard input", () => {
    const { code, error } = captured(["check", "-"], "{}");
    expect(code).toBe(2);
    expect(error).toMatch(/^standard input: format: /);
  });
});

describe("a mistake in a setup is told with its key and mend", () => {
  it.each<[Record<string, unknown>, RegExp]>([
    [{ knuckle: { hubface: 6 } }, /: knuckle\.hubface: .*"?hubFace"?/],
    [
      { knuckle: { hubFace: "5 5/8 im" } },
      /: knuckle\.hubFace: "5 5\/8 im": unknown unit "im"; did you mean "in"\?/,
    ],
    [{ knuckle: { span: 40 } }, /: knuckle\.span: 40 in: .*between .* in and .* in/],
    [{ units: "feet" }, /: units: /],
    [{ tire: { size: "P235/70R16" } }, /: tire\.size: .*16 in rim/],
    [{ truck: { lowerArm: { rearPivot: ["7 3/4", "10 5/8", "9 3/8"] } } }, /: truck\.lowerArm\.\w+: /],
    [{ travel: { droop: 2 } }, /: travel\.droop: /],
  ])("%j", (patch, line) => {
    expect(refusal("check", broken("mistake.json", { truck: { body: [] }, ...patch }))).toMatch(line);
  });

  it("several are one line: the first in full, the others counted with their keys", () => {
    const file = broken("several.json", { knuckle: { span: "x", hubFace: "y" }, wheel: { rimWidth: -1 } });
    const line = refusal("pose", file, "--json");
    expect(line).toMatch(
      /several\.json: knuckle\.span: "x": .* \(and \d+ more: knuckle\.hubFace, wheel\.rimWidth\)$/,
    );
  });

  it("an unknown variant names the nearest", () => {
    const line = refusal("check", good, "--variant", "narow hub face");
    expect(line).toMatch(
      /good\.json: variants: "narow hub face": no such variant; did you mean "narrow hub face"/,
    );
  });
});

describe("a mistake in an option is told with the option and its mend", () => {
  it.each<[string[], string]>([
    [["pose", "--travel", "high"], '--travel: "high": no number found; write a length'],
    [["pose", "--travel", ""], '--travel: "": empty'],
    [["pose", "--travel", "3 1/4 im"], '--travel: "3 1/4 im": unknown unit "im"; did you mean "in"?'],
    [["pose", "--travel", "NaN"], '--travel: "NaN": no number found'],
    [["pose", "--travel", "1e999"], '--travel: "1e999": the number is too large'],
    [["pose", "--travel", "--json"], '--travel: "--json": '],
    [["pose", "--steer", "1.01"], '--steer: "1.01": steer is a share of full lock, from -1'],
    [["pose", "--steer", "-2"], '--steer: "-2": steer is a share'],
    [["pose", "--steer", "left"], '--steer: "left": steer is a share'],
    [["pose", "--steer", "NaN"], '--steer: "NaN": steer is a share'],
    [["pose", "--steer", ""], '--steer: "": steer is a share'],
    [["pose", "--at", "3"], '--at: "3": write travel, a comma and steer'],
    [["pose", "--at", "3,"], '--at: "3,": steer is a share'],
    [["pose", "--at", ",0"], '--at: ",0": empty'],
    [["pose", "--at", "3,5,0"], '--at: "3,5,0": has a comma'],
    [["pose", "--at", "0,0", "--at", "0,7"], '--at: "0,7": steer is a share'],
    [["pose", "--at", "0,0", "--travel", "1"], '--travel: "1": cannot be used with --at'],
    [["pose", "--at", "0,0", "--steer", "1"], '--steer: "1": cannot be used with --at'],
    [["check", "--tolerance", "0"], '--tolerance: "0": must be at least 0.001 mm'],
    [["check", "--tolerance", "-1/16"], '--tolerance: "-1/16": must be at least'],
    [["check", "--tolerance", "thin"], '--tolerance: "thin": no number found'],
    [["sweep", "--steps", "1"], '--steps: "1": must be a whole number from 2 to'],
    [["sweep", "--steps", "2.5"], '--steps: "2.5": must be a whole number'],
    [["sweep", "--steps", "1e-3"], '--steps: "1e-3": must be a whole number'],
    [["sweep", "--steps", "99999999"], '--steps: "99999999": must be a whole number'],
    [["sweep", "--csv", "--json"], "--csv: cannot be used with --json"],
  ])("%j", ([verb, ...options], mend) => {
    expect(refusal(verb ?? "", good, ...options).startsWith(`${good}: ${mend}`)).toBe(true);
  });

  it("a pose out of reach names the joint and a value that does close", () => {
    const line = refusal("pose", good, "--travel", "30");
    const [, last] =
      /--travel: "30": the left lower ball joint cannot follow past travel (\S+) in; /.exec(line) ?? [];
    expect(captured(["pose", good, "--travel", last ?? "none"]).code).toBe(0);
    expect(captured(["pose", good, "--travel", String(Number(last) + 0.001)]).code).toBe(2);

    const long = broken("long.json", { truck: { body: null, steering: { stroke: 7 } } });
    const steering = refusal("pose", long, "--at", "0,-1");
    const [, steer] =
      /--at: "0,-1": the \w+ outer tie rod end cannot follow past steer (\S+) at this/.exec(steering) ?? [];
    expect(captured(["pose", long, "--steer", steer ?? "none"]).code).toBe(0);
    expect(captured(["pose", long, "--steer", String(Number(steer) - 0.001)]).code).toBe(2);
  });
});

describe("a mistake in the command line itself is one line that leads to help", () => {
  it.each<[string[], RegExp]>([
    [[], /^wellsweep: no verb given: say pose, check, sweep, map, envelope, .*; see wellsweep --help$/],
    [["chek", "x.json"], /^wellsweep: unknown command 'chek' \(Did you mean check\?\)/],
    [["--json"], /^wellsweep: unknown option '--json'/],
    [
      ["check"],
      /^wellsweep check: missing required argument 'FILE': name a setup file; see wellsweep check --help$/,
    ],
    [
      ["pose", "x.json", "--travle", "1"],
      /^wellsweep pose: unknown option '--travle' \(Did you mean --travel\?\)/,
    ],
    [["pose", "x.json", "--travel"], /^wellsweep pose: option '--travel <LEN>' argument missing/],
    [["pose", "x.json", "--travel", "-3", "3/4"], /quote lengths with spaces, like "-3 3\/4"/],
    [["check", "x.json", "y.json"], /name one setup file/],
  ])("%j", (args, line) => {
    expect(refusal(...args)).toMatch(line);
  });
});
