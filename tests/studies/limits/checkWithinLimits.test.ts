import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { GAP_ROW } from "../../../src/gaps/partGap.ts";
import { KEPT } from "../../../src/studies/limits/frontEndLimit.ts";
import { Keeps, KeptPoses } from "../../../src/studies/limits/keptPoses.ts";
import { LimitBorders } from "../../../src/studies/limits/limitBorders.ts";
import { LimitCell } from "../../../src/studies/limits/limitCell.ts";
import { limitsPassed } from "../../../src/studies/limits/limitsPassed.ts";
import type { Model } from "../../../src/studies/model/model.ts";
import { pairGapTo } from "../../../src/studies/model/pairs.ts";
import { type CheckEntry, checkClearance } from "../../../src/studies/reports/check.ts";
import { armAngleFor } from "../../../src/suspension/armAngle.ts";
import type { Side } from "../../../src/suspension/frontEnd.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import { assembledModel, demoSetup } from "../../reference/demoModel.ts";
import { expectAtPose, expectHonest, expectTight } from "../../reference/expectCertified.ts";
import { runs } from "../../runs.ts";
import { demoModel, lipAlone } from "../demoModel.ts";
import { limitedTrucks } from "./limitedTrucks.ts";
import { keeperOf, NO_LIMITS } from "./limitTruck.ts";

const DEG = Math.PI / 180;
const SEED = { seed: 1968, numRuns: runs(6, 9) };

/** The worst gap of a part over a grid of the poses that keep every limit, and closer about the worst of them. */
function sampledWithin(
  model: Model,
  borders: LimitBorders,
  { part, side }: Pick<CheckEntry, "part" | "side">,
) {
  const pair = model.pairs.find((one) => one.name === part && one.side === side)!;
  const row = new Float64Array(GAP_ROW);
  const { droop, bump } = model.setup.travel;
  const best = { gap: Number.POSITIVE_INFINITY, travel: 0, steer: 0, kept: 0 };
  const look = (travel: number, steer: number): boolean => {
    if (travel < droop || travel > bump || Math.abs(steer) > 1) return false;
    const pose = solvePose(model.frontEnd, travel, steer);
    if (!pose.ok || borders.passedAt(travel, steer) !== null) return false;
    best.kept++;
    const gap = pairGapTo(row, 0, pair, pose[side].row, 0, best.gap);
    if (!(gap < best.gap)) return false;
    Object.assign(best, { gap, travel, steer });
    return true;
  };
  let [high, wide] = [(bump - droop) / 16, 2 / 24];
  for (let i = 0; i <= 16; i++) for (let k = 0; k <= 24; k++) look(droop + i * high, -1 + k * wide);
  while (wide > 1e-5) {
    const { travel, steer } = best;
    let moved = false;
    for (let i = -1; i <= 1; i++)
      for (let k = -1; k <= 1; k++) if (look(travel + i * high, steer + k * wide)) moved = true;
    if (moved) continue;
    high *= 0.5;
    wide *= 0.5;
  }
  return best;
}

describe.each(["rack", "pitman"] as const)("generated trucks with limits, %s steering", (kind) => {
  it("no pose that keeps every limit is worse than the bound; the worst one keeps them and is there", () => {
    const models = fc.sample(limitedTrucks(kind), SEED);
    let [cut, near, entries] = [0, 0, 0];
    for (const model of models) {
      const report = checkClearance(model)!;
      const message = JSON.stringify(model.setup);
      expectHonest(model, report);
      expectTight(report);
      expectAtPose(model, report);
      if (report.limitedBy!.length > 0) cut++;
      else if (report.limitsPassed!.length > 0) {
        // Every pose passes a limit: all count, which is what a check without limits tells.
        const free = checkClearance({ ...model, setup: { ...model.setup, limits: null } })!;
        expect(report.parts, message).toEqual(free.parts);
        continue;
      }
      const borders = new LimitBorders(model);
      const keepsPassed = keeperOf(model, report.limitsPassed!);
      for (const entry of report.parts) {
        entries++;
        // To a hair: a pose told by travel, not by the arm's angle, is moved by rounding.
        const keeps = [1, 1 - 1e-7].some((share) => keepsPassed(entry.travel * share, entry.steer * share));
        expect(keeps, message).toBe(true);
        const sampled = sampledWithin(model, borders, entry);
        expect(sampled.gap, message).toBeGreaterThanOrEqual(entry.bound - 1e-6);
        if (sampled.gap - entry.gap < 0.3) near++;
      }
    }
    expect(cut).toBeGreaterThan(SEED.numRuns / 3);
    expect(near).toBeGreaterThan(0.85 * entries);
  }, 240_000);

  it("what is said of a cell of poses holds at its samples, at the border of reach too", () => {
    const told = { all: 0, none: 0, noneAtBorder: 0 };
    for (const model of fc.sample(limitedTrucks(kind), { ...SEED, numRuns: 40 })) {
      const passed = limitsPassed(model);
      if (passed.length === 0) continue;
      const keepsPassed = keeperOf(model, passed);
      for (const side of ["left", "right"] as Side[]) {
        const kept = new KeptPoses(model, side, passed, false);
        const own = new LimitCell(model, side);
        const { droop, bump } = model.setup.travel;
        for (let n = 0; n < 80; n++) {
          const [a, b, c, d] = [halton(n, 2), halton(n, 3), halton(n, 5), halton(n, 7)];
          const [arm, steer] = [armAngleFor(own.side, droop + a * (bump - droop)), 2 * b - 1];
          if (Number.isNaN(arm)) continue;
          const [armHalf, steerHalf] = [0.04 * c * c, 0.2 * d * d];
          const keeps = kept.look(arm, armHalf, steer, steerHalf);
          if (keeps === Keeps.Unknown) continue;
          let unreached = false;
          for (const p of [-1, -0.5, 0, 0.5, 1]) {
            for (const q of [-1, -0.5, 0, 0.5, 1]) {
              const found = keepsPassed(own.travelAt(arm + p * armHalf), steer + q * steerHalf);
              if (found === null) unreached = true;
              else if (found !== (keeps === Keeps.All))
                throw new Error(
                  `${side} ${arm} ± ${armHalf}, ${steer} ± ${steerHalf}: ${JSON.stringify(model.setup)}`,
                );
            }
          }
          if (keeps === Keeps.All) told.all++;
          else if (unreached) told.noneAtBorder++;
          else told.none++;
        }
      }
    }
    expect(told.all).toBeGreaterThan(100);
    expect(told.none).toBeGreaterThan(100);
    expect(told.noneAtBorder).toBeGreaterThan(0);
  }, 120_000);
});

