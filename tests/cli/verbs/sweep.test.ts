import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { demoDocument, lipAlone } from "../../studies/demoModel.ts";
import { captured, capturedJson } from "../captured.ts";
import { setupFolder } from "../setupFolder.ts";

const folder = setupFolder();
const lip = folder.write("lip.json", demoDocument(lipAlone()));
const high = folder.write("high.json", demoDocument({ truck: { body: [] }, travel: { bump: 16 } }));
const limited = join(import.meta.dirname, "..", "..", "..", "shared", "half-ton-limits.json");
const SIDE_KEYS = [
  "camber",
  "steerAngle",
  "toe",
  "caster",
  "kingpinInclination",
  "scrubRadius",
  "mechanicalTrail",
  "halfTrack",
  "wheelCenter",
];
const MOTION_KEYS = ["camberGain", "toeGain", "instantCenter", "swingArm"];

/** Cells of comma-separated values as RFC 4180 reads them. */
function cellsOf(csv: string): string[][] {
  return csv
    .trimEnd()
    .split("\n")
    .map((line) => [...`${line},`.matchAll(/("(?:[^"]|"")*"|[^,]*),/g)].map((found) => found[1] ?? ""))
    .map((cells) => cells.map((cell) => cell.replace(/^"|"$/g, "").replaceAll('""', '"')));
}

describe("sweep --json", () => {
  const { code, document } = capturedJson(["sweep", lip, "--steps", "5"]);

  it("has three tables of as many rows as steps, both ends included, in the file's units", () => {
    // Of the rows of a table none rubs: the truck does, steered in bump.
    expect(code).toBe(1);
    expect(Object.keys(document)).toEqual(["units", "byTravel", "bySteer", "byRoll", "worst"]);
    expect(document.byTravel.map((row: { travel: number }) => row.travel)).toEqual([
      expect.closeTo(-3.75, 12),
      expect.closeTo(-1.9375, 12),
      expect.closeTo(-0.125, 12),
      expect.closeTo(1.6875, 12),
      expect.closeTo(3.5, 12),
    ]);
    expect(document.bySteer.map((row: { steer: number }) => row.steer)).toEqual([-1, -0.5, 0, 0.5, 1]);
    expect(capturedJson(["sweep", high]).document.bySteer).toHaveLength(25);
  });

  it("has exactly the keys it promises in a row", () => {
    for (const [table, more, sideKeys] of [
      ["byTravel", ["rollCenter"], [...SIDE_KEYS, ...MOTION_KEYS]],
      ["bySteer", [], SIDE_KEYS],
    ] as const) {
      for (const row of document[table]) {
        expect(Object.keys(row)).toEqual(["travel", "steer", "status", "left", "right", "gaps", ...more]);
        for (const side of ["left", "right"]) expect(Object.keys(row[side])).toEqual(sideKeys);
      }
    }
    for (const row of document.byRoll) expect(Object.keys(row)).toEqual(["roll", "travel", "rollCenter"]);
    for (const row of document.worst)
      expect(Object.keys(row)).toEqual(["of", "travel", "steer", "status", "left", "right", "gaps"]);
    for (const row of [...document.byTravel, ...document.bySteer]) {
      expect(row.status).toBe("ok");
      expect(row.gaps.map((gap: object) => Object.keys(gap))).toEqual(
        new Array(2).fill(["part", "side", "gap"]),
      );
    }
  });

  it("agrees with `pose` at the same poses", () => {
    const row = document.bySteer[3];
    const { document: pose } = capturedJson(["pose", lip, "--steer", "0.5"]);
    const { halfTrack, ...same } = row.right;
    expect(pose.right).toMatchObject(same);
    expect(halfTrack).toBe(-pose.right.contactPatch[1]);
    expect(row.gaps.map((g: { gap: number }) => g.gap)).toEqual(pose.gaps.map((g: { gap: number }) => g.gap));
  });

  it("has each part's worst of all poses, where and as near as `check` finds it", () => {
    const { document: check } = capturedJson(["check", lip]);
    type Entry = { part: string; side: string; gap: number; travel: number; steer: number };
    expect(document.worst.map(({ of }: { of: object }) => of)).toEqual(
      check.parts.map(({ part, side }: Entry) => ({ part, side })),
    );
    for (const [i, { part, side, gap, travel, steer }] of check.parts.entries()) {
      const row = document.worst[i];
      expect(row).toMatchObject({ travel, steer });
      const own = row.gaps.find((one: Entry) => one.part === part && one.side === side);
      expect(own.gap).toBeCloseTo(gap, 6);
      for (const other of [...document.byTravel, ...document.bySteer])
        for (const one of other.gaps)
          if (one.part === part && one.side === side) expect(one.gap).toBeGreaterThanOrEqual(gap - 1e-9);
    }
  });

  it("has what `geometry` and `air` say of the same heights, and the shock where there is one", () => {
    const { document: swept } = capturedJson(["sweep", limited, "--steps", "5"]);
    const { document: geometry } = capturedJson(["geometry", limited, "--steps", "5"]);
    const { document: air } = capturedJson(["air", limited]);
    const named = air.stances[0];
    const at = capturedJson(["sweep", limited, "--steps", "2"]).document;
    let [ofGeometry, ofAir] = [0, 0];
    for (const row of swept.byTravel) {
      const same = geometry.byTravel.find(
        (one: { travel: number }) => Math.abs(one.travel - row.travel) < 1e-9,
      );
      if (same === undefined) continue;
      ofGeometry++;
      for (const key of MOTION_KEYS) expect(row.left[key]).toEqual(same.left[key]);
      expect(row.rollCenter).toEqual(same.rollCenter);
    }
    expect(Object.keys(named.left)).toEqual(expect.arrayContaining(["motionRatio", "wheelRate"]));
    for (const row of [...swept.byTravel, ...at.byTravel]) {
      const same = air.byTravel.find((one: { travel: number }) => Math.abs(one.travel - row.travel) < 1e-9);
      if (same !== undefined) {
        ofAir++;
        const { height, motionRatio, wheelRate } = same;
        expect(row.left.airSpring).toEqual({ height, motionRatio, wheelRate });
      }
      expect(Object.keys(row.left.shock)).toEqual(["length", "travel", "motionRatio"]);
      expect(row.left.shock.length + row.left.shock.travel).toBeCloseTo(16, 9);
    }
    expect(ofGeometry).toBeGreaterThanOrEqual(2);
    expect(ofAir).toBeGreaterThanOrEqual(2);
  });

  it("gives rows out of reach their joint and no numbers, exit 1", () => {
    const { code, document } = capturedJson(["sweep", high, "--steps", "9"]);
    expect(code).toBe(1);
    const out = document.byTravel.filter((row: { status: string }) => row.status !== "ok");
    expect(out.length).toBeGreaterThan(0);
    for (const row of out) {
      expect(row).toEqual({
        travel: expect.any(Number),
        steer: 0,
        status: "out of reach",
        side: "left",
        joint: "lower ball joint",
        along: "travel",
        startsAt: expect.any(Number),
      });
      expect(row.startsAt).toBeLessThan(row.travel);
      expect(row.startsAt).toBeGreaterThan(10);
    }
    expect(document.bySteer.every((row: { status: string }) => row.status === "ok")).toBe(true);
  });
});

describe("sweep --csv", () => {
  const quotedName = folder.write(
    "quoted.json",
    demoDocument({
      truck: { body: [{ name: 'lip, "front"', kind: "path", radius: 0.1, points: [[0, 36, 30]] }] },
    }),
  );

  it("names units in its header and has every number of the tables", () => {
    const { code, out } = captured(["sweep", lip, "--steps", "3", "--csv"]);
    expect(code).toBe(1);
    const [header, ...rows] = cellsOf(out);
    if (!header) throw new Error("no header");
    expect(header.slice(0, 4)).toEqual([
      "along",
      "travel (in)",
      "steer to the left (share of lock)",
      "status",
    ]);
    for (const name of [
      "left camber (deg)",
      "right half track (in)",
      "left wheel center Z (in)",
      "left camber gain (deg per in of travel)",
      "left instant center Y (in)",
      "roll center to the left (in)",
      "right gap to fender lip (in)",
    ]) {
      expect(header).toContain(name);
    }
    expect(rows.map(([along]) => along).slice(9)).toEqual([
      "worst of left fender lip",
      "worst of right fender lip",
    ]);
    expect(rows).toHaveLength(11);
    // Whoever files the table files the worst gap there is.
    const own = header.indexOf("left gap to fender lip (in)");
    const least = Math.min(...rows.filter((row) => row[own] !== "").map((row) => Number(row[own])));
    expect(least).toBeLessThan(0);
    expect(least).toBeCloseTo(capturedJson(["check", lip]).document.worst.gap, 3);
    expect(rows[9]?.[own]).toBe(String(least));
    for (const row of rows) expect(row).toHaveLength(header.length);
    const { document } = capturedJson(["sweep", lip, "--steps", "3"]);
    const last = rows[5] ?? [];
    const cell = (name: string) => Number(last[header.indexOf(name)]);
    const told = (value: number) => Number(value.toFixed(5));
    expect(last.slice(0, 4)).toEqual(["steer", "0", "1", "ok"]);
    expect(cell("left camber (deg)")).toBe(told(document.bySteer[2].left.camber));
    expect(cell("right wheel center Y (in)")).toBe(told(document.bySteer[2].right.wheelCenter[1]));
    // Never more than it is.
    const { gap } = document.bySteer[2].gaps[1];
    expect(cell("right gap to fender lip (in)")).toBeLessThanOrEqual(gap);
    expect(cell("right gap to fender lip (in)")).toBeGreaterThan(gap - 1e-5);
    const [, high] = rows;
    const inRow = (row: readonly string[] | undefined, name: string) => row?.[header.indexOf(name)];
    expect(inRow(high, "left camber gain (deg per in of travel)")).toBe(
      String(told(document.byTravel[1].left.camberGain)),
    );
    const rolled = rows[8];
    expect(rolled?.slice(0, 4)).toEqual(["roll", "0", "0", "ok"]);
    expect(inRow(rolled, "body roll (deg)")).toBe(String(told(document.byRoll[2].roll)));
    expect(inRow(rolled, "left wheel's travel (in)")).toBe(String(told(document.byRoll[2].travel.left)));
    expect(inRow(rolled, "roll center to the left (in)")).toBe(String(told(document.byRoll[2].rollCenter.y)));
    expect(inRow(rolled, "left camber (deg)")).toBe("");
    // Of air spring and shock there is a column where the setup has them.
    expect(header.join()).not.toMatch(/spring|shock|wheel rate/);
    const [more] = cellsOf(captured(["sweep", limited, "--steps", "2", "--csv"]).out);
    for (const name of ["left wheel rate (lb per in)", "right shock travel from extended (in)"])
      expect(more).toContain(name);
  });

  it("quotes names that hold commas and quotes", () => {
    const [header, row] = cellsOf(captured(["sweep", quotedName, "--steps", "2", "--csv"]).out);
    expect(header).toContain('left gap to lip, "front" (in)');
    expect(row).toHaveLength(header?.length ?? 0);
  });

  it("leaves the numbers of a row out of reach empty and names the joint", () => {
    const { code, out } = captured(["sweep", high, "--steps", "9", "--csv"]);
    expect(code).toBe(1);
    const [header, ...rows] = cellsOf(out);
    const bad = rows.find((row) => row[3] !== "ok");
    expect(bad?.[3]).toBe("left lower ball joint out of reach");
    expect(bad?.slice(4).every((cell) => cell === "")).toBe(true);
    expect(bad).toHaveLength(header?.length ?? 0);
    expect(out).not.toMatch(/NaN|undefined|Infinity|null/);
  });
});

describe("sweep for a person", () => {
  it("shows both tables with units, one by travel for both sides of a mirrored truck", () => {
    const { code, out } = captured(["sweep", lip, "--steps", "3"]);
    expect(code).toBe(1);
    expect(out).toMatch(/^Where each part comes nearest of all poses\n *Part +Side +Travel/m);
    expect(out).toMatch(/^ *fender lip +left +\S.*-\d/m);
    expect(out).toMatch(/^By travel, steering straight ahead, either side\n *Travel \(in\) +Camber \(deg\)/m);
    expect(out).toMatch(
      /^By steering at travel 0, \+ = left turn, left side\n *Steer \(lock\) +Camber \(deg\)/m,
    );
    expect(out).toMatch(/^By steering at travel 0, \+ = left turn, right side$/m);
    expect(out.split("\n")[1]).toMatch(
      /^Closest in these rows: the (left|right) tire is .* from the fender lip /,
    );
  });

  it("shows dashes and says why where rows cannot be reached", () => {
    const { code, out } = captured(["sweep", high, "--steps", "9"]);
    expect(code).toBe(1);
    expect(out).toMatch(/\d of 18 rows cannot be reached \(left lower ball joint\)/);
    expect(out).toMatch(/^ +16 +- +-/m);
  });

  it("says with its exit code that a row rubs", () => {
    const rubbing = folder.write(
      "rubbing.json",
      demoDocument({ truck: { body: [{ name: "peg", kind: "path", radius: 1, points: [[0, 32, 27]] }] } }),
    );
    const { code, out } = captured(["sweep", rubbing, "--steps", "3"]);
    expect(code).toBe(1);
    expect(out).toMatch(/the left wheel rubs the peg by/);
  });
});

describe("sweep past a limit", () => {
  const args = ["sweep", "shared/half-ton-limits.json", "--steps", "5"];
  const barred = [...args, "--variant", "spring bracket an inch lower"];

  it("says which rows the truck cannot come to and by which limit, and exits 1", () => {
    const { code, out } = captured(barred);
    expect(code).toBe(1);
    expect(out).toMatch(
      /^1 of 10 rows, marked !, is past the air spring compression limit: the truck cannot come there\.$/m,
    );
    expect(out).toMatch(/^ *!3 1\/2 /m);
    expect(captured(args).out).not.toContain("!");
    // It rubs, though in no row of the tables: steered in bump. Narrower it does not.
    expect(captured(args).code).toBe(1);
    expect(captured([...args, "--variant", "narrow hub face"]).code).toBe(0);
  });

  it("names the limits in its document and its table for a spreadsheet", () => {
    const { document } = capturedJson(barred);
    const past = document.byTravel.flatMap((row: { past?: { name: string }[] }) => row.past ?? []);
    expect(past.map(({ name }: { name: string }) => name)).toEqual([
      "air spring compression",
      "air spring compression",
    ]);
    expect(captured([...barred, "--csv"]).out).toContain(
      ",past left air spring compression; right air spring compression,",
    );
  });
});
