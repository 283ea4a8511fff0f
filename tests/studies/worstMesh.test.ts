import { beforeAll, describe, expect, it } from "vitest";
import { triangleTree } from "../../src/gaps/mesh/triangleTree.ts";
import { partShapeOf } from "../../src/gaps/partShape.ts";
import type { Vec3 } from "../../src/geometry/vec.ts";
import type { Model } from "../../src/studies/model/model.ts";
import type { Budget } from "../../src/studies/numeric/budget.ts";
import { type CheckReport, checkClearance } from "../../src/studies/reports/check.ts";
import { OtherWheel } from "../../src/studies/search/otherWheel.ts";
import { type WorstGap, worstGap } from "../../src/studies/search/worstGap.ts";
import { armAngleFor } from "../../src/suspension/armAngle.ts";
import { type MeshInput, sheet } from "../gaps/mesh/sheets.ts";
import { demoWith } from "../reference/demoModel.ts";
import { expectAtPose, expectHonest, expectProven, expectTight } from "../reference/expectCertified.ts";
import { stepBudget } from "../reference/stepBudget.ts";

/** Rough sheets about the demo truck's left tire: over the tread, beside either wall, cut by it. */
const places: readonly { name: string; center: Vec3; normal: Vec3; size: number }[] = [
  { name: "over the tread", center: [0, 760, 900], normal: [0.1, 0.2, -1], size: 240 },
  { name: "inboard", center: [60, 480, 420], normal: [0.2, 1, 0.1], size: 260 },
  { name: "outboard lip", center: [-200, 880, 560], normal: [0.5, -1, -0.4], size: 150 },
  { name: "cut by the tire", center: [250, 740, 500], normal: [-1, 0.1, 0.5], size: 160 },
];

const meshAt = ({ center, normal, size }: (typeof places)[number], side: number): MeshInput =>
  sheet(center, normal, size, 40, 0.4, side, 99);

const withSheets = (side: number): Model =>
  demoWith(places.map((place) => ({ ...meshAt(place, side), name: place.name, side: "left" as const })));

/** The whole travel and both locks of the demo truck's left wheel. */
function searched(model: Model, mesh: MeshInput, treed: boolean, budget?: Budget): WorstGap | null {
  const { left, steering } = model.frontEnd;
  const cells = partShapeOf(mesh, false);
  const tree = triangleTree(mesh.positions, mesh.triangles);
  const none = new Float64Array(0);
  const part = treed ? { name: "sheet", cells: none, count: 0, balls: none, skeleton: null, tree } : cells;
  const { droop, bump } = model.setup.travel;
  const range = {
    armLow: armAngleFor(left, droop),
    armHigh: armAngleFor(left, bump),
    steerLow: -1,
    steerHigh: 1,
  };
  return worstGap(
    {
      side: left,
      other: new OtherWheel(model.frontEnd, "left", model.mirrored),
      innerAt: 0,
      steering,
      pair: { kind: "body", ring: model.ring, part },
    },
    range,
    { asked: 0.01, finer: 0.01, border: 0.1 },
    null,
    budget,
  );
}

describe("rough sheets of 5,000 triangles about the demo truck's tire", () => {
  let model: Model;
  let report: CheckReport;
  beforeAll(() => {
    model = withSheets(55);
    report = checkClearance(model)!;
  }, 120_000);

  it("no sampled pose is worse than the bound", () => {
    const sampled = expectProven(model, report, { travels: 13, steers: 25 });
    sampled.forEach((least, i) => {
      expect(least.gap - report.parts[i]!.gap).toBeLessThan(0.1);
    });
  });

  it("every bound is within tolerance, every verdict honest, every pose one the truck can take", () => {
    expectTight(report);
    expectHonest(model, report);
    expectAtPose(model, report);
  });

  it("clear and rubbing sheets are among them", () => {
    expect(report.parts.some(({ gap }) => gap > 5)).toBe(true);
    expect(report.parts.some(({ gap }) => gap < -5)).toBe(true);
  });
});

describe("the search over a tree", () => {
  const model = withSheets(4);

  it("finds what the search over every triangle finds", () => {
    for (const place of places) {
      const mesh = meshAt(place, 5);
      // Few enough triangles that a part of them is cut into cells.
      expect(partShapeOf(mesh, false).tree).toBeUndefined();
      const [byTree, byCells] = [searched(model, mesh, true)!, searched(model, mesh, false)!];
      expect(Math.abs(byTree.gap - byCells.gap)).toBeLessThan(0.0101);
      expect(byTree.bound).toBeLessThanOrEqual(byCells.gap + 1e-6);
      expect(byCells.bound).toBeLessThanOrEqual(byTree.gap + 1e-6);
    }
  });

  it("gets nearer the more it may spend: the gap only falls, the bound only rises", () => {
    const mesh = meshAt(places[0]!, 60);
    const whole = searched(model, mesh, true)!;
    const cut = [120, 150, 180, 210].map((looks) => searched(model, mesh, true, stepBudget(looks))!);
    cut.forEach(({ cells, gap, bound }, i) => {
      const before = cut[i - 1];
      expect(cells).toBeLessThan(whole.cells);
      expect(bound).toBeLessThanOrEqual(whole.gap);
      expect(gap).toBeGreaterThanOrEqual(whole.bound);
      if (before === undefined) return;
      expect(cells).toBeGreaterThan(before.cells);
      expect(gap).toBeLessThanOrEqual(before.gap);
      expect(bound).toBeGreaterThanOrEqual(before.bound);
    });
  });
});
