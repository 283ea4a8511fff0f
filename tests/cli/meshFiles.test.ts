import { mkdirSync, readFileSync, realpathSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { captured, capturedJson } from "./captured.ts";
import { setupFolder } from "./setupFolder.ts";

const shared = new URL("../../shared/", import.meta.url);
const demo = readFileSync(new URL("half-ton-on-air.json", shared), "utf8");
const scanned = join(shared.pathname, "scanned-fender.json");
const folder = setupFolder();
mkdirSync(join(folder.path, "scans"));

/** A panel over the tire, inches, 6 in above the fender lip. */
const PANEL = "v -9 20 36.5\nv 9 20 36.5\nv 9 36 36.5\nv -9 36 36.5\nf 1 2 3 4\n";
folder.write("panel.obj", PANEL);
folder.write("scans/panel.obj", PANEL);
folder.write("broken.obj", PANEL.replace("v 9 20", "v 9 twenty"));
folder.write("empty.stl", "");
mkdirSync(join(folder.path, "folder.stl"));
symlinkSync("loop.stl", join(folder.path, "loop.stl"));

/** The demo truck with nothing but one mesh file for a body. */
function setupWith(file: string, more: object = {}): string {
  const document = JSON.parse(demo);
  document.truck.body = [{ name: "panel", kind: "mesh", file, ...more }];
  document.variants = [];
  return JSON.stringify(document);
}

const path = (file: string) => folder.write("truck.json", setupWith(file));

describe("a mesh file beside the setup", () => {
  it("is read by every verb, wherever they are called from", () => {
    for (const verb of ["pose", "check", "sweep"]) {
      const { code, out, error } = captured([verb, path("panel.obj")]);
      expect([verb, code, error]).toEqual([verb, 0, ""]);
      expect(out).toContain("panel");
    }
  });

  it("gives the gaps that the same mesh gives inside the setup", () => {
    const inline = JSON.parse(setupWith("x"));
    inline.truck.body = [
      {
        name: "panel",
        kind: "mesh",
        vertices: [
          [-9, 20, 36.5],
          [9, 20, 36.5],
          [9, 36, 36.5],
          [-9, 36, 36.5],
        ],
        triangles: [
          [0, 1, 2],
          [0, 2, 3],
        ],
      },
    ];
    const typed = capturedJson(["check", folder.write("inline.json", inline)]).document;
    const read = capturedJson(["check", path("panel.obj")]).document;
    expect(read.parts.length).toBeGreaterThan(0);
    // A file's inches are multiplied, typed ones rounded once: the last digits may differ.
    for (const key of ["gap", "bound", "travel", "steer"])
      read.parts.forEach((entry: Record<string, number>, i: number) => {
        expect(entry[key]).toBeCloseTo(typed.parts[i][key], 9);
      });
  });

  it("may lie in a folder beside it, and beside the current folder for standard input", () => {
    expect(captured(["pose", path("scans/panel.obj")]).code).toBe(0);
    const before = process.cwd();
    process.chdir(folder.path);
    try {
      expect(captured(["pose", "-"], setupWith("panel.obj")).code).toBe(0);
    } finally {
      process.chdir(before);
    }
  });

  it("finds what the scanned fender rubs", () => {
    const { code, document } = capturedJson(["check", scanned]);
    expect(code).toBe(1);
    const worst = document.worst;
    expect(worst.part).toBe("scanned fender");
    // The tire's top meets the flange behind the lip, 12 mm or so deep; the lip alone rubs by 3/16 in.
    expect(worst.gap * 25.4).toBeLessThan(-5);
    expect(worst.gap * 25.4).toBeGreaterThan(-20);
  });

  it.each([
    ["missing.stl", /there is no such file; check the name and the folder/],
    ["empty.stl", /is empty; export or copy it again/],
    ["broken.obj", /line 2: "twenty" where a number should be; export it again/],
    ["folder.stl", /is no file; name the mesh file itself/],
    ["loop.stl", /is a link that leads to itself/],
    ["panel.step", /there is no such file/],
    ["truck.json", /is no mesh file by its name; it should end in/],
    ["../panel.obj", /must lie in the setup's folder, .*; copy it there, or allow it with --allow-outside$/m],
    [
      join(folder.path, "panel.obj"),
      /must lie in the setup's folder, .*; copy it there, or allow it with --allow-outside$/m,
    ],
  ])("named %s is refused on one line with exit code 2", (file, mend) => {
    const { code, out, error } = captured(["check", path(file)]);
    expect([code, out]).toEqual([2, ""]);
    expect(error).toMatch(/^[^\n]*truck\.json: truck\.body\[0\]\.file: [^\n]*\n$/);
    expect(error).toMatch(mend);
  });
});

describe("a mesh file outside the setup's folder", () => {
  const elsewhere = setupFolder();
  const outside = elsewhere.write("outside.obj", PANEL);
  symlinkSync(outside, join(folder.path, "link.obj"));
  symlinkSync(elsewhere.path, join(folder.path, "linked folder"));
  symlinkSync("panel.obj", join(folder.path, "inside link.obj"));

  it.each([["link.obj"], ["linked folder/outside.obj"]])(
    "is refused when %s leads there, with where and the mend, and read with --allow-outside",
    (file) => {
      const { code, out, error } = captured(["pose", path(file)]);
      expect([code, out]).toEqual([2, ""]);
      expect(error).toContain(
        `truck.json: truck.body[0].file: "${file}": is a link to "${realpathSync(outside)}", which is outside the setup's folder; copy the mesh there, or allow it with --allow-outside\n`,
      );
      expect(captured(["pose", path(file), "--allow-outside"])).toMatchObject({ code: 0, error: "" });
    },
  );

  it("is read by a path that leaves the folder with --allow-outside, by every verb", () => {
    for (const verb of ["pose", "check", "sweep", "limits"]) {
      expect([verb, captured([verb, path(outside)]).code]).toEqual([verb, 2]);
      expect([verb, captured([verb, path(outside), "--allow-outside"])]).toMatchObject([verb, { error: "" }]);
    }
    const above = folder.write("scans/above.json", setupWith("../panel.obj"));
    expect(captured(["pose", above]).code).toBe(2);
    expect(captured(["pose", above, "--allow-outside"]).code).toBe(0);
  });

  it("is not one that a link inside the folder leads to, nor one beside a setup that is a link itself", () => {
    expect(captured(["pose", path("inside link.obj")])).toMatchObject({ code: 0, error: "" });
    const setup = path("panel.obj");
    const link = join(elsewhere.path, "truck link.json");
    symlinkSync(setup, link);
    expect(captured(["pose", link])).toMatchObject({ code: 0, error: "" });
  });
});
