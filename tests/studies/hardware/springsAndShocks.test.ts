import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { GAP_ROW } from "../../../src/gaps/partGap.ts";
import { length, sub, type Vec3 } from "../../../src/geometry/vec.ts";
import type { ShockMount } from "../../../src/setup/types/limitsTypes.ts";
import type { Setup } from "../../../src/setup/types/types.ts";
import { airStateAt } from "../../../src/studies/air/airState.ts";
import type { Model } from "../../../src/studies/model/model.ts";
import { pairGapTo, pairMotion, type SpringOrShockPair } from "../../../src/studies/model/pairs.ts";
import { bodyPath, lowerMountPath, lowerMountTo } from "../../../src/studies/model/springOrShock.ts";
import { type CheckReport, checkClearance } from "../../../src/studies/reports/check.ts";
import { CELL_OF_POSES, CELL_OF_POSES_ROW, Known } from "../../../src/studies/search/cellOfPoses.ts";
import { PoseCells } from "../../../src/studies/search/poseCells.ts";
import { armAngleFor } from "../../../src/suspension/armAngle.ts";
import { POSE } from "../../../src/suspension/poseRow.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import { assembledModel, demoSetup } from "../../reference/demoModel.ts";
import { expectAtPose, expectHonest, expectProven, expectTight } from "../../reference/expectCertified.ts";
import { setupCases } from "../../reference/setupCases.ts";
import { runs } from "../../runs.ts";
import { bareSpring, NO_LIMITS } from "../limits/limitTruck.ts";

const SEED = 1979;
const RUNS = runs(5, 8);

/** The same truck with an air spring and a shock of these diameters, mm, and nothing else to measure. */
function withSpringAndShock(setup: Setup, spring: number, shock: number, on: ShockMount): Model {
  const [x, y, z] = setup.truck.lowerArm.ballJoint;
  const top: Vec3 = [x + 40, y - 40, z + 330];
  const low: Vec3 = on === "knuckle" ? [60, -40, 90] : [x + 40, y - 90, z + 10];
  return assembledModel({
    ...setup,
    truck: { ...setup.truck, body: [] },
    hardware: null,
    airSpring: { ...bareSpring([x, y - 200, z + 180], [x, y - 150, z + 15]), diameter: spring },
    limits: {
      ...NO_LIMITS,
      shock: { bodyMount: top, lowerMount: low, on, compressed: 1, extended: 5000, diameter: shock },
    },
  });
}

function springsAndShocksOf(model: Model): SpringOrShockPair[] {
  return model.pairs.filter((pair) => pair.kind === "springOrShock");
}

describe("an air spring and a shock as moving parts", () => {
  it("are measured only where the setup gives a diameter", () => {
    const setup = demoSetup();
    expect(springsAndShocksOf(assembledModel(setup))).toEqual([]);
    const model = withSpringAndShock(setup, 150, 60, "lowerArm");
    expect(springsAndShocksOf(model).map((p) => [p.side, p.name])).toEqual([
      ["left", "air spring"],
      ["left", "shock"],
      ["right", "air spring"],
      ["right", "shock"],
    ]);
  });

  it("the line between the mounts is as long as the spring is high, by the air study's own way", () => {
    const model = withSpringAndShock(demoSetup(), 150, 60, "lowerArm");
    const [spring] = springsAndShocksOf(model);
    const mount = new Float64Array(3);
    for (const travel of [-80, -20, 0, 33, 80]) {
      const pose = solvePose(model.frontEnd, travel, 0.4);
      if (!pose.ok) throw new TypeError("out of reach");
      lowerMountTo(mount, spring!.springOrShock, pose.left.row, 0);
      const height = length(sub([mount[0]!, mount[1]!, mount[2]!], spring!.springOrShock.bodyMount));
      expect(height).toBeCloseTo(airStateAt(model, "left", travel)!.height, 9);
    }
  });

  it("a gap shrinks by half of what the diameter grows", () => {
    const row = new Float64Array(GAP_ROW);
    const pose = solvePose(assembledModel(demoSetup()).frontEnd, 20, 0.7);
    if (!pose.ok) throw new TypeError("out of reach");
    const gapOf = (diameter: number) =>
      pairGapTo(
        row,
        0,
        springsAndShocksOf(withSpringAndShock(demoSetup(), diameter, 60, "lowerArm"))[0]!,
        pose.left.row,
        0,
      );
    expect(gapOf(100) - gapOf(160)).toBeCloseTo(30, 5);
  });
});

describe("springs and shocks of the demo truck, sampled at 25 heights × 49 steers and about the worst", () => {
  it.each([
    ["lowerArm", 150, 60],
    ["knuckle", 150, 60],
    ["lowerArm", 420, 230],
    ["knuckle", 420, 230],
  ] as const)("shock on the %s, spring %d mm, shock %d mm across", (on, spring, shock) => {
    const model = withSpringAndShock(demoSetup(), spring, shock, on);
    const report = checkClearance(model)!;
    expect(report.parts).toHaveLength(4);
    expectHonest(model, report);
    expectTight(report);
    expectAtPose(model, report);
    const sampled = expectProven(model, report, { travels: 25, steers: 49 });
    report.parts.forEach((entry, i) => {
      expect(sampled[i]!.gap - entry.bound).toBeLessThanOrEqual(entry.tolerance);
    });
  });
});