/** Evenly spread numbers of 0 … 1 without chance (J. H. Halton, 1960). */
function halton(n: number, base: number): number {
  let [share, sum] = [1, 0];
  for (let i = n + 1; i > 0; i = Math.floor(i / base)) {
    share /= base;
    sum += share * (i % base);
  }
  return sum;
}

describe("the demo truck with a steering stop before its worst gap", () => {
  const angle = 12 * DEG;
  const free = demoModel(lipAlone());
  const model: Model = {
    ...free,
    setup: { ...free.setup, limits: { ...NO_LIMITS, steeringStop: angle } },
  };

  it("has it at the border of the stop, and says so", () => {
    const [unlimited, limited] = [checkClearance(free)!, checkClearance(model)!];
    expect(limited.limitedBy).toEqual(["steering stop"]);
    const [before, now] = [unlimited.worst!, limited.worst!];
    expect(now.gap).toBeGreaterThan(before.gap + 0.3);
    expect(Math.abs(now.steer)).toBeLessThan(Math.abs(before.steer));
    const pose = solvePose(model.frontEnd, now.travel, now.steer);
    if (!pose.ok) throw new Error("out of reach");
    // Of both wheels the one that turns farther is on its stop.
    const most = Math.max(Math.abs(pose.left.steerAngle), Math.abs(pose.right.steerAngle));
    expect(most).toBeLessThanOrEqual(angle + KEPT);
    expect(most).toBeGreaterThan(angle - 0.05 * DEG);
    expect(now.gap - now.bound).toBeLessThanOrEqual(0.1);
    expect(sampledWithin(model, new LimitBorders(model), now).gap).toBeGreaterThanOrEqual(now.bound);
  });

  it("counts every pose when none keeps all limits", () => {
    const stuck = { ...NO_LIMITS, bumpStop: -30, droopStrap: 30 };
    const report = checkClearance({ ...free, setup: { ...free.setup, limits: stuck } })!;
    expect(report.parts).toEqual(checkClearance(free)!.parts);
    expect(report.limitedBy).toEqual([]);
    expect(report.limitsPassed!.length).toBe(4);
  });
});

describe("limits that no pose passes", () => {
  it("leave every entry as it is without limits, to the bit", () => {
    const setup = demoSetup();
    const free = checkClearance(assembledModel(setup))!;
    const wide = { ...NO_LIMITS, steeringStop: 80 * DEG, bumpStop: setup.travel.bump };
    const limited = checkClearance(assembledModel({ ...setup, limits: wide }))!;
    expect(limited.parts).toEqual(free.parts);
    expect(limited.limitedBy).toEqual([]);
    expect(free.limitedBy).toBeUndefined();
  });
});

describe("each wheel for itself", () => {
  it("no pose is counted less for what the other wheel cannot do", () => {
    let less = 0;
    for (const model of fc.sample(limitedTrucks("rack"), { ...SEED, numRuns: runs(6, 8) })) {
      const together = checkClearance(model)!;
      const alone = checkClearance(model, { aloneSides: true })!;
      if (together.limitedBy!.length !== alone.limitedBy!.length) continue;
      alone.parts.forEach((entry, i) => {
        expect(entry.bound).toBeLessThanOrEqual(together.parts[i]!.gap + 1e-9);
        if (entry.gap < together.parts[i]!.gap - 0.2) less++;
      });
    }
    // A steering stop is met by the inner wheel first: alone the outer one goes on.
    expect(less).toBeGreaterThan(0);
  }, 120_000);
});
