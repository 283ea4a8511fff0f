import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { GAP_ROW, partGapTo } from "../../src/gaps/partGap.ts";
import { partShapeOf } from "../../src/gaps/partShape.ts";
import { type ClearanceMap, mapOf } from "../../src/studies/map/clearanceMap.ts";
import { type Model, modelOf } from "../../src/studies/model/model.ts";
import { checkClearance } from "../../src/studies/reports/check.ts";
import { gapsAt } from "../../src/studies/reports/gapsAt.ts";
import { POSE } from "../../src/suspension/poseRow.ts";
import { solvePose } from "../../src/suspension/solvePose.ts";
import { setupCases } from "../reference/setupCases.ts";
import { demoModel, lipAlone } from "./demoModel.ts";

const SEED = { seed: 1955, numRuns: 25, endOnFailure: true } as const;
const SIDES = ["left", "right"] as const;

/** Everything that moves, with its default radii, a rotor and a caliper. */
const HARDWARE = {
  hardware: {
    rotor: { diameter: 12, thickness: 1.1, inboard: 2.2 },
    caliper: { min: [-4, 2.5, 3], max: [-2, 5, 8] },
  },
};

function mapped(model: Model, rows: number, cols: number): ClearanceMap {
  const map = mapOf(model, { rows, cols });
  if (map === null) throw new TypeError("mapOf stopped without being asked to");
  return map;
}

/** Two values of a gap may differ by this, mm: its own tolerance, a depth's share, a solid box's inside. */
function slack(gap: number): number {
  return gap < 0 ? 0.006 - 2e-4 * gap : 3e-6;
}

/** Every cell against the plain loop over all pairs at that pose. @returns cells in reach, cells out of reach. */
function expectUnpruned(model: Model, map: ClearanceMap): { reached: number; out: number } {
  const counts = { reached: 0, out: 0 };
  const row = new Float64Array(GAP_ROW);
  map.travels.forEach((travel, i) => {
    map.steers.forEach((steer, j) => {
      const cell = i * map.steers.length + j;
      const pose = solvePose(model.frontEnd, travel, steer);
      if (!pose.ok) {
        counts.out++;
        expect(map.reach.status[cell]).toBe(pose.status);
        expect(map.reach.side[cell]).toBe(pose.side === "left" ? 0 : 1);
        expect(map.reach.along[cell]).toBe(pose.along === "travel" ? 0 : 1);
        expect(map.reach.startsAt[cell]).toBe(pose.startsAt);
        for (const side of SIDES) {
          expect(map[side].gap[cell]).toBeNaN();
          expect(map[side].moving[cell]).toBeNaN();
          expect(map[side].pair[cell]).toBe(-1);
        }
        return;
      }
      counts.reached++;
      expect(map.reach.status[cell]).toBe(0);
      expect(map.reach.startsAt[cell]).toBeNaN();
      const gaps = gapsAt(model, pose);
      for (const side of SIDES) {
        const own = gaps.filter((gap) => gap.side === side);
        const least = Math.min(...own.map(({ gap }) => gap));
        const moving = Math.min(...own.filter((gap) => !gap.together).map(({ gap }) => gap));
        const found = map[side].gap[cell]!;
        expect(Math.abs(found - least) <= slack(least) || found === least).toBe(true);
        expect(
          Math.abs(map[side].moving[cell]! - moving) <= slack(moving) || map[side].moving[cell] === moving,
        ).toBe(true);
        const pair = map[side].pair[cell]!;
        if (own.length === 0) {
          expect([found, pair]).toEqual([Number.POSITIVE_INFINITY, -1]);
          continue;
        }
        const named = model.pairs[pair]!;
        expect(named.side).toBe(side);
        expect(gaps[pair]!.part).toBe(named.name);
        expect(Math.abs(gaps[pair]!.gap - found)).toBeLessThanOrEqual(slack(found));
        // The point is as far from the solid as the gap says, looked at as a part of its own.
        const [x, y, z] = [...map[side].point.subarray(3 * cell, 3 * cell + 3)] as [number, number, number];
        const dot = partShapeOf({ name: "", kind: "path", radius: 0, points: [[x, y, z]] }, side === "right");
        const away = partGapTo(row, 0, named.ring, pose[side].row, POSE.wheelCenter, dot);
        // Where a round part is pressed in, its surface may be nearer another face of the ring than its middle is.
        if (found >= 0) expect(Math.abs(away - found)).toBeLessThanOrEqual(slack(found));
        else expect(Math.abs(away - 0.5 * found)).toBeLessThanOrEqual(-0.5 * found + slack(found));
      }
    });
  });
  return counts;
}

