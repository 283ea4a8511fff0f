import { describe, expect, it } from "vitest";
import { demoDocument, lipAlone, movingParts } from "../../studies/demoModel.ts";
import { captured, capturedJson } from "../captured.ts";
import { setupFolder } from "../setupFolder.ts";

const folder = setupFolder();
const { truck } = lipAlone();
const lip = folder.write("lip.json", demoDocument({ truck, hardware: null }));
const far = folder.write(
  "far.json",
  demoDocument({ truck: { ...truck, steering: { stroke: 6 } }, hardware: null, travel: { bump: 16 } }),
);
const clear = folder.write(
  "clear.json",
  demoDocument({ truck, hardware: null, knuckle: { hubFace: "5 5/16" } }),
);
const bare = folder.write("bare.json", demoDocument({ truck: { body: [] }, hardware: null }));
const near = folder.write("near.json", demoDocument({ truck, allowance: 3, hardware: movingParts() }));
const SIDES = ["left", "right"] as const;

describe("map --json", () => {
  const { code, document } = capturedJson(["map", lip, "--rows", "4", "--cols", "5"]);

  it("has exactly the keys it promises, rows by travel, columns by steer", () => {
    expect(code).toBe(1);
    expect(Object.keys(document)).toEqual([
      "units",
      "allowance",
      "rows",
      "cols",
      "left",
      "right",
      "reach",
      "contours",
      "steerAtHeight",
      "lowestAtSteer",
      "always",
      "limits",
    ]);
    expect(document).toMatchObject({ units: "in", allowance: 0.25, always: [], limits: [] });
    expect([document.rows[0], document.rows[3]]).toEqual([-3.75, 3.5]);
    expect(document.cols).toEqual([-1, -0.5, 0, 0.5, 1]);
    for (const side of SIDES) {
      expect(Object.keys(document[side])).toEqual(["gap", "part", "point"]);
      for (const grid of [...Object.values(document[side]), document.reach] as unknown[][][]) {
        expect(grid.map((row) => row.length)).toEqual([5, 5, 5, 5]);
      }
    }
  });

  it("agrees with `pose` at every cell", () => {
    for (const [i, travel] of document.rows.entries()) {
      const at = document.cols.flatMap((steer: number) => ["--at", `${travel},${steer}`]);
      const { document: poses } = capturedJson(["pose", lip, ...at]);
      for (const [j] of document.cols.entries()) {
        for (const side of SIDES) {
          const gap = poses.poses[j].gaps.find((entry: { side: string }) => entry.side === side);
          expect(document[side].gap[i][j]).toBeCloseTo(gap.gap, 6);
          expect(document[side].part[i][j]).toBe(gap.part);
          for (const axis of [0, 1, 2]) {
            expect(Math.abs(document[side].point[i][j][axis] - gap.point[axis])).toBeLessThan(0.01);
          }
        }
      }
    }
  });

  it("tells how far it steers and how low it goes, each wheel and either, in the file's units", () => {
    expect(document.steerAtHeight.map((row: { travel: number }) => row.travel)).toEqual(document.rows);
    expect(document.lowestAtSteer.map((row: { steer: number }) => row.steer)).toEqual(document.cols);
    const top = document.steerAtHeight[3];
    expect(Object.keys(top)).toEqual(["travel", "leftTurn", "rightTurn"]);
    expect(top.leftTurn.touch.either).toEqual({
      steer: expect.any(Number),
      stop: "touch",
      side: "left",
      part: "fender lip",
      gap: expect.any(Number),
      point: [expect.any(Number), expect.any(Number), expect.any(Number)],
    });
    const limit = top.leftTurn.touch.either.steer;
    const gapsAt = (steer: number) =>
      capturedJson(["pose", lip, "--travel", "3.5", "--steer", String(steer)]).document.gaps;
    const least = (steer: number) => Math.min(...gapsAt(steer).map(({ gap }: { gap: number }) => gap));
    expect(least(limit)).toBeGreaterThanOrEqual(0);
    expect(least(limit + 1e-4)).toBeLessThan(0);
    expect(top.rightTurn.touch.either).toMatchObject({ side: "right", steer: -limit });
    expect(document.steerAtHeight[0].leftTurn.touch.either).toEqual({ steer: 1, stop: "end" });
    const lock = document.lowestAtSteer[4];
    expect(Object.keys(lock)).toEqual(["steer", "touch", "allowance"]);
    expect(lock.touch).toMatchObject({ from: 0, either: { stop: "touch", part: "fender lip" } });
    expect(lock.touch.either.travel).toBe(Math.min(lock.touch.left.travel, lock.touch.right.travel));
    expect(lock.allowance.either.travel).toBeLessThan(lock.touch.either.travel);
  });

  it("draws contours of travel and steer at 0 and at the allowance", () => {
    const { contours } = capturedJson(["map", lip]).document;
    for (const side of SIDES) {
      for (const level of ["touch", "allowance"]) {
        expect(contours[side][level].length).toBeGreaterThan(0);
        for (const [travel, steer] of contours[side][level].flat()) {
          expect(travel).toBeGreaterThan(2);
          expect(travel).toBeLessThanOrEqual(3.5);
          expect(Math.abs(steer)).toBeLessThanOrEqual(1);
        }
      }
    }
  });

  it("is null out of reach, with the joint and where it starts", () => {
    const { code: limited, document: out } = capturedJson(["map", far, "--rows", "6", "--cols", "7"]);
    expect(limited).toBe(1);
    expect(out.limits.length).toBeGreaterThan(0);
    const reasons = out.reach.flat();
    let unreached = 0;
    for (const [i, reason] of reasons.entries()) {
      const [row, col] = [Math.floor(i / 7), i % 7];
      for (const side of SIDES) {
        expect(out[side].gap[row][col] === null).toBe(reason !== null);
        expect(out[side].part[row][col] === null).toBe(reason !== null);
        expect(out[side].point[row][col] === null).toBe(reason !== null);
      }
      if (reason === null) continue;
      unreached++;
      expect(Object.keys(reason)).toEqual(["side", "joint", "along", "startsAt"]);
      const asked = reason.along === "travel" ? out.rows[row] : out.cols[col];
      expect(Math.abs(reason.startsAt)).toBeLessThan(Math.abs(asked));
    }
    expect(unreached).toBeGreaterThan(5);
    expect(reasons.length - unreached).toBeGreaterThan(5);
    expect(new Set(reasons.flatMap((r: { along: string } | null) => r?.along ?? []))).toEqual(
      new Set(["travel", "steer"]),
    );
    expect(out.steerAtHeight.at(-1)).toEqual({ travel: 16, reach: expect.any(Object) });
    const stops = out.steerAtHeight.flatMap((row: { leftTurn?: { touch: { either: { stop: string } } } }) =>
      row.leftTurn ? [row.leftTurn.touch.either.stop] : [],
    );
    expect(stops).toContain("reach");
  });

  it("of a truck without parts is null everywhere, in reach", () => {
    const { code: fine, document: out } = capturedJson(["map", bare, "--rows", "2", "--cols", "2"]);
    expect(fine).toBe(0);
    expect(out.left).toEqual({
      gap: [
        [null, null],
        [null, null],
      ],
      part: [
        [null, null],
        [null, null],
      ],
      point: [
        [null, null],
        [null, null],
      ],
    });
    expect(out.reach).toEqual(out.left.gap);
    expect(out.contours.left).toEqual({ touch: [], allowance: [] });
  });

  it("lists what rides together nearer than the allowance, and ends the curves at it", () => {
    const { document: out } = capturedJson(["map", near, "--rows", "2", "--cols", "3"]);
    expect(out.always.length).toBeGreaterThan(0);
    const { document: pose } = capturedJson(["pose", near]);
    for (const { part, side, gap } of out.always) {
      const entry = pose.gaps.find((e: { part: string; side: string }) => e.part === part && e.side === side);
      expect(entry.gap).toBeCloseTo(gap, 9);
      expect(gap).toBeLessThan(3);
    }
    for (const { leftTurn } of out.steerAtHeight) {
      const { stop, steer, ride } = leftTurn.allowance.either;
      expect({ stop, steer, ride }).toEqual({ stop: "touch", steer: 0, ride: "together" });
    }
  });
});

