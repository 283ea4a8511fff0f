import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { GAP_ROW } from "../../src/gaps/partGap.ts";
import { lowestTravels } from "../../src/studies/map/lowestTravels.ts";
import { steerLimits } from "../../src/studies/map/steerLimits.ts";
import type { Stop, WheelStops } from "../../src/studies/map/stop.ts";
import { type Model, modelOf } from "../../src/studies/model/model.ts";
import { pairGapTo } from "../../src/studies/model/pairs.ts";
import { solvePose } from "../../src/suspension/solvePose.ts";
import { demoSetup, demoWith } from "../reference/demoModel.ts";
import { setupCases } from "../reference/setupCases.ts";
import { runs } from "../runs.ts";
import { demoModel, lipAlone } from "./demoModel.ts";

/** Without boxes: how deep one is pressed in is dear to know, and samples ask for it by the thousand. */
const cases = (kind: "rack" | "pitman") =>
  setupCases(kind).filter(({ setup }) => setup.truck.body.every((part) => part.kind !== "box"));

const SEED = { seed: 1955, numRuns: runs(4, 15), endOnFailure: true } as const;
const SIDES = ["left", "right"] as const;
/** Poses looked at on each way: the slow obvious way, one-sided. */
const SAMPLES = 80;
/** mm. A limit is called a touch when the resolution cannot tell a near miss from one: nearer than this. */
const NEAR = 0.02;

const row = new Float64Array(GAP_ROW);

/** The least gap of one side at a pose over what moves, or `beat` when none is less; null = out of reach. */
function gapAt(
  model: Model,
  side: "left" | "right",
  travel: number,
  steer: number,
  beat = Number.POSITIVE_INFINITY,
): number | null {
  const pose = solvePose(model.frontEnd, travel, steer);
  if (!pose.ok) return null;
  let least = beat;
  for (const pair of model.pairs) {
    if (pair.side !== side || pair.kind === "together") continue;
    least = Math.min(least, pairGapTo(row, 0, pair, pose[side].row, 0, least));
  }
  return least;
}

/**
 * One wheel's limit against samples of the way: none below the level up to it, and what it says is there.
 * @param at the pose at an input: least gap of the wheel, null out of reach
 */
function expectLimit(
  limit: Stop,
  from: number,
  end: number,
  level: number,
  at: (input: number) => number | null,
) {
  const way = Math.sign(end - from) || 1;
  for (let i = 0; i <= SAMPLES; i++) {
    const gap = at(from + ((limit.at - from) * i) / SAMPLES);
    if (gap === null) throw new Error(`out of reach on the way to ${limit.at}`);
    // A touch at the very start has nothing proven before it.
    if (limit.at !== from) expect(gap).toBeGreaterThanOrEqual(level - 1e-5);
  }
  if (limit.stop === "end") expect(limit.at).toBe(end);
  if (limit.stop === "touch") {
    expect(at(limit.at)!).toBeLessThan(level + NEAR);
    if (limit.gap >= level) return;
    // It is said to go on below the level: within a hundredth of the way it does.
    const past = Array.from({ length: 51 }, (_, i) => at(limit.at + (0.0101 * (end - limit.at) * i) / 50));
    expect(past.some((gap) => gap !== null && gap < level)).toBe(true);
  }
  if (limit.stop === "reach") {
    const past = at(limit.at + way * 1e-4 * Math.max(1, Math.abs(end - from)));
    expect(past === null || limit.at === end).toBe(true);
  }
}

function expectEither({ either, left, right }: WheelStops, way: number) {
  expect(either.at * way).toBe(Math.min(left.at * way, right.at * way));
  expect(either === left || either === right).toBe(true);
}

function expectSteerLimits(model: Model, travels: readonly number[]): Stop[] {
  const limits: Stop[] = [];
  const rows = steerLimits(model, travels);
  for (const row of rows ?? []) {
    if (!row.ok) {
      expect(solvePose(model.frontEnd, row.travel, 0)).toMatchObject({ ok: false, status: row.status });
      continue;
    }
    for (const way of [1, -1]) {
      const { touch, allowance } = way > 0 ? row.leftTurn : row.rightTurn;
      for (const [found, level] of [
        [touch, 0],
        [allowance, model.setup.allowance],
      ] as const) {
        expectEither(found, way);
        for (const side of SIDES) {
          expectLimit(found[side], 0, way, level, (steer) =>
            gapAt(model, side, row.travel, steer, level + 1),
          );
          limits.push(found[side]);
        }
      }
    }
  }
  return limits;
}

