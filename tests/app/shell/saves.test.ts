import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { knuckleFile, shapeFile } from "../../../src/app/parts/reportFiles.ts";
import { reportSaves } from "../../../src/app/shell/saves/reportSaves.ts";
import { truckOf } from "../../../src/app/state/truck.ts";
import { workbench } from "../../../src/app/state/workbench.ts";
import { fileStem, fileWords, knuckleStem } from "../../../src/studies/wording/fileStem.ts";

/** A shipped setup on the board, and the truck it is. */
function onBoard(file: string, without: readonly string[] = []) {
  const typed = JSON.parse(readFileSync(`shared/${file}`, "utf8")) as Record<string, unknown>;
  for (const block of without) delete typed[block];
  const text = JSON.stringify(typed);
  workbench.getState().openDocument({ document: typed, file });
  const made = truckOf(text, file, null);
  if (!made.ok) throw new TypeError(made.issues[0]!.mend);
  return made.value;
}

describe("the list of everything that can be saved", () => {
  it("has each report that a truck has, and none that its setup says nothing of", () => {
    const ofFiles = (...of: Parameters<typeof onBoard>) =>
      reportSaves(onBoard(...of)).map((one) => one.file.replace(/^.*-(?=[a-z]+\.)/, ""));
    const always = ["check.json", "pose.json", "map.json", "sweep.json", "geometry.json", "floor.json"];
    const asked = ["change.json", "window.json", "loads.json"];
    expect(ofFiles("half-ton-limits.json")).toEqual([
      ...[...always, "limits.json", "air.json", "align.json", "change.json"],
      ...["window.json", "loads.json"],
    ]);
    const plain = ofFiles("compact-front-steer.json", ["alignment", "limits", "airSpring"]);
    expect(plain).toEqual([...always, ...asked]);
  });

  it("names no two files alike, and each for the truck rather than for the file it came in", () => {
    const files = reportSaves(onBoard("half-ton-limits.json")).map(({ file }) => file);
    expect(new Set(files).size).toBe(files.length);
    for (const file of files)
      expect(file).toMatch(/^fern-street-shop-half-ton-aligned-and-on-bags-[a-z]+\.json$/);
  });

  it("tells the unit of every shape", () => {
    const names = (file: string) => {
      const truck = onBoard(file);
      const of = (format: "stl" | "glb" | "dxf" | "svg", isCut: boolean) =>
        shapeFile(truck, { format, choice: "whole", travel: 0, plane: isCut ? { axis: "x", at: 0 } : null })
          .name;
      return [of("stl", false), of("glb", false), of("dxf", true), of("svg", true)];
    };
    expect(names("half-ton-limits.json")).toEqual([
      "Swept space, surface (STL, in mm)",
      "Swept space, surface (GLB, in meters)",
      "Swept space, section (DXF, 1:1 in inches)",
      "Swept space, section (SVG, prints 1:1)",
    ]);
    expect(names("compact-front-steer.json")[2]).toBe("Swept space, section (DXF, 1:1 in millimeters)");
  });
});

describe("the name of a file", () => {
  it("is the truck's and its variant's, of letters that every system takes", () => {
    expect(fileStem({ name: "Río Grande: C/K “10”", variant: null }, "a.json")).toBe("rio-grande-c-k-10");
    expect(fileStem({ name: "Shop truck", variant: "hub face 6 1/8" }, "a.json")).toBe(
      "shop-truck-hub-face-6-1-8",
    );
  });

  it("is the file's where the truck has no name of its own", () => {
    expect(fileStem({ name: "Untitled setup", variant: null }, "half.ton.json")).toBe("half.ton");
    expect(fileStem({ name: "—", variant: null }, "")).toBe("truck");
  });

  it("keeps letters of any script, and ends on none of its hyphens", () => {
    expect(fileWords("грузовик 7", 40)).toBe("грузовик-7");
    expect(fileWords("one two", 4)).toBe("one");
  });

  it("is cut by its bytes in a file's name, at whole letters", () => {
    expect(fileWords("грузовик", 5)).toBe("гр");
    expect(fileWords("卡车", 5)).toBe("卡");
    // Letters with marks that no single code has.
    expect(fileWords("ट्रक ट्रक", 14)).toBe("ट्रक");
    expect(fileWords("ट्रक", 5)).toBe("");
    const long = { name: "車".repeat(200), variant: "ж".repeat(200) };
    expect(new TextEncoder().encode(fileStem(long, "a.json")).length).toBe(90 + 1 + 50);
    expect(fileStem({ name: "Untitled setup", variant: null }, `${"車".repeat(80)}.json`)).toBe(
      "車".repeat(30),
    );
  });

  it("of a knuckle on order is its order's, and its variant's where it is one: no two overwrite each other", () => {
    const knuckle = { hubFace: "5 1/4" };
    const typed = JSON.parse(readFileSync("shared/ordered-knuckle.json", "utf8"));
    const variants = [{ name: "Closer in, 1/4", patch: { knuckle } }];
    const fileOf = (variant: string | null) => {
      const made = truckOf(JSON.stringify({ ...typed, variants }), "t.json", variant);
      if (!made.ok) throw new TypeError(made.issues[0]!.mend);
      return knuckleFile(made.value, "jig", "The jig sheet", () => ({})).file;
    };
    expect(fileOf(null)).toBe("TS-014-tamarack-street-short-bed-jig.json");
    expect(fileOf("Closer in, 1/4")).toBe("TS-014-tamarack-street-short-bed-closer-in-1-4-jig.json");
    const plain = { name: "t", variant: "B", order: { number: "7", customer: null } };
    expect(knuckleStem(plain, "t.json")).toBe("7-b");
    expect(knuckleStem({ ...plain, variant: null }, "t.json")).toBe("7");
    expect(knuckleStem({ ...plain, order: null }, "t.json")).toBe("t-b");
  });

  it("of several variants that come to the same words is another for each: none overwrites another", () => {
    const wheel = "current truck, P235/70R15 on 15 × 8 in, backspacing";
    const variantNames = ["hub face 5 1/4", "hub face 5-1/4", "★", "hub face 5 1/4 2", `${wheel} 4 in`];
    variantNames.push(`${wheel} 4 1/2 in`, "☆");
    const stems = variantNames.map((variant) => fileStem({ name: "t", variant, variantNames }, "a.json"));
    expect(stems.slice(0, 4)).toEqual([
      ...["t-hub-face-5-1-4", "t-hub-face-5-1-4-2", "t-variant-2", "t-hub-face-5-1-4-2-2"],
    ]);
    expect(new Set([...stems, fileStem({ name: "t", variant: null, variantNames }, "a.json")]).size).toBe(8);
  });

  it("is none that a system keeps for a device", () => {
    const stems = ["CON", "Lpt1", "con.json", "Contour", "Com 1"].map((name) =>
      fileStem({ name, variant: null }, "a.json"),
    );
    expect(stems).toEqual(["con_", "lpt1_", "con-json", "contour", "com-1"]);
    expect(fileStem({ name: "Con", variant: "low" }, "a.json")).toBe("con-low");
    expect(fileStem({ name: "Untitled setup", variant: null }, "nul.tar.json")).toBe("nul_.tar");
  });
});