describe("map --csv", () => {
  it("has one line a side and cell, with units in its header", () => {
    const { code, out } = captured(["map", lip, "--csv", "--rows", "3", "--cols", "5"]);
    expect(code).toBe(1);
    const [header, ...lines] = out.trimEnd().split("\n");
    expect(header).toBe(
      "side,travel (in),steer to the left (share of lock),gap (in),part,x (in),y (in),z (in),status",
    );
    expect(lines).toHaveLength(30);
    const { document } = capturedJson(["map", lip, "--rows", "3", "--cols", "5"]);
    const cells = lines[29]!.split(",");
    expect(cells.slice(0, 3)).toEqual(["right", "3.5", "1"]);
    // Never more than it is.
    const gap = document.right.gap[2][4];
    expect(Number(cells[3])).toBeLessThanOrEqual(gap);
    expect(Number(cells[3])).toBeGreaterThan(gap - 1e-5);
    expect([cells[4], cells[8]]).toEqual(["fender lip", "ok"]);
    expect(cells.slice(5, 8).map(Number)).toEqual(
      document.right.point[2][4].map((x: number) => Number(x.toFixed(5))),
    );
  });

  it("leaves cells out of reach empty and names the joint", () => {
    const { out } = captured(["map", far, "--csv", "--rows", "5", "--cols", "5"]);
    const bad = out.split("\n").filter((line) => line.endsWith("out of reach"));
    expect(bad.length).toBeGreaterThan(0);
    for (const line of bad)
      expect(line).toMatch(/^(left|right),[^,]+,[^,]+,,,,,,(left|right) .+ out of reach$/);
    expect(out).not.toMatch(/NaN|undefined|Infinity|null/);
  });
});

