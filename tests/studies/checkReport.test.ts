import { describe, expect, it } from "vitest";
import { checkClearance, DEFAULT_TOLERANCE, verdictOf } from "../../src/studies/reports/check.ts";
import { assembledModel, demoSetup, demoWith } from "../reference/demoModel.ts";

const model = assembledModel(demoSetup());

describe("the report of a check", () => {
  it("names every part once a side, left side first, in the setup's order", () => {
    const body = ["fender lip", "inner fender", "frame rail"];
    const riding = model.pairs.filter((pair) => pair.side === "left").map((pair) => pair.name);
    expect(riding.slice(0, body.length)).toEqual(body);
    const moving = riding.slice(body.length);
    expect(moving).toContain("rotor to lower ball joint");
    const { parts } = checkClearance(model)!;
    expect(parts.map((e) => `${e.side} ${e.part}`)).toEqual([
      ...body.map((n) => `left ${n}`),
      ...body.map((n) => `right ${n}`),
      ...moving.map((n) => `left ${n}`),
      ...moving.map((n) => `right ${n}`),
    ]);
    expect(parts.every((e) => e.tolerance === DEFAULT_TOLERANCE)).toBe(true);
  });

  it("of a rack, the right side is the left one mirrored, with the steering reversed", () => {
    const { parts } = checkClearance(model)!;
    for (let i = 0; i < 3; i++) {
      const [l, r] = [parts[i]!, parts[i + 3]!];
      expect([r.gap, r.bound, r.travel]).toEqual([l.gap, l.bound, l.travel]);
      expect(r.steer + l.steer).toBe(0);
      expect(r.point).toEqual([l.point[0], -l.point[1], l.point[2]]);
    }
  });

  it("a part of the right side alone is found as the left one's twin would be, typed either way", () => {
    const setup = demoSetup();
    const lip = setup.truck.body[0]!;
    if (lip.kind !== "path") throw new TypeError("the demo truck's lip is a path");
    const mirrored = {
      ...lip,
      side: "right" as const,
      points: lip.points.map(([x, y, z]) => [x, -y, z] as const),
    };
    const twin = checkClearance(demoWith([lip]))!.parts[1]!;
    for (const part of [{ ...lip, side: "right" as const }, mirrored]) {
      const [entry] = checkClearance(demoWith([part]))!.parts;
      expect(entry!.side).toBe("right");
      expect(entry!.point[1]).toBeLessThan(0);
      expect(Math.abs(entry!.gap - twin.gap)).toBeLessThan(0.02);
    }
  });

  it("the tolerance asked for is kept and told", () => {
    for (const tolerance of [2, 0.1, 0.01, 0.001]) {
      for (const entry of checkClearance(model, { tolerance })!.parts) {
        expect(entry.tolerance).toBe(tolerance);
        expect(entry.gap - entry.bound).toBeLessThanOrEqual(tolerance);
      }
    }
  });

  it("does not depend on the order of the parts, to the tolerance", () => {
    const setup = demoSetup();
    const reversed = checkClearance(demoWith([...setup.truck.body].reverse()))!;
    for (const entry of checkClearance(model)!.parts) {
      const other = reversed.parts.find((e) => e.part === entry.part && e.side === entry.side)!;
      expect(other.gap).toBe(entry.gap);
      expect(other.bound).toBe(entry.bound);
    }
  });

  it("of a truck without body parts is clear and names no worst", () => {
    const report = checkClearance(demoWith([], { hardware: null }))!;
    expect(report).toMatchObject({ verdict: "clear", worst: null, parts: [] });
  });
});

describe("verdicts", () => {
  it.each([
    [-1e-9, -0.01, "rubs"],
    [0, -0.01, "close"],
    [6.3, 6.29, "close"],
    [6.4, 6.39, "clear"],
    [6.36, 6.35, "clear"],
  ])("gap %f mm proven to %f mm, allowance 6.35 mm: %s", (gap, bound, verdict) => {
    expect(verdictOf(gap, bound, 6.35)).toBe(verdict);
  });

  it("a gap whose bound proves nothing is not called clear", () => {
    expect(verdictOf(115, Number.NEGATIVE_INFINITY, 6.35)).not.toBe("clear");
    expect(verdictOf(115, -40, 6.35)).not.toBe("clear");
  });
});