describe("a map's cells", () => {
  const { hardware } = demoModel(HARDWARE).setup;

  for (const kind of ["rack", "pitman"] as const) {
    it(`are the worst of all gaps at each pose of generated trucks with a ${kind}`, () => {
      let out = 0;
      fc.assert(
        fc.property(setupCases(kind), fc.boolean(), (model, moves) => {
          const made = modelOf({ ...model.setup, hardware: moves ? hardware : null }, "generated");
          if (!made.ok) throw new TypeError(made.issues[0]?.mend);
          out += expectUnpruned(made.value, mapped(made.value, 6, 9)).out;
        }),
        SEED,
      );
      expect(out).toBeGreaterThan(0);
    });
  }

  it("are that on the demo truck, with and without its moving parts", () => {
    for (const patch of [{}, HARDWARE]) {
      const model = demoModel(patch);
      expect(expectUnpruned(model, mapped(model, 21, 21))).toEqual({ reached: 441, out: 0 });
    }
  });

  it("are not below what the check proves, and come down to it", () => {
    const model = demoModel(HARDWARE);
    const report = checkClearance(model);
    if (report === null) throw new TypeError("stopped");
    const map = mapped(model, 41, 41);
    for (const side of SIDES) {
      const entries = report.parts.filter((entry) => entry.side === side);
      const bound = Math.min(...entries.map((entry) => entry.bound));
      const least = Math.min(...map[side].gap);
      expect(least).toBeGreaterThanOrEqual(bound - 1e-6);
      expect(least - bound).toBeLessThan(0.5);
    }
  });

  it("name the joint where the linkage cannot go, and have no gap there", () => {
    const { truck } = lipAlone();
    const long = demoModel({
      truck: { ...truck, steering: { stroke: 6 } },
      travel: { bump: 16, droop: -6 },
    });
    const map = mapped(long, 12, 15);
    const { reached, out } = expectUnpruned(long, map);
    expect(Math.min(reached, out)).toBeGreaterThan(20);
    const { along, status } = map.reach;
    expect(new Set(along.filter((_, i) => status[i] !== 0))).toEqual(new Set([0, 1]));
  });

  it("of a truck without parts say that nothing is measured", () => {
    const bare = demoModel({ truck: { body: [] }, hardware: null });
    const map = mapped(bare, 2, 2);
    for (const side of SIDES) {
      expect([...map[side].gap]).toEqual(new Array(4).fill(Number.POSITIVE_INFINITY));
      expect([...map[side].pair]).toEqual([-1, -1, -1, -1]);
    }
  });
});

describe("a map of a mirrored truck", () => {
  it("has on the right what the left has with the steering reversed, as when both are worked out", () => {
    const model = demoModel(HARDWARE);
    const once = mapped(model, 13, 15);
    const twice = mapped({ ...model, mirrored: false }, 13, 15);
    expect(model.mirrored).toBe(true);
    for (let row = 0; row < 13; row++) {
      for (let col = 0; col < 15; col++) {
        const [cell, other] = [row * 15 + col, row * 15 + 14 - col];
        expect(once.right.gap[cell]).toBe(once.left.gap[other]);
        expect(Math.abs(once.right.gap[cell]! - twice.right.gap[cell]!)).toBeLessThanOrEqual(
          slack(once.right.gap[cell]!),
        );
        expect(model.pairs[once.right.pair[cell]!]).toMatchObject({
          side: "right",
          name: model.pairs[once.left.pair[other]!]!.name,
        });
        expect(once.right.point[3 * cell + 1]).toBe(-once.left.point[3 * other + 1]!);
      }
    }
  });

  it("works out both sides when a part stands on one side alone", () => {
    const model = demoModel({
      truck: {
        body: [{ name: "battery box", kind: "box", min: [6, 22, 28], max: [14, 32, 34], side: "right" }],
      },
      hardware: null,
    });
    const map = mapped(model, 5, 7);
    expect(expectUnpruned(model, map).reached).toBe(35);
    expect([...map.left.gap].every((gap) => gap === Number.POSITIVE_INFINITY)).toBe(true);
    expect([...map.right.gap].every((gap) => Number.isFinite(gap))).toBe(true);
  });
});

describe("mapOf", () => {
  const model = demoModel();

  it("goes from droop to bump and from lock to lock, evenly, ends exact", () => {
    const { travels, steers } = mapped(model, 5, 5);
    const { droop, bump } = model.setup.travel;
    expect([travels[0], travels[4]]).toEqual([droop, bump]);
    expect([...steers]).toEqual([-1, -0.5, 0, 0.5, 1]);
    expect(travels[1]! - travels[0]!).toBeCloseTo((bump - droop) / 4, 9);
    expect(mapOf(model)?.left.gap).toHaveLength(61 * 61);
  });

  it.each([1, 0, 2.5, -3, Number.NaN])("refuses %d rows or columns", (size) => {
    expect(() => mapOf(model, { rows: size })).toThrow(RangeError);
    expect(() => mapOf(model, { cols: size })).toThrow(RangeError);
  });
});
