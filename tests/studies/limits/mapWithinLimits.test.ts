import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { LimitsSetup } from "../../../src/setup/types/limitsTypes.ts";
import { LimitBorders } from "../../../src/studies/limits/limitBorders.ts";
import { limitMargins } from "../../../src/studies/limits/limitsOf.ts";
import { mapOf } from "../../../src/studies/map/clearanceMap.ts";
import { limitBorderOf } from "../../../src/studies/map/contours.ts";
import { lowestTravels } from "../../../src/studies/map/lowestTravels.ts";
import { steerLimits } from "../../../src/studies/map/steerLimits.ts";
import type { Model } from "../../../src/studies/model/model.ts";
import { gapsAt } from "../../../src/studies/reports/gapsAt.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import { runs } from "../../runs.ts";
import { demoModel, lipAlone } from "../demoModel.ts";
import { limitedTrucks } from "./limitedTrucks.ts";
import { NO_LIMITS } from "./limitTruck.ts";

const DEG = Math.PI / 180;
const SEED = { seed: 1968, numRuns: runs(4, 9) };

const free = demoModel(lipAlone());

function limited(limits: Partial<LimitsSetup>): Model {
  return { ...free, setup: { ...free.setup, limits: { ...NO_LIMITS, ...limits } } };
}

const stopped = limited({ steeringStop: 20 * DEG, droopStrap: -60, bumpStop: 85 });

describe("a map of a truck with limits", () => {
  it.each(["rack", "pitman"] as const)(
    "marks in each cell what is passed at its pose, %s steering",
    (kind) => {
      let [passed, kept] = [0, 0];
      for (const model of [stopped, ...fc.sample(limitedTrucks(kind), SEED)]) {
        const { pastLimit, travels, steers, reach } = mapOf(model, { rows: 7, cols: 9 })!;
        const some = limitMargins(model, 0, 0);
        if (some.ok && some.margins.length === 0) {
          expect(pastLimit).toBeNull();
          continue;
        }
        const { limits, passed: cells, share } = pastLimit!;
        for (const [cell, place] of cells.entries()) {
          const [travel, steer] = [travels[Math.floor(cell / 9)]!, steers[cell % 9]!];
          const pose = limitMargins(model, travel, steer);
          if (!pose.ok) {
            expect([place, reach.status[cell] !== 0, Number.isNaN(share[cell]!)]).toEqual([-1, true, true]);
            continue;
          }
          // Two that are passed alike, as by both wheels straight ahead: either may be named.
          const worst = pose.margins.filter((one) => one.share < pose.margins[0]!.share + 1e-9);
          const isPassed = worst[0]!.margin < -1e-6;
          expect(place >= 0).toBe(isPassed);
          expect(share[cell]! < 0).toBe(isPassed);
          expect(Math.abs(share[cell]! - worst[0]!.share)).toBeLessThan(1e-4);
          if (!isPassed) {
            kept++;
            continue;
          }
          passed++;
          const { side, name } = limits[place]!;
          expect(worst.map((one) => `${one.side} ${one.name}`)).toContain(`${side} ${name}`);
        }
      }
      expect(passed).toBeGreaterThan(100);
      expect(kept).toBeGreaterThan(100);
    },
  );

  it("draws the border where the least margin is 0", () => {
    const map = mapOf(stopped)!;
    const lines = limitBorderOf(map);
    const points = lines.flatMap((line) =>
      Array.from({ length: line.length / 2 }, (_, i) => [line[2 * i]!, line[2 * i + 1]!] as const),
    );
    expect(points.length).toBeGreaterThan(100);
    for (const [travel, steer] of points) {
      const pose = limitMargins(stopped, travel, steer);
      if (!pose.ok) throw new Error("out of reach");
      expect(Math.abs(pose.margins[0]!.share)).toBeLessThan(0.02);
    }
  });

  it("has no such thing without limits, and the same gaps", () => {
    const [bare, with3] = [mapOf(free)!, mapOf(stopped)!];
    expect(bare.pastLimit).toBeNull();
    expect(limitBorderOf(bare)).toEqual([]);
    expect({ ...with3, pastLimit: null }).toEqual(bare);
  });
});

