import { readdirSync } from "node:fs";
import { basename, join } from "node:path";
import { describe, expect, it } from "vitest";
import { demoDocument, lipAlone } from "../../studies/demoModel.ts";
import { captured, capturedJson } from "../captured.ts";
import { setupFolder } from "../setupFolder.ts";

const folder = setupFolder();
const lip = folder.write("lip.json", demoDocument(lipAlone()));
const fields = ["--fields", "wheel.backspacing,trim", "--budget", "100"];

describe("change", () => {
  it("answers in the file's units with what to set, least effort first, and ends in 1 where it rubs", () => {
    const { code, document } = capturedJson(["change", lip, ...fields]);
    expect([code, document.units, document.verdict]).toEqual([1, "in", "rubs"]);
    const [wheel, trim] = document.changes;
    expect(wheel.from).toEqual({ "wheel.backspacing": 4.25 });
    const set = wheel.set["wheel.backspacing"];
    expect(set).toBeGreaterThan(4.5);
    expect(wheel.bound).toBeGreaterThan(0.25 - 0.001);
    expect(trim).toMatchObject({
      set: {},
      trim: { part: "fender lip" },
      alsoMoves: [{ what: "fenderCover" }],
    });
    const there = { ...demoDocument(lipAlone()) } as { wheel: object };
    const made = folder.write("made.json", {
      ...there,
      wheel: { ...there.wheel, backspacing: set },
    });
    expect(capturedJson(["check", made]).document.verdict).toBe("clear");
  });

  it("says it in words, never less than it takes, with what else it moves", () => {
    const { out } = captured(["change", lip, ...fields]);
    expect(out).toContain("1. Backspacing from 4 1/4 in to 5 in.");
    expect(out).toContain("   Each wheel stands 3/4 in closer in.");
    expect(out).toContain("2. Trim the fender lip back by 9/16 in.");
    expect(out).toContain("local rules");
    expect(out).toContain("licensed, qualified people");
  });

  it("ends in 0 with a truck that clears already", () => {
    const { code, out } = captured(["change", lip, ...fields, "--variant", "narrow hub face"]);
    expect(code).toBe(0);
    expect(out).toContain("nothing needs to change");
  });

  it.each([
    ["wheel.backspacin", "wheel.backspacing"],
    ["name", "no single length"],
    [" , ", "names no field"],
  ])("of --fields %s says what to mend", (keys, mend) => {
    const { code, out, error } = captured(["change", lip, "--fields", keys]);
    expect([code, out]).toEqual([2, ""]);
    expect(error).toContain(mend);
  });
});

describe("change --trim", () => {
  it("writes the templates of what is too near into a folder, and says which", () => {
    const out = join(folder.path, "templates");
    const args = ["change", lip, "--fields", "trim", "--trim", out];
    const { code, document } = capturedJson(args);
    expect(code).toBe(1);
    expect(
      document.files.map(({ file, kind }: { file: string; kind: string }) => [basename(file), kind]),
    ).toEqual([
      ["trim-fender-lip-left.svg", "trim template"],
      ["trim-fender-lip-left.dxf", "trim template"],
      ["trim-templates.pdf", "trim template"],
    ]);
    expect(readdirSync(out).sort()).toEqual(
      document.files.map(({ file }: { file: string }) => basename(file)).sort(),
    );
    const [{ trim, smaller }] = document.changes;
    expect(smaller).toEqual({ rank: "stepped", steps: [1 / 25.4] });
    expect(trim.regions[0].outlines[0].length).toBeGreaterThan(20);
    expect(trim.left.length).toBeGreaterThan(11);
  });

  it("refuses a part that is not there, a scan, and one that keeps the allowance", () => {
    const refusal = (part: string) => {
      const args = [
        "change",
        "shared/half-ton-on-air.json",
        "--fields",
        "trim",
        "--trim",
        "out",
        "--part",
        part,
      ];
      const { code, out, error } = captured(args);
      expect([code, out]).toEqual([2, ""]);
      return error;
    };
    expect(refusal("hood")).toMatch(/--part/);
    expect(refusal("inner fender")).toMatch(/is a scan/);
    expect(refusal("frame rail")).toMatch(/nothing to trim/);
  });
});
