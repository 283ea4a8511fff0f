import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { withExampleAt } from "../../../src/setup/exampleMarks.ts";
import { captured, capturedJson } from "../captured.ts";
import { setupFolder } from "../setupFolder.ts";

const folder = setupFolder();
const demo = (): Record<string, unknown> =>
  JSON.parse(readFileSync("shared/ordered-knuckle.json", "utf8")) as Record<string, unknown>;
const file = folder.write("truck.json", demo());

type Vector = readonly [number, number, number];
const sum = (vectors: readonly Vector[]): number =>
  Math.hypot(...[0, 1, 2].map((i) => vectors.reduce((all, v) => all + v[i]!, 0)));
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

describe("the loads verb", () => {
  it("prints a document whose forces on each knuckle add up to nothing, and turn nothing about the origin", () => {
    const { code, document } = capturedJson(["loads", file, "--travel", "1 1/2", "--steer", "0.5"]);
    expect(code).toBe(0);
    expect(document).toMatchObject({
      units: "in",
      forceUnit: "lbf",
      stressUnit: "psi",
      grid: null,
      worst: [],
    });
    expect(document.cases).toHaveLength(14);
    const { document: pose } = capturedJson(["pose", file, "--travel", "1 1/2", "--steer", "0.5"]);
    for (const one of document.cases) {
      expect([one.travel, one.steer]).toEqual([1.5, 0.5]);
      expect(one.residual).toBeLessThan(1e-9);
      const { lowerBallJoint, upperBallJoint, tieRod } = one.on;
      const applied: { at: Vector; force: Vector; moment?: Vector }[] = one.applied;
      const forces: Vector[] = [...applied.map(({ force }) => force), lowerBallJoint, upperBallJoint, tieRod];
      expect(sum(forces)).toBeLessThan(1e-6);
      const at = pose[one.side];
      const moments = [
        ...applied.map((put) => cross(put.at, put.force)),
        ...applied.flatMap(({ moment }) => (moment ? [moment] : [])),
        cross(at.lowerBallJoint, lowerBallJoint),
        cross(at.upperBallJoint, upperBallJoint),
        cross(at.tieRodOuter, tieRod),
      ];
      expect(sum(moments)).toBeLessThan(1e-5);
      // The tie rod pulls or pushes along itself.
      const rod = at.tieRodInner.map((c: number, i: number) => c - at.tieRodOuter[i]) as Vector;
      expect(Math.hypot(...cross(rod, tieRod))).toBeLessThan(1e-6);
    }
    const standing = document.cases[0];
    expect(standing.applied[0].force[2]).toBeCloseTo(980, 9);
    expect(document.governs.shareOfYield).toBeGreaterThan(0);
    expect(document.weight.total).toBeCloseTo(8.4, 1);
  });

  it("tells each case where it is worst, one case alone, and in a file in millimeters newtons and MPa", () => {
    const { document } = capturedJson(["loads", file, "--case", "bump"]);
    expect(document.cases.map(({ side }: { side: string }) => side)).toEqual(["left", "right"]);
    expect(document.grid).toEqual({ travels: 16, steers: 9 });
    expect(document.worst.map(({ force }: { force: string }) => force)).toContain("bumpStop");
    for (const { size, bound, near } of document.worst) {
      expect(bound).toBeGreaterThan(size);
      expect(bound).toBeLessThan(1.01 * size);
      expect(near).toBe(true);
    }
    const mm = folder.write("mm.json", {
      ...JSON.parse(readFileSync("shared/compact-front-steer.json", "utf8")),
      masses: { corner: 400, unsprung: 35 },
      loads: { spring: { bodyMount: [0, 480, 560], armMount: [0, 500, 230] } },
    });
    const other = capturedJson(["loads", mm, "--travel", "0", "--steer", "0"]).document;
    expect(other).toMatchObject({
      units: "mm",
      forceUnit: "N",
      stressUnit: "MPa",
      weight: null,
      governs: null,
    });
    expect(other.cases[0].applied[0].force[2]).toBeCloseTo(400 * 9.80665, 6);
  });

  it("prints a table with what governs, its cautions and no verdict", () => {
    const { code, out } = captured(["loads", file, "--travel", "0", "--steer", "0"]);
    expect(code).toBe(0);
    expect(out).toMatch(/^What governs: the .* of the yield of /m);
    for (const words of ["Lower ball joint", "Of yield", "camber", "licensed", "common practice, no source"])
      expect(out).toContain(words);
    expect(out).not.toMatch(/\b(safe|strong enough|passes|OK)\b|✓/i);
  });

  it("remarks on a knuckle that is made as the example's", () => {
    const marked = folder.write("marked.json", withExampleAt(demo(), ["build"], "a knuckle"));
    const { code, error } = captured(["loads", marked, "--travel", "0", "--steer", "0"]);
    expect(code).toBe(0);
    expect(error).toMatch(
      /marked\.json: ⋯ \d+ numbers of this knuckle's build are from the example.*licensed engineer/,
    );
  });

  it("tells the weight of each variant's knuckle, in words and for a program", () => {
    const tubes = "shared/tubular-knuckle.json";
    const { document } = capturedJson(["loads", tubes, "--travel", "0"]);
    expect(document.weights.map(({ variant }: { variant: string | null }) => variant)).toEqual([
      null,
      "narrow hub face",
      "one inch more drop",
      "steeper pin",
      "lighter posts, no braces",
    ]);
    expect(document.weights[0]).toMatchObject({ total: document.weight.total, more: 0, unsprung: 95 });
    const { out } = captured(["loads", tubes, "--travel", "0"]);
    expect(out).toMatch(
      /^“lighter posts, no braces” +12\.4 lb +1\.4 lb less than the current truck’s +Unsprung/m,
    );
  });

  it("cut short by its budget, says so", () => {
    let now = 0;
    const clock = () => {
      now += 1000;
      return now;
    };
    const { out } = captured(["loads", file, "--budget", "0.5"], "", clock);
    expect(out).toContain("Not finished in the time allowed");
  });

  it.each([
    [{ masses: undefined }, [], "masses: "],
    [{ loads: undefined }, [], "loads.spring: "],
    [{ build: { material: "4130 normalised tube" } }, [], "build.material: "],
    [{}, ["--case", "bmp"], '--case: "bmp": no such case; did you mean "bump"?'],
    [{}, ["--travel", "40"], "--travel: "],
    [{}, ["--steer", "2"], "--steer: "],
  ])("refuses %o %o on one line with the key", (change, options, told) => {
    const broken = folder.write("broken.json", { ...demo(), ...change });
    const { code, out, error } = captured(["loads", broken, ...options]);
    const line = error.split("\n").filter((one) => !one.includes(": unusual: ") && one !== "");
    expect([code, out, line.length]).toEqual([2, "", 1]);
    expect(line[0]).toContain(told.split(": ")[0]);
    expect(line[0]).toContain(told.split(": ").at(-1)!.slice(0, 20));
  });

  it("--catalog goes in place of the program's own materials; a broken one, or one of parts, is refused with its key", () => {
    const materials = JSON.parse(readFileSync("shared/catalogs/materials.json", "utf8"));
    const stronger = { ...materials.items[5], yield: "300 ksi", ultimate: "400 ksi" };
    const sixth = (item: object) => ({ ...materials, items: materials.items.with(5, item) });
    const memberShare = (...options: string[]) => {
      const { document } = capturedJson(["loads", file, "--travel", "0", "--case", "bump", ...options]);
      return Math.max(
        ...document.cases.flatMap(
          ({ stresses }: { stresses: { kind: string; shareOfYield: number; material: string }[] }) =>
            stresses.filter((one) => one.material === stronger.name).map((one) => one.shareOfYield),
        ),
      );
    };
    expect(stronger.name).toBe("4130 normalized tube");
    const own = folder.write("our-materials.json", sixth(stronger));
    expect(memberShare("--catalog", own)).toBeCloseTo(memberShare() / 4, 9);
    const broken = folder.write("broken-materials.json", sixth({ ...stronger, yield: "300 kis" }));
    expect(captured(["loads", file, "--catalog", broken])).toMatchObject({
      code: 2,
      out: "",
      error: expect.stringContaining(`${broken}: items[5].yield: "300 kis": unknown unit "kis"`),
    });
    const { code, error } = captured(["loads", file, "--catalog", "shared/catalogs/brakes.json"]);
    expect([code, error]).toEqual([
      2,
      expect.stringMatching(
        /brakes\.json: kind: "brakes": no catalog of this kind is used here; give one of kind "materials"/,
      ),
    ]);
  });

  it("a force typed in pounds is put on as it is", () => {
    const forced = folder.write("forced.json", {
      ...demo(),
      loads: { ...(demo().loads as object), cases: [{ name: "push", kind: "force", up: "1234 lb" }] },
    });
    const { document } = capturedJson(["loads", forced, "--travel", "0"]);
    expect(document.cases[0].applied).toHaveLength(1);
    expect(document.cases[0].applied[0].force[2]).toBeCloseTo(1234, 9);
  });
});