function expectLowest(model: Model, steers: readonly number[]): Stop[] {
  const limits: Stop[] = [];
  const { setup, frontEnd } = model;
  const low = Math.max(
    setup.travel.droop,
    frontEnd.left.reach.droop.travel,
    frontEnd.right.reach.droop.travel,
  );
  const high = Math.min(setup.travel.bump, frontEnd.left.reach.bump.travel, frontEnd.right.reach.bump.travel);
  for (const row of lowestTravels(model, steers) ?? []) {
    if (!row.ok) {
      expect(solvePose(frontEnd, row.travel, row.steer).ok).toBe(false);
      continue;
    }
    for (const [found, level] of [
      [row.touch, 0],
      [row.allowance, setup.allowance],
    ] as const) {
      const keeps = SIDES.every((side) => (gapAt(model, side, 0, row.steer, level + 1) ?? -1) >= level);
      // Just inside the end of an arm's reach.
      expect(found.from).toBeCloseTo(keeps ? 0 : low, low === setup.travel.droop ? 12 : 0);
      expectEither(found, 1);
      for (const side of SIDES) {
        expectLimit(found[side], found.from, high, level, (travel) =>
          gapAt(model, side, travel, row.steer, level + 1),
        );
        limits.push(found[side]);
      }
    }
  }
  return limits;
}

describe("how far it steers at each height", () => {
  it.each(["rack", "pitman"] as const)("skips no pose of generated trucks with a %s", (kind) => {
    const stops = new Set<string>();
    fc.assert(
      fc.property(cases(kind), (model) => {
        const { droop, bump } = model.setup.travel;
        for (const limit of expectSteerLimits(model, [0.8 * droop, 0.7 * bump])) stops.add(limit.stop);
      }),
      SEED,
    );
    expect([...stops]).toEqual(expect.arrayContaining(["touch", "end"]));
    expect(stops.has("unproven")).toBe(false);
  });

  it("is known to 1e-4 of lock, of the demo truck with all that moves", () => {
    const model = demoModel({ hardware: {} });
    const { bump } = model.setup.travel;
    const travels = [bump, 0.97 * bump, 0.9 * bump, 0];
    expect(expectSteerLimits(model, travels).some(({ stop }) => stop === "touch")).toBe(true);
    const [row] = steerLimits(model, [bump]) ?? [];
    if (!row?.ok) throw new TypeError("out of reach");
    for (const side of SIDES) {
      const limit = row.leftTurn.touch[side];
      // By bisection on the gap at one pose, from the last clear one of a fine grid.
      let [clear, pressed] = [0, 0];
      while (gapAt(model, side, bump, pressed)! >= 0) [clear, pressed] = [pressed, pressed + 1e-3];
      while (pressed - clear > 1e-9) {
        const middle = 0.5 * (clear + pressed);
        if (gapAt(model, side, bump, middle)! >= 0) clear = middle;
        else pressed = middle;
      }
      expect(limit).toMatchObject({ stop: "touch", side, part: "fender lip" });
      expect(limit.at).toBeLessThanOrEqual(clear);
      expect(clear - limit.at).toBeLessThan(1e-4);
    }
  });

  it("finds a touch so short that a grid of steers steps over it", () => {
    // The lip comes nearest in the middle of a turn; made just thick enough to touch there, by 0.002 mm.
    const [lip] = demoSetup().truck.body;
    if (lip?.kind !== "path") throw new TypeError("the demo's lip is a path");
    const travel = -60;
    const plain = demoWith([lip], { hardware: null });
    let best = { gap: Number.POSITIVE_INFINITY, steer: 0 };
    for (let step = 1e-2; step > 1e-7; step *= 0.2) {
      const middle = best.steer;
      for (let i = -100; i <= 100; i++) {
        const steer = Math.min(1, Math.max(0, middle + i * step));
        const gap = gapAt(plain, "left", travel, steer)!;
        if (gap < best.gap) best = { gap, steer };
      }
    }
    expect(best.steer).toBeGreaterThan(0.05);
    expect(best.steer).toBeLessThan(0.95);
    const thick = demoWith([{ ...lip, radius: lip.radius + best.gap + 0.002 }], { hardware: null });
    const sampled = Array.from({ length: 61 }, (_, i) => gapAt(thick, "left", travel, i / 60)!);
    expect(Math.min(...sampled)).toBeGreaterThan(0);
    const [row] = steerLimits(thick, [travel]) ?? [];
    if (!row?.ok) throw new TypeError("out of reach");
    const { left } = row.leftTurn.touch;
    expect(left.stop).toBe("touch");
    expect(Math.abs(left.at - best.steer)).toBeLessThan(0.01);
  });

  it("ends at the border of reach, of either wheel, and names the joint", () => {
    const long = demoModel({ truck: { ...lipAlone().truck, steering: { stroke: 6 } } });
    const limits = expectSteerLimits(long, [-50, 0, 20]);
    expect(limits.some(({ stop }) => stop === "reach")).toBe(true);
    const [row] = steerLimits(long, [0]) ?? [];
    const border = solvePose(long.frontEnd, 0, 1);
    if (!row?.ok || border.ok) throw new TypeError("steers to full lock");
    const { either } = row.leftTurn.touch;
    expect(either).toMatchObject({ stop: "reach", side: border.side, joint: "outer tie rod end" });
    expect(either.at).toBeCloseTo(border.startsAt, 6);
  });

  it("is nothing where it touches straight ahead already, and null in the reach where it cannot stand", () => {
    const peg = { name: "peg", kind: "path" as const, radius: 20, side: "both" as const };
    const pressed = demoWith([{ ...peg, points: [[0, 880, 700] as const] }]);
    const [row, far] = steerLimits(pressed, [0, 500]) ?? [];
    if (!row?.ok || far === undefined) throw new TypeError("stands at rest");
    for (const turn of [row.leftTurn, row.rightTurn]) {
      expect(turn.touch.either).toMatchObject({ stop: "touch", at: 0, part: "peg" });
      expect(turn.touch.left.stop === "touch" && turn.touch.left.gap < -1).toBe(true);
    }
    expect(far).toMatchObject({ ok: false, along: "travel", travel: 500, steer: 0 });
  });
});

