import { describe, expect, it } from "vitest";
import { demoDocument } from "../studies/demoModel.ts";
import { captured } from "./captured.ts";
import { setupFolder } from "./setupFolder.ts";

const folder = setupFolder();
const SECRET = "hunter2-4f8e9c17-do-not-print-this-anywhere-at-all";
const bodyOf = (file: string) => ({ truck: { body: [{ name: "panel", kind: "mesh", file }] }, variants: [] });

/** The longest run of the secret that a text holds. */
function quoted(text: string): number {
  let longest = 0;
  for (let from = 0; from < SECRET.length; from++)
    for (let to = from + longest + 1; to <= SECRET.length && text.includes(SECRET.slice(from, to)); to++)
      longest = to - from;
  return longest;
}

describe("of a file that is none of ours at most a dozen characters are quoted", () => {
  it.each<[string, unknown]>([
    ["text", `${SECRET}\n${SECRET}`],
    ["a list of settings", `key=${SECRET}`],
    ["JSON with other keys", { token: SECRET, name: SECRET, [SECRET]: SECRET, variants: [{ name: SECRET }] }],
    ["JSON with a format of its own", { format: SECRET, truck: { lowerArm: SECRET } }],
    ["JSON that is a text", JSON.stringify(SECRET)],
    ["JSON that is a list", [SECRET, SECRET]],
    ["JSON with a key twice", `{"${SECRET}": 1, "${SECRET}": 2}`],
    ["JSON that breaks off", `{"token": "${SECRET}`],
  ])("%s in place of a setup", (_, content) => {
    const { code, out, error } = captured(["pose", folder.write("foreign", content)]);
    expect([code, out]).toEqual([2, ""]);
    expect(quoted(error)).toBeLessThanOrEqual(12);
    expect(error).not.toMatch(/more/);
  });

  it.each([
    ["a.stl", `solid x\n${SECRET}`],
    ["b.stl", `solid x\nfacet normal 0 0 1 outer loop vertex ${SECRET} 0 0`],
    ["a.obj", `v ${SECRET} 0 0`],
    ["b.obj", `v 0 0 0\nf ${SECRET} 2 3`],
    ["a.ply", `ply\nformat ${SECRET} 1.0`],
    ["b.ply", `ply\nformat ascii 1.0\n${SECRET}`],
    ["c.ply", `ply\nformat ascii 1.0\nelement vertex ${SECRET}`],
    ["a.glb", glb({ asset: { version: "2.0" }, extensionsRequired: [SECRET] })],
  ])("%s in place of a mesh", (name, content) => {
    folder.write(name, content);
    const { code, out, error } = captured(["pose", folder.write("truck.json", demoDocument(bodyOf(name)))]);
    expect([code, out]).toEqual([2, ""]);
    expect(error).toContain(`truck.body[0].file: "${name}": `);
    expect(quoted(error)).toBeLessThanOrEqual(12);
  });
});

/** A GLB file of nothing but its JSON. */
function glb(json: object): Uint8Array {
  const text = JSON.stringify(json);
  const chunk = Buffer.from(text.padEnd(4 * Math.ceil(text.length / 4)));
  const head = Buffer.alloc(20);
  [0x46546c67, 2, 20 + chunk.length, chunk.length, 0x4e4f534a].forEach((value, i) => {
    head.writeUInt32LE(value, 4 * i);
  });
  return Buffer.concat([head, chunk]);
}

describe("what would act on the screen is shown, not done", () => {
  /** Escape, bell, C1 control sequence introducer, right-to-left override and isolate, line separator. */
  const NASTY = "a\u001b[31m\u0007b\u009bc\u202ed\u2066e\u2028f";
  const ACTING = /(?!\n)[\p{Cc}\u2028\u2029\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/u;
  // Controls cannot be in a name; the others can.
  const name = "lip\u202ed\u2066\u200f\u2028";
  const setup = demoDocument({
    name,
    truck: {
      body: [
        {
          name,
          kind: "path",
          radius: 0.1,
          points: [
            [0, 36, 30],
            [9, 36, 30],
          ],
        },
      ],
    },
    stances: [{ name, travel: 0 }],
    variants: [{ name, patch: {} }],
  });

  it.each<[string, readonly string[], unknown?]>([
    ["a file's name", ["pose", NASTY]],
    ["a verb", [NASTY]],
    ["an option", ["pose", "x", `--${NASTY}`]],
    ["an option's value", ["pose", "-", "--travel", NASTY], setup],
    ["a variant asked for", ["pose", "-", "--variant", NASTY], setup],
    ["a key", ["pose", "-"], { ...setup, [NASTY]: 1 }],
    ["a value", ["pose", "-"], { ...setup, units: NASTY }],
    ["a name with controls", ["pose", "-"], { ...setup, name: NASTY }],
    ["a text that is no JSON", ["pose", "-"], `{ ${NASTY}`],
    ["a key twice", ["pose", "-"], `{ "\u202e": 1, "\u202e": 2 }`],
  ])("in %s", (_, args, input = "") => {
    const { code, out, error } = captured(args, typeof input === "string" ? input : JSON.stringify(input));
    expect([code, out]).toEqual([2, ""]);
    expect(error).toMatch(/\\u(001b|202e)/);
    expect(error).not.toMatch(ACTING);
    expect(error).toMatch(/^[^\n]+\n$/);
  });

  it.each([["pose"], ["check"], ["sweep"], ["sweep", "--csv"], ["geometry"], ["floor"]])(
    "in names that %j prints",
    (...verb) => {
      const { code, out, error } = captured([...verb, "-", "--variant", name], JSON.stringify(setup));
      expect([code === 2, error]).toEqual([false, ""]);
      expect(out).toContain("lip\\u202ed");
      expect(out.replaceAll("\r\n", "\n")).not.toMatch(ACTING);
    },
  );

  it("and a document of --json still holds the names as they are", () => {
    const { out } = captured(["pose", "-", "--json"], JSON.stringify(setup));
    expect(out).not.toMatch(ACTING);
    expect(JSON.parse(out).gaps[0].part).toBe(name);
  });
});