describe.each(["rack", "pitman"] as const)(`${RUNS} generated trucks, %s steering (seed ${SEED})`, (kind) => {
  let checked: { model: Model; report: CheckReport }[] = [];

  beforeAll(() => {
    const cases = fc.sample(setupCases(kind), { seed: SEED, numRuns: RUNS });
    checked = cases.map(({ setup }, i) => {
      const model = withSpringAndShock(
        setup,
        i % 3 === 0 ? 420 : 140,
        60,
        i % 2 === 0 ? "lowerArm" : "knuckle",
      );
      return { model, report: checkClearance(model)! };
    });
  }, 300_000);

  it("some rub, some clear, some run out of reach", () => {
    const entries = checked.flatMap(({ report }) => report.parts);
    expect(entries.some((e) => e.verdict === "rubs")).toBe(true);
    expect(entries.some((e) => e.verdict === "clear")).toBe(true);
    expect(checked.some(({ report }) => report.limits.length > 0)).toBe(true);
  });

  it("no verdict claims more than is proven, and each gap is there at its pose, within tolerance of its bound", () => {
    for (const { model, report } of checked) {
      expectHonest(model, report);
      expectAtPose(model, report);
      expectTight(report);
    }
  });

  it("no sampled pose is worse than the bound", () => {
    for (const { model, report } of checked) expectProven(model, report, { travels: 7, steers: 13 });
  });

  it("between two poses no gap changes by more than pairMotion allows", () => {
    const row = new Float64Array(GAP_ROW);
    let near = 0;
    for (const { model } of checked) {
      const { droop, bump } = model.setup.travel;
      for (const [share, other, steer, turned] of [
        [0.2, 0.21, 0.3, 0.32],
        [0.5, 0.9, -0.5, 0.5],
        [0.7, 0.7, -0.2, -0.6],
      ] as const) {
        const a = solvePose(model.frontEnd, droop + share * (bump - droop), steer);
        const b = solvePose(model.frontEnd, droop + other * (bump - droop), turned);
        if (!a.ok || !b.ok) continue;
        for (const pair of springsAndShocksOf(model)) {
          const [p, q] = [a[pair.side].row, b[pair.side].row];
          const change = pairGapTo(row, 0, pair, p, 0) - pairGapTo(row, 0, pair, q, 0);
          const most = pairMotion(pair, p, 0, q, 0);
          expect(Math.abs(change)).toBeLessThanOrEqual(most + 1e-5 + 1e-4 * Math.abs(row[0]!));
          if (Math.abs(change) > 0.1 * most) near++;
        }
      }
    }
    expect(near).toBeGreaterThan(5);
  });
});

describe("the path proven over a cell of poses", () => {
  it("is never less than how far mount and wheel run to poses within the cell, and not much more", () => {
    const models = [
      withSpringAndShock(demoSetup(), 150, 60, "lowerArm"),
      withSpringAndShock(demoSetup(), 150, 60, "knuckle"),
    ];
    const apart = (a: ArrayLike<number>, aAt: number, b: ArrayLike<number>, bAt: number) =>
      Math.hypot(...[0, 1, 2].map((i) => a[aAt + i]! - b[bAt + i]!));
    let closest = 0;
    for (const { frontEnd, ...model } of models) {
      const { left: side, steering } = frontEnd;
      const shock = model.pairs.find(
        (p) => p.kind === "springOrShock" && p.name === "shock",
      ) as SpringOrShockPair;
      const poses = new PoseCells({ side, other: null, steering, innerAt: 0 });
      const [from, to] = [new Float64Array(3), new Float64Array(3)];
      for (const [travel, steer, armHalf, steerHalf] of [
        [0, 0, 0.01, 0.01],
        [50, -0.6, 0.005, 0.01],
        [-60, 0.6, 0.005, 0.01],
        [10, 0.3, 0, 0.02],
        [10, 0.3, 0.01, 0],
      ] as const) {
        const arm = armAngleFor(side, travel);
        const cell = poses.add(arm, armHalf, steer, steerHalf);
        expect(poses.known[cell]! & Known.Moves).not.toBe(0);
        const at = cell * CELL_OF_POSES_ROW + CELL_OF_POSES.motion;
        const motion = poses.rows.slice(at);
        const middle = solvePose(frontEnd, travel, steer);
        if (!middle.ok) throw new TypeError("out of reach");
        const mountMost = lowerMountPath(shock.springOrShock, motion, middle.left.row, 0);
        const centerMost = bodyPath(motion, 0, 1, 1);
        lowerMountTo(from, shock.springOrShock, middle.left.row, 0);
        for (const [da, ds] of [
          [-1, -1],
          [-1, 1],
          [1, -1],
          [1, 1],
          [0.4, -0.7],
        ] as const) {
          // A pose by its arm angle: the travel that has it is found by bisection.
          const there = solvePose(
            frontEnd,
            travelOf(model.setup.travel, side, arm + da * armHalf),
            steer + ds * steerHalf,
          );
          if (!there.ok) throw new TypeError("out of reach");
          lowerMountTo(to, shock.springOrShock, there.left.row, 0);
          const ran = apart(from, 0, to, 0);
          expect(ran).toBeLessThanOrEqual(mountMost + 1e-6);
          if (mountMost > 0) closest = Math.max(closest, ran / mountMost);
          const center = apart(middle.left.row, POSE.wheelCenter, there.left.row, POSE.wheelCenter);
          expect(center).toBeLessThanOrEqual(centerMost + 1e-6);
        }
      }
    }
    expect(closest).toBeGreaterThan(0.8);
  });
});

function travelOf(
  { droop, bump }: Setup["travel"],
  side: Parameters<typeof armAngleFor>[0],
  arm: number,
): number {
  let [low, high] = [droop, bump];
  for (let i = 0; i < 80; i++) {
    const middle = 0.5 * (low + high);
    if (armAngleFor(side, middle) < arm) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high);
}