describe("how low it goes at each steering input", () => {
  it.each(["rack", "pitman"] as const)("skips no pose of generated trucks with a %s", (kind) => {
    const stops = new Set<string>();
    fc.assert(
      fc.property(cases(kind), (model) => {
        for (const limit of expectLowest(model, [-0.9, 0.3])) stops.add(limit.stop);
      }),
      SEED,
    );
    expect([...stops]).toEqual(expect.arrayContaining(["touch", "end"]));
    expect(stops.has("unproven")).toBe(false);
  });

  it("agrees with how far it steers at that height, of the demo truck", () => {
    const model = demoModel({ hardware: {} });
    expect(expectLowest(model, [-1, -0.4, 0, 0.7]).some(({ stop }) => stop === "touch")).toBe(true);
    // Where more steer means less room, as here, each curve is the other's inverse.
    const [low] = lowestTravels(model, [0.41]) ?? [];
    const { at } = low?.ok ? low.touch.either : { at: Number.NaN };
    const [higher, lower] = steerLimits(model, [at - 0.1, at + 0.1]) ?? [];
    if (!higher?.ok || !lower?.ok) throw new TypeError("out of reach");
    expect(higher.leftTurn.touch.either.at).toBeGreaterThan(0.41);
    expect(lower.leftTurn.touch.either.at).toBeLessThan(0.41);
    expect(lower.leftTurn.touch.either.at).toBeGreaterThan(0.4);
  });

  it("comes down from full droop where the measured height is too near already", () => {
    const lid = { name: "lid", kind: "path" as const, side: "both" as const, radius: 10 };
    const model = demoWith([
      {
        ...lid,
        points: [
          [0, 700, 710],
          [0, 1000, 710],
        ],
      },
    ]);
    const [row] = lowestTravels(model, [0]) ?? [];
    if (!row?.ok) throw new TypeError("out of reach");
    expect(row.touch.from).toBe(model.setup.travel.droop);
    expect(row.touch.either).toMatchObject({ stop: "touch", part: "lid" });
    expect(row.touch.either.at).toBeLessThan(0);
    expect(row.touch.either.at).toBeGreaterThan(model.setup.travel.droop);
    expectLowest(model, [-0.5, 0, 0.5]);
  });

  it("ends where the linkage does, past which nothing is claimed", () => {
    const high = demoModel({ truck: { body: [] }, hardware: null, travel: { bump: 16 } });
    const [row] = lowestTravels(high, [0]) ?? [];
    if (!row?.ok) throw new TypeError("out of reach");
    const { travel } = high.frontEnd.left.reach.bump;
    expect(row.touch.either).toMatchObject({ stop: "reach", joint: "lower ball joint" });
    expect(Math.abs(row.touch.either.at - travel)).toBeLessThan(1e-3);
  });
});

describe("both curves", () => {
  const model = demoModel(lipAlone());

  it("of a mirrored truck are mirror images", () => {
    const [row] = steerLimits(model, [model.setup.travel.bump]) ?? [];
    if (!row?.ok) throw new TypeError("out of reach");
    expect(row.rightTurn.touch.right.at).toBe(-row.leftTurn.touch.left.at);
    expect(row.rightTurn.allowance.left.at).toBe(-row.leftTurn.allowance.right.at);
    const [one, other] = lowestTravels(model, [0.7, -0.7]) ?? [];
    if (!one?.ok || !other?.ok) throw new TypeError("out of reach");
    expect(one.touch.left.at).toBe(other.touch.right.at);
  });

  it("end where they start at what rides together below the level, which no pose changes", () => {
    const { hardware } = demoModel({ hardware: {} }).setup;
    const made = modelOf({ ...model.setup, hardware, allowance: 500 }, "test");
    if (!made.ok) throw new TypeError("does not go together");
    expect(made.value.pairs.some((pair) => pair.kind === "together")).toBe(true);
    const [row] = steerLimits(made.value, [0]) ?? [];
    const names = made.value.pairs.flatMap((pair) => (pair.kind === "together" ? [pair.name] : []));
    if (!row?.ok || row.leftTurn.allowance.either.stop !== "touch") throw new TypeError("keeps 500 mm");
    expect(names).toContain(row.leftTurn.allowance.either.part);
    expect(row.leftTurn.allowance.either).toMatchObject({ at: 0, together: true });
    const [low] = lowestTravels(made.value, [0]) ?? [];
    if (!low?.ok) throw new TypeError("stands straight ahead");
    expect(low.allowance.either).toMatchObject({ at: low.allowance.from, together: true });
    expect(names).toContain(low.allowance.either.stop === "touch" ? low.allowance.either.part : "");
  });
});
