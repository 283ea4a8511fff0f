import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { GAP_ROW } from "../../../src/gaps/partGap.ts";
import { KEPT } from "../../../src/studies/limits/frontEndLimit.ts";
import { KeptPoses, type PassedLimit } from "../../../src/studies/limits/keptPoses.ts";
import { LimitCell } from "../../../src/studies/limits/limitCell.ts";
import type { Model } from "../../../src/studies/model/model.ts";
import { pairGapTo } from "../../../src/studies/model/pairs.ts";
import { checkClearance } from "../../../src/studies/reports/check.ts";
import { type SolvedPose, solvePose } from "../../../src/suspension/solvePose.ts";
import { assembledModel, demoSetup } from "../../reference/demoModel.ts";
import { runs } from "../../runs.ts";
import { keeperOf, NO_LIMITS } from "./limitTruck.ts";
import { PAST_STOP_TRUCKS, trucksWithStopsInside } from "./stopsInside.ts";

/** Poses of the walk along travel and steer, ends included. */
const TRAVELS = 19;
const STEERS = 25;

/** Travel and steer as told are the arm's angle read back: rounding may put them this share of themselves past a stop. */
const READ_BACK = 1e-7;

/** The worst gap of each pair that poses change: a walk of the poses that count, and ever closer about its worst. */
function walked(model: Model): { readonly worst: Map<string, number>; readonly counted: number } {
  const judge = keeperOf(model);
  const row = new Float64Array(GAP_ROW);
  const { droop, bump } = model.setup.travel;
  const poses: SolvedPose[] = [];
  const poseAt = (travel: number, steer: number): SolvedPose | null => {
    if (travel < droop || travel > bump || Math.abs(steer) > 1 || judge(travel, steer) !== true) return null;
    const pose = solvePose(model.frontEnd, travel, steer);
    if (!pose.ok) throw new Error(`both wheels stand at ${travel}, ${steer}`);
    return pose;
  };
  const [high, wide] = [(bump - droop) / (TRAVELS - 1), 2 / (STEERS - 1)];
  for (let i = 0; i < TRAVELS; i++) {
    for (let k = 0; k < STEERS; k++) {
      const pose = poseAt(droop + i * high, -1 + k * wide);
      if (pose !== null) poses.push(pose);
    }
  }
  const worst = new Map<string, number>();
  for (const pair of model.pairs) {
    if (pair.kind === "together") continue;
    const gapAt = (pose: SolvedPose, beat: number) => pairGapTo(row, 0, pair, pose[pair.side].row, 0, beat);
    let least = Number.POSITIVE_INFINITY;
    let at = poses[0]!;
    const take = (pose: SolvedPose): boolean => {
      const gap = gapAt(pose, least);
      if (!(gap < least)) return false;
      least = gap;
      at = pose;
      return true;
    };
    for (const pose of poses) take(pose);
    for (let closer = 0.5; closer > 2 ** -6; ) {
      const { travel, steer } = at;
      const nearby = [-1, 0, 1].flatMap((i) =>
        [-1, 0, 1].map((k) => poseAt(travel + i * closer * high, steer + k * closer * wide)),
      );
      if (!nearby.some((pose) => pose !== null && take(pose))) closer *= 0.5;
    }
    worst.set(`${pair.side} ${pair.name}`, least);
  }
  return { worst, counted: poses.length };
}

/**
 * What is wrong with a check's answer: gaps told at poses that do not count, and bounds above the gap of a pose that
 * does. One-sided: the walk's least gap is never less than the true one.
 */
function faultsOf(model: Model) {
  const report = checkClearance(model)!;
  const judge = keeperOf(model);
  const { worst, counted } = walked(model);
  expect(counted).toBeGreaterThan(0);
  const faults: string[] = [];
  let [near, told] = [0, 0];
  for (const { part, side, gap, bound, travel, steer, together } of report.parts) {
    if (together) continue;
    const at = `${side} ${part} at ${travel} mm, steer ${steer}`;
    if (![1, 1 - READ_BACK].some((share) => judge(travel * share, steer * share) === true))
      faults.push(`${at}: told at a pose that does not count`);
    const least = worst.get(`${side} ${part}`)!;
    if (!(least >= bound - 1e-6)) faults.push(`${at}: bound ${bound}, the walk finds ${least}`);
    told++;
    if (least - gap < 1) near++;
  }
  return { faults, near, told, passed: report.limitsPassed! };
}

describe.each(["rack", "pitman"] as const)("trucks with stops inside the travel, %s steering", (kind) => {
  const trucks = fc.sample(trucksWithStopsInside(kind), { seed: 1, numRuns: runs(1, 4) });

  it("every worst gap is told at a pose that counts, and no pose that counts is worse than its bound", () => {
    const faults: string[] = [];
    let [near, told, cut] = [0, 0, 0];
    for (const model of trucks) {
      const found = faultsOf(model);
      faults.push(...found.faults.map((fault) => `${fault}: ${JSON.stringify(model.setup)}`));
      near += found.near;
      told += found.told;
      if (found.passed.length > 0) cut++;
    }
    expect(faults).toEqual([]);
    expect(cut).toBeGreaterThanOrEqual(trucks.length / 2);
    // The walk is dense enough to be worth something.
    expect(near).toBeGreaterThan(0.5 * told);
  }, 240_000);

  it("what is said of a cell does not hang on the cells looked at before it", () => {
    for (const model of trucks) {
      const passed = allLimits(model);
      const busy = new KeptPoses(model, "right", passed, false);
      for (let n = 0; n < 60; n++) {
        const [a, b, c, d] = [2, 3, 5, 7].map((base) => (n * Math.sqrt(base)) % 1) as [
          number,
          number,
          number,
          number,
        ];
        const cell = [0.7 * a - 0.35, 0.1 * b, 2 * c - 1, 0.5 * d] as const;
        const fresh = new KeptPoses(model, "right", passed, false);
        expect(busy.look(...cell), JSON.stringify(cell)).toBe(fresh.look(...cell));
      }
    }
  });
});

/** Every limit of a truck, as if some pose passed each. */
function allLimits(model: Model): PassedLimit[] {
  return (["left", "right"] as const).flatMap((side) =>
    new LimitCell(model, side).limits.map(({ name }) => ({ side, name })),
  );
}

describe("trucks that told gaps past a stop", () => {
  it.each(Object.keys(PAST_STOP_TRUCKS))("%s", (name) => {
    const { faults, told } = faultsOf(assembledModel(PAST_STOP_TRUCKS[name]!()));
    expect(told).toBe(6);
    expect(faults).toEqual([]);
  });
});

describe("poses that count in a window narrower than any grid", () => {
  const narrow = (bumpStop: number, droopStrap: number): Model => {
    const setup = demoSetup();
    const truck = { ...setup.truck, body: [] };
    const limits = { ...NO_LIMITS, bumpStop, droopStrap };
    return assembledModel({ ...setup, truck, airSpring: null, limits });
  };

  it("are found, and nothing else is counted", () => {
    for (const [bumpStop, droopStrap] of [
      [30.4, 30.2],
      [0, 0],
    ] as const) {
      const report = checkClearance(narrow(bumpStop, droopStrap))!;
      expect(report.limitedBy).toEqual(["bump stop", "droop strap"]);
      for (const { travel, together } of report.parts) {
        if (together) continue;
        expect(travel).toBeLessThanOrEqual(bumpStop + 2 * KEPT);
        expect(travel).toBeGreaterThanOrEqual(droopStrap - 2 * KEPT);
      }
    }
  }, 60_000);
});
