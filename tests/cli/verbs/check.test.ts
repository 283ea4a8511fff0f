import { describe, expect, it } from "vitest";
import { demoDocument, lipAlone } from "../../studies/demoModel.ts";
import { captured, capturedJson } from "../captured.ts";
import { setupFolder } from "../setupFolder.ts";

const DEMO = "shared/half-ton-on-air.json";
const folder = setupFolder();
const lip = folder.write("lip.json", demoDocument({ ...lipAlone(), hardware: null }));
const bare = folder.write("bare.json", demoDocument({ truck: { body: [] }, hardware: null }));
const high = folder.write(
  "high.json",
  demoDocument({ truck: { body: [] }, hardware: null, travel: { bump: 16 } }),
);
const wide = folder.write(
  "wide.json",
  demoDocument({ truck: { body: [], steering: { stroke: 7 } }, hardware: null }),
);

describe("check of the demo truck", () => {
  it("says that it rubs and where, exit 1", () => {
    const { code, out, error } = captured(["check", DEMO]);
    expect([code, error]).toEqual([1, ""]);
    const [name, sentence] = out.split("\n");
    expect(name).toBe("Fern Street shop half-ton on air");
    expect(sentence).toMatch(
      /^The tire rubs the fender lip on both sides by \d+\/16 in at .*, the left one steered to \d+% of/,
    );
    expect(out).toMatch(/^fender lip +left +rubs +-\d+\/\d+ /m);
    expect(out).toMatch(
      /^Part +Side +Verdict +Gap \(in\) +Travel \(in\) +Steer \(lock\) +Point X, Y, Z \(in\)$/m,
    );
    expect(out).toContain("no pose in range is worse by more than 0.0039 in");
  });

  it("says that the narrow variant clears, exit 0", () => {
    const { code, out, error } = captured(["check", DEMO, "--variant", "narrow hub face"]);
    expect([code, error]).toEqual([0, ""]);
    expect(out.split("\n")[1]).toMatch(/^Everything clears: the closest is the fender lip, /);
  });

  it("carries its cautions", () => {
    const { out } = captured(["check", lip]);
    expect(out).toMatch(/Measure twice/);
    expect(out).toMatch(/not a statement of safety/);
    expect(out).toMatch(/licensed/);
    expect(out).not.toMatch(/\bis safe\b|\bare safe\b/);
  });
});

