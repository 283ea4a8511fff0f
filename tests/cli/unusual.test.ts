import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { demoDocument } from "../studies/demoModel.ts";
import { captured } from "./captured.ts";
import { setupFolder } from "./setupFolder.ts";

const folder = setupFolder();
const ODD = { knuckle: { hubFace: 60 }, truck: { body: [] }, hardware: null };
const odd = folder.write("odd.json", demoDocument(ODD));
const LINE =
  /^\S*odd\.json: unusual: knuckle\.hubFace: Hub-face distance of 60 in is unusual: .* Was 6 in meant\? If it is right, add to "confirmed": (\{.*\})\n$/;
const SO = { check: "hubFace", at: "knuckle.hubFace", length: 60 };

const VERBS: readonly (readonly string[])[] = [
  ["pose"],
  ["check"],
  ["sweep", "--steps", "3"],
  ["map", "--rows", "2", "--cols", "2"],
  ["geometry"],
  ["align"],
  ["limits"],
  ["floor"],
];

describe("a setup with a hub face of 60 in", () => {
  it.each([["60"], ["14"], ["15"]])("is not told as clear by check: %s", (number) => {
    const change = {
      "60": { knuckle: { hubFace: 60 } },
      "14": { knuckle: { span: 14 } },
      "15": { wheel: { backspacing: 15 } },
    }[number]!;
    const file = folder.write(`nonsense-${number}.json`, demoDocument({ hardware: null, ...change }));
    const { code, out, error } = captured(["check", file]);
    const [, sentence] = out.split("\n");
    expect(error).toMatch(/^\S*: unusual: \S+: .* is unusual: .*\n$/);
    expect([0, 1]).toContain(code);
    if (code === 0) expect(sentence).toMatch(/^If what is unusual is right, /);
    expect(sentence).not.toMatch(/^Everything clears/);
  });

  it("keeps its exit code, says what is unusual on standard error and how to confirm it", () => {
    const { code, out, error } = captured(["check", odd]);
    expect(code).toBe(0);
    expect(error).toMatch(LINE);
    expect(JSON.parse(LINE.exec(error)![1]!)).toEqual(SO);
    expect(out).not.toContain("60 in is unusual");
  });

  it.each(VERBS.map((verb) => [verb[0]!, verb] as const))("has it in the JSON of %s", (_, verb) => {
    const { out, error } = captured([verb[0]!, odd, ...verb.slice(1), "--json"]);
    expect(error).toMatch(LINE);
    const { unusual } = JSON.parse(out) as { unusual: readonly object[] };
    expect(unusual).toEqual([
      { ...SO, text: expect.stringMatching(/^Hub-face distance of 60 in is unusual/) as string },
    ]);
  });

  it("has it in the JSON of air", () => {
    const example = JSON.parse(readFileSync("shared/half-ton-limits.json", "utf8")) as { knuckle: object };
    const file = folder.write("odd.json", { ...example, knuckle: { ...example.knuckle, hubFace: 60 } });
    const { out, error } = captured(["air", file, "--json"]);
    expect(error).toMatch(LINE);
    expect(JSON.parse(out)).toHaveProperty("unusual[0].check", "hubFace");
  });

  it("says nothing of it once the setup confirms it, and again of another value", () => {
    const so = folder.write("so.json", demoDocument({ ...ODD, confirmed: [SO] }));
    expect(captured(["pose", so]).error).toBe("");
    expect(JSON.parse(captured(["pose", so, "--json"]).out)).not.toHaveProperty("unusual");
    const lapsed = folder.write(
      "lapsed.json",
      demoDocument({ ...ODD, knuckle: { hubFace: 61 }, confirmed: [SO] }),
    );
    expect(captured(["pose", lapsed]).error).toContain("Hub-face distance of 61 in is unusual");
  });

  it("looks a variant over as a truck of its own", () => {
    const variants = [{ name: "meant", patch: { knuckle: { hubFace: 6 } } }];
    const both = folder.write("both.json", demoDocument({ ...ODD, variants }));
    expect(captured(["pose", both, "--variant", "meant"]).error).toBe("");
    expect(captured(["pose", both]).error).toContain("60 in");
  });
});
