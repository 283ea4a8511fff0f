import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { demoDocument, lipAlone } from "../studies/demoModel.ts";
import { captured, capturedJson, coarseClock } from "./captured.ts";
import { setupFolder } from "./setupFolder.ts";

const folder = setupFolder();
const wanted = (targets: object | undefined) =>
  demoDocument({
    ...lipAlone(),
    hardware: null,
    name: "Truck",
    alignment: { toe: 0.05, ...(targets && { targets }) },
    adjusters: { kind: "shims", front: "1/8", rear: "1/8", most: "3/4" },
  });
const targets = { stance: "driving", camber: -0.5, caster: 4, toe: 0.1 };
const reached = folder.write("reached.json", wanted(targets));
const beyond = folder.write("beyond.json", wanted({ camber: -4, caster: 9 }));
const apart = folder.write("apart.json", wanted({ camber: -0.5, left: { caster: 4 }, right: { caster: 3 } }));
const without = folder.write("without.json", wanted(undefined));
const outOfReach = folder.write("far.json", {
  ...(wanted({ ...targets, stance: "on the moon" }) as object),
  stances: [{ name: "on the moon", travel: 40 }],
});

describe("--aligned", () => {
  it.each([
    ["as wanted", reached],
    ["as near as can be", beyond],
    ["each side its own", apart],
  ])("poses the truck as `align` reports it: %s", (_, file) => {
    const { document: align } = capturedJson(["align", file]);
    const { document: pose } = capturedJson(["pose", file, "--aligned", "--travel", String(align.travel)]);
    const { document: bolted } = capturedJson(["pose", file, "--travel", String(align.travel)]);
    for (const side of ["left", "right"]) {
      for (const key of ["camber", "caster", "toe"]) {
        expect(pose[side][key], `${side} ${key}`).toBeCloseTo(align[side].aligned[key], 9);
        expect(bolted[side][key], `${side} ${key}`).toBeCloseTo(align[side].asBolted[key], 9);
      }
      expect(pose[side].tieRodLength).toBeCloseTo(align[side].tieRod.aligned, 9);
    }
  });

  it.each([
    ["pose"],
    ["check"],
    ["sweep", "--steps", "3"],
    ["map", "--rows", "3", "--cols", "3"],
    ["geometry", "--steps", "3"],
    ["limits"],
  ])("is said by `%s`: in the heading, and in the document only when it was given", (verb, ...more) => {
    const heading = (file: string, ...options: string[]) =>
      captured([verb, file, ...more, ...options]).out.split("\n", 1)[0];
    expect(heading(reached, "--aligned")).toBe("Truck, aligned");
    expect(heading(reached)).toBe("Truck, as bolted on");
    expect(heading(beyond, "--aligned")).toBe("Truck, aligned as near as its adjusters go");
    expect(heading(without)).toBe("Truck");
    const aligned = capturedJson([verb, reached, ...more, "--aligned"]).document;
    const bolted = capturedJson([verb, reached, ...more]).document;
    expect(aligned.alignment).toEqual({ shown: "aligned", stance: "driving", reached: true });
    expect(Object.keys(aligned)).toEqual([...Object.keys(bolted), "alignment"]);
  });

  it("is told of air springs too", () => {
    const file = "shared/half-ton-limits.json";
    expect(captured(["air", file, "--aligned"]).out.split("\n", 1)[0]).toMatch(/, aligned$/);
    expect(capturedJson(["air", file, "--aligned"]).document.alignment.shown).toBe("aligned");
  });

  it("stands in a spreadsheet's last column, and in none without it", () => {
    for (const args of [
      ["sweep", "--steps", "2"],
      ["map", "--rows", "2", "--cols", "2"],
    ]) {
      const [verb = "", ...more] = args;
      const lines = (...options: string[]) =>
        captured([verb, reached, ...more, "--csv", ...options])
          .out.trimEnd()
          .split("\n");
      const [header, ...rows] = lines("--aligned");
      expect(header?.split(",").at(-1)).toBe("shown");
      expect(rows.length).toBeGreaterThan(1);
      for (const row of rows) expect(row.split(",").at(-1)).toBe("aligned");
      expect(`${lines()[0]},shown`).toBe(header);
    }
  });

  it("is written into the files of an envelope", () => {
    const out = join(folder.path, "cut.svg");
    const args = [
      ...["envelope", reached, "--aligned", "--stance", "driving", "--steer", "0"],
      ...["--section", "x=0", "--out", out, "--side", "left", "--budget", "1"],
    ];
    const { code } = captured(args, "", coarseClock(1));
    expect(code).toBe(0);
    expect(readFileSync(out, "utf8")).toContain("Truck, aligned");
  });

  it("refuses a truck without targets, with the mend", () => {
    const { code, out, error } = captured(["check", without, "--aligned"]);
    expect([code, out]).toEqual([2, ""]);
    expect(error).toMatch(/without\.json: alignment\.targets: is missing.*leave --aligned out/);
    expect(captured(["check", without]).code).not.toBe(2);
  });

  it("refuses targets at a stance that is out of reach as every verb refuses that stance", () => {
    const { code, out, error } = captured(["check", outOfReach, "--aligned"]);
    expect([code, out]).toEqual([2, ""]);
    expect(error).toMatch(/far\.json: stances\[0\]\.travel: 40 in: out of reach: .*the nearest that goes is/);
    expect(captured(["check", outOfReach])).toEqual({ code, out, error });
  });
});