describe("check --json", () => {
  const { code, document } = capturedJson(["check", lip]);

  it("has exactly the keys it promises", () => {
    expect(code).toBe(1);
    expect(Object.keys(document)).toEqual(["units", "verdict", "worst", "parts"]);
    for (const entry of [document.worst, ...document.parts]) {
      expect(Object.keys(entry).sort()).toEqual(
        ["part", "side", "gap", "bound", "tolerance", "travel", "steer", "point", "verdict"].sort(),
      );
    }
    expect(document.parts.map((entry: { side: string }) => entry.side)).toEqual(["left", "right"]);
  });

  it("proves its bound to the tolerance, and the worst is the least of the parts", () => {
    for (const { gap, bound, tolerance, travel, steer } of document.parts) {
      expect(bound).toBeLessThanOrEqual(gap);
      expect(gap - bound).toBeLessThanOrEqual(tolerance);
      expect(tolerance).toBeCloseTo(0.1 / 25.4, 12);
      expect(travel).toBeGreaterThanOrEqual(-3.75 - 1e-9);
      expect(travel).toBeLessThanOrEqual(3.5 + 1e-9);
      expect(Math.abs(steer)).toBeLessThanOrEqual(1);
    }
    const least = Math.min(...document.parts.map((entry: { gap: number }) => entry.gap));
    expect(document.worst.gap).toBe(least);
    expect(document.verdict).toBe("rubs");
  });

  it("names a pose at which `pose` finds that very gap, at that point", () => {
    for (const { part, side, gap, travel, steer, point } of document.parts) {
      const { document: pose } = capturedJson([
        "pose",
        lip,
        "--travel",
        String(travel),
        "--steer",
        String(steer),
      ]);
      const same = pose.gaps.find(
        (entry: { part: string; side: string }) => entry.part === part && entry.side === side,
      );
      expect(same.gap).toBeCloseTo(gap, 5);
      for (const i of [0, 1, 2]) expect(same.point[i]).toBeCloseTo(point[i], 2);
    }
  });

  it("is never beaten by poses on a grid", () => {
    const at: string[] = [];
    for (let t = 0; t <= 8; t++) {
      for (let s = 0; s <= 8; s++) at.push("--at", `${-3.75 + (7.25 * t) / 8},${-1 + s / 4}`);
    }
    const { document: grid } = capturedJson(["pose", lip, ...at]);
    expect(grid.poses).toHaveLength(81);
    for (const { side, bound } of document.parts) {
      for (const pose of grid.poses) {
        const { gap } = pose.gaps.find((entry: { side: string }) => entry.side === side);
        expect(gap).toBeGreaterThanOrEqual(bound - 1e-7);
      }
    }
  });

  it("calls less than the allowance close, exit 0", () => {
    const { code: steeper, document: close } = capturedJson(["check", lip, "--variant", "steeper pin"]);
    expect([steeper, close.verdict]).toEqual([0, "close"]);
    expect(close.worst.gap).toBeGreaterThan(0);
    expect(close.worst.gap).toBeLessThan(0.25);
    expect(captured(["check", lip, "--variant", "steeper pin"]).out).toContain("you asked for 1/4 in");
  });

  it("takes a tolerance with a unit", () => {
    const { document: finer } = capturedJson(["check", lip, "--tolerance", "0.05 mm"]);
    expect(finer.worst.tolerance).toBeCloseTo(0.05 / 25.4, 12);
    expect(finer.worst.gap - finer.worst.bound).toBeLessThanOrEqual(finer.worst.tolerance);
    expect(capturedJson(["check", lip, "--tolerance", "1/64"]).document.worst.tolerance).toBeCloseTo(
      1 / 64,
      12,
    );
  });

  it("is clear with no worst where there are no parts", () => {
    const { code, document } = capturedJson(["check", bare]);
    expect(code).toBe(0);
    expect(document).toEqual({ units: "in", verdict: "clear", worst: null, parts: [] });
    expect(captured(["check", bare]).out).toContain("no body parts");
  });
});

describe("check where the linkage runs out of reach", () => {
  it("names the joint and the travel where it starts, exit 1", () => {
    const { code, document } = capturedJson(["check", high]);
    expect(code).toBe(1);
    expect(document.verdict).toBe("clear");
    const travels = document.limits.filter((limit: { along: string }) => limit.along === "travel");
    expect(travels.map((limit: { side: string }) => limit.side)).toEqual(["left", "right"]);
    for (const limit of travels) {
      expect(Object.keys(limit)).toEqual(["side", "joint", "along", "startsAt", "travel"]);
      expect(limit.joint).toBe("lower ball joint");
      expect(limit.startsAt).toBeGreaterThan(10); // inches, as the file
      expect(limit.startsAt).toBeLessThan(16);
      // Reachable just inside, refused just outside.
      expect(captured(["pose", high, "--travel", String(limit.startsAt - 1e-6)]).code).toBe(0);
      expect(captured(["pose", high, "--travel", String(limit.startsAt + 1e-3)]).code).toBe(2);
    }
    const { out } = captured(["check", high]);
    expect(out).toMatch(/^The left lower ball joint cannot follow past 15 \d+\/\d+ in of bump\.$/m);
  });

  it("names the joint and the steer where it starts, exit 1", () => {
    const { code, document } = capturedJson(["check", wide]);
    expect(code).toBe(1);
    const [limit] = document.limits;
    expect(limit).toMatchObject({ along: "steer", joint: "outer tie rod end" });
    const pose = (steer: number) =>
      captured(["pose", wide, "--travel", String(limit.travel), "--steer", String(steer)]);
    expect(pose(limit.startsAt * 1.001).code).toBe(2);
    expect(captured(["check", wide]).out).toMatch(
      /outer tie rod end cannot follow past \d+% of (left|right) lock/,
    );
  });
});