describe("map for a person", () => {
  it("marks rubs and close cells beside the number, bump on top, and tells both curves", () => {
    const { code, out } = captured(["map", lip, "--rows", "5", "--cols", "5"]);
    expect(code).toBe(1);
    const lines = out.split("\n");
    expect(lines[1]).toMatch(
      /^At 3 1\/2 in of bump it steers to 39% of left lock before the fender lip touches on the left; at \d+% of (left|right) lock it comes down to 3 \d+\/\d+ in of bump before/,
    );
    expect(out).toContain("x rubs, ~ nearer than 1/4 in, -- out of reach");
    const header = lines.findIndex((line) => /^Travel \(in\) +-100/.test(line));
    expect(lines[header + 2]).toMatch(/^ +3 1\/2 +-\d+x +-\d+x +11 +-\d+x +-\d+x$/);
    expect(lines[header + 6]).toMatch(/^ +-3 3\/4( +\d+){5}$/);
    expect(out).toMatch(/^How far it steers at each height, either wheel$/m);
    expect(out).toMatch(/^ +3 1\/2 +39% fender lip, left +25% fender lip, left +39% fender lip, right/m);
    expect(out).toMatch(/^ +100% +3 3\/16 fender lip, (left|right) +2 3\/4 fender lip, (left|right)$/m);
    expect(out).toContain("check looks at every pose");
    expect(out).toContain("Measure twice before cutting");
    // No line breaks off in blanks, and none is told by color.
    expect(out).not.toMatch(/ $/m);
    expect(out.includes("\u001b")).toBe(false);
  });

  it("says so when nothing touches, exit 0", () => {
    const { code, out } = captured(["map", clear, "--rows", "3", "--cols", "3"]);
    expect(code).toBe(0);
    expect(out).toContain("Nothing touches at any height or steering input below.");
    expect(out).toMatch(/- \(lock\)/);
    expect(out).toMatch(/- \(full bump\)/);
  });

  it("names limits of reach and shows dashes there, exit 1", () => {
    const { code, out } = captured(["map", far, "--rows", "6", "--cols", "7"]);
    expect(code).toBe(1);
    expect(out).toMatch(/cannot follow past/);
    expect(out).toMatch(/^ +16( +--){7}$/m);
    expect(out).toMatch(/out of reach: left lower ball joint/);
    expect(out).toMatch(/- \(\d+%: (left|right) outer tie rod end\)/);
  });

  it("says that nothing is measured, and what no pose changes", () => {
    expect(captured(["map", bare, "--rows", "2", "--cols", "2"]).out).toContain("Nothing is measured");
    expect(captured(["map", near, "--rows", "2", "--cols", "2"]).out).toMatch(
      /^At every pose: .+ on the left, gap .+ in\.$/m,
    );
  });
});

describe("map refuses", () => {
  it.each([
    ["--rows", "1"],
    ["--cols", "2.5"],
    ["--rows", "1001"],
    ["--cols", "many"],
  ])("%s %s, on one line", (option, value) => {
    const { code, out, error } = captured(["map", lip, option, value]);
    expect([code, out]).toEqual([2, ""]);
    expect(error).toMatch(/must be a whole number from 2 to 1000/);
    expect(error).toContain(option);
    expect(error.trimEnd().split("\n")).toHaveLength(1);
  });

  it("--csv with --json", () => {
    const { code, error } = captured(["map", lip, "--csv", "--json"]);
    expect(code).toBe(2);
    expect(error).toMatch(/--csv.*cannot be used with --json/);
  });
});