describe("how far it steers and how low it goes, of a truck with limits", () => {
  it("names the steering stop where it comes before the fender, the fender where that does", () => {
    const [low, mid] = steerLimits(stopped, [free.setup.travel.bump - 5, 0])!;
    if (!low?.ok || !mid?.ok) throw new Error("out of reach");
    const { either } = mid.leftTurn.touch;
    expect(either).toMatchObject({ stop: "limit", side: "left", name: "steering stop" });
    const at = solvePose(stopped.frontEnd, 0, either.at);
    if (!at.ok) throw new Error("out of reach");
    expect(Math.max(at.left.steerAngle, at.right.steerAngle) / DEG).toBeCloseTo(20, 2);
    expect(low.leftTurn.touch.either).toMatchObject({ stop: "touch", part: "fender lip" });
    const [straight] = lowestTravels(stopped, [0])!;
    if (!straight?.ok) throw new Error("out of reach");
    expect(straight.touch.either).toMatchObject({ stop: "limit", name: "bump stop" });
    expect(straight.touch.either.at).toBeCloseTo(85, 2);
  });

  it("tells what is passed at the start already", () => {
    const [row] = steerLimits(stopped, [-70])!;
    const [full] = lowestTravels(stopped, [1])!;
    if (!row?.ok || !full?.ok) throw new Error("out of reach");
    expect(row.leftTurn.touch.either).toMatchObject({ stop: "limit", at: 0, name: "droop strap" });
    expect(full.touch).toMatchObject({ from: 0, either: { stop: "limit", at: 0 } });
  });

  it("comes down from the droop strap where the measured height is too near", () => {
    const near = { ...stopped, setup: { ...stopped.setup, allowance: 14 } };
    const [row] = lowestTravels(near, [0])!;
    if (!row?.ok) throw new Error("out of reach");
    expect(row.touch.from).toBe(0);
    const bare = lowestTravels({ ...free, setup: near.setup, pairs: near.pairs }, [0])!;
    expect(bare).toEqual([row]);
    if (row.allowance.from < 0) expect(row.allowance.from).toBeCloseTo(-60, 2);
  });

  it("is the same where no limit is passed", () => {
    const wide = limited({ steeringStop: 80 * DEG, bumpStop: free.setup.travel.bump });
    const travels = [-80, -20, 30, 85];
    expect(steerLimits(wide, travels)).toEqual(steerLimits(free, travels));
    expect(lowestTravels(wide, [-1, 0, 0.4])).toEqual(lowestTravels(free, [-1, 0, 0.4]));
  });

  it.each(["rack", "pitman"] as const)(
    "no pose on the way passes a limit or touches, and the limit named is passed just past it, %s steering",
    (kind) => {
      let stops = 0;
      for (const model of fc.sample(limitedTrucks(kind), SEED)) {
        const borders = new LimitBorders(model);
        const keeps = (travel: number, steer: number) => {
          const pose = solvePose(model.frontEnd, travel, steer);
          if (!pose.ok) throw new Error(`out of reach: ${JSON.stringify(model.setup)}`);
          return (
            borders.passedAt(travel, steer) === null && gapsAt(model, pose).every(({ gap }) => gap > -1e-6)
          );
        };
        const { droop, bump } = model.setup.travel;
        for (const row of steerLimits(model, [0.7 * droop, 0, 0.8 * bump])!) {
          if (!row.ok) continue;
          for (const [way, turn] of [
            [1, row.leftTurn],
            [-1, row.rightTurn],
          ] as const) {
            const { either } = turn.touch;
            for (const share of [0.2, 0.5, 0.9, 0.999])
              if (either.at !== 0) expect(keeps(row.travel, share * either.at)).toBe(true);
            if (either.stop !== "limit") continue;
            stops++;
            const past = [1e-5, 1e-4, 1e-3].map((off) => borders.passedAt(row.travel, either.at + way * off));
            expect(past.some((one) => one !== null)).toBe(true);
          }
        }
        for (const row of lowestTravels(model, [-0.6, 0, 0.9])!) {
          if (!row.ok) continue;
          const { either, from } = row.touch;
          for (const share of [0.2, 0.5, 0.9, 0.999])
            if (either.at > from) expect(keeps(from + share * (either.at - from), row.steer)).toBe(true);
          if (either.stop !== "limit") continue;
          stops++;
          const past = [0, 1e-3, 0.01, 0.2].map((off) => borders.passedAt(either.at + off, row.steer));
          expect(past.some((one) => one !== null)).toBe(true);
        }
      }
      expect(stops).toBeGreaterThan(10);
    },
    120_000,
  );
});
