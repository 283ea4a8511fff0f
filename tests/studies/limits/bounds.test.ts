import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { normalize } from "../../../src/geometry/vec.ts";
import type { LimitsSetup } from "../../../src/setup/types/limitsTypes.ts";
import { LimitBorders } from "../../../src/studies/limits/limitBorders.ts";
import { CellState, LimitCell } from "../../../src/studies/limits/limitCell.ts";
import { LimitStatus } from "../../../src/studies/limits/limitStatus.ts";
import { limitMargins } from "../../../src/studies/limits/limitsOf.ts";
import { limitsOverRange } from "../../../src/studies/limits/limitsPassed.ts";
import type { Model } from "../../../src/studies/model/model.ts";
import { armAngleFor } from "../../../src/suspension/armAngle.ts";
import type { Side } from "../../../src/suspension/frontEnd.ts";
import type { FrontEndInput } from "../../../src/suspension/inputs.ts";
import { POSE_ROW, poseRowTo } from "../../../src/suspension/poseRow.ts";
import { PoseStatus } from "../../../src/suspension/poseStatus.ts";
import { INNER_ENDS_ROW } from "../../../src/suspension/steering.ts";
import { type GeneratedTruck, plausibleTrucks, SEED } from "../../suspension/plausibleTrucks.ts";
import { wishbone } from "../../suspension/trucks.ts";
import { bareSpring, limitModel } from "./limitTruck.ts";

const DEG = Math.PI / 180;

/** Every kind of limit at once, off center, so that no margin sits at its best place at rest. */
function everyLimit({ lowerArm, upperArm }: FrontEndInput): Partial<LimitsSetup> {
  const [x, y] = lowerArm.ballJoint;
  const body = [x + 15, y - 60, upperArm.ballJoint[2] + 60] as const;
  const joint = { cone: 15 * DEG, inOut: 14 * DEG, foreAft: 6 * DEG };
  return {
    upperBallJoint: { ...joint, stud: normalize([0.05, 0.02, 1]), housing: normalize([0.08, 0.1, 1]) },
    lowerBallJoint: { ...joint, stud: normalize([-0.08, 0.03, 1]), housing: null },
    outerTieRodEnd: { misalignment: 18 * DEG, stud: normalize([0.05, 0.1, 1]) },
    innerTieRodEnd: { misalignment: 20 * DEG, stud: null },
    bumpStop: 60,
    droopStrap: -55,
    steeringStop: 25 * DEG,
    steeringStroke: 0.3,
    shock: {
      bodyMount: body,
      lowerMount: [-20, -30, 60],
      on: "knuckle",
      compressed: 250,
      extended: 330,
      diameter: null,
    },
  };
}

function modelOfTruck({ input }: GeneratedTruck): Model {
  const [x, y, z] = input.lowerArm.ballJoint;
  const spring = bareSpring([x, y - 200, z + 220], [x + 10, y - 160, z + 20]);
  return limitModel(input, everyLimit(input), {
    airSpring: { ...spring, leastHeight: 120, greatestHeight: 280 },
    travel: { droop: -80, bump: 80 },
  });
}

describe("how far a margin can fall within a cell of poses", () => {
  it("is never less than sampling finds, for every kind of limit, on both sides", () => {
    let bounded = 0;
    let tightest = Number.POSITIVE_INFINITY;
    const place = fc.tuple(
      fc.double({ min: -70, max: 70, noNaN: true }),
      fc.double({ min: -0.9, max: 0.9, noNaN: true }),
    );
    const halves = fc.tuple(fc.constantFrom(0, 1e-4, 0.01, 0.05), fc.constantFrom(0, 1e-3, 0.02, 0.1));
    fc.assert(
      fc.property(
        plausibleTrucks(),
        place,
        halves,
        fc.constantFrom<Side>("left", "right"),
        (truck, [travel, steer], [armHalf, steerHalf], side) => {
          const model = modelOfTruck(truck);
          const cell = new LimitCell(model, side);
          const arm = armAngleFor(cell.side, travel);
          if (Number.isNaN(arm) || cell.look(arm, armHalf, steer, steerHalf) !== CellState.Bounded) return;
          bounded++;
          const least = cell.limits.map((_, i) => {
            const margin = cell.margin(i);
            const spread = cell.spreadOf(i);
            return margin - spread[0]! - spread[1]!;
          });
          const sampled = new LimitCell(model, side);
          for (const a of [-1, -0.6, 0, 0.35, 1]) {
            for (const s of [-1, -0.5, 0, 0.7, 1]) {
              expect(sampled.put(arm + a * armHalf, steer + s * steerHalf)).toBe(PoseStatus.Ok);
              for (const [i, { name }] of sampled.limits.entries()) {
                const over = sampled.margin(i) - least[i]!;
                if (armHalf + steerHalf > 0) tightest = Math.min(tightest, over);
                expect([name, over > -1e-9]).toEqual([name, true]);
              }
            }
          }
        },
      ),
      SEED,
    );
    expect(bounded).toBeGreaterThan(200);
    // Stops along travel and the stroke are bounded exactly: the bound is reached.
    expect(tightest).toBeLessThan(1e-6);
  }, 120_000);
});

/** The least of each limit over a grid of a side's poses. */
function sampledLeast(model: Model, side: Side, steps: number): number[] {
  const cell = new LimitCell(model, side);
  const { droop, bump } = model.setup.travel;
  const least = cell.limits.map(() => Number.POSITIVE_INFINITY);
  for (let i = 0; i <= steps; i++) {
    const arm = armAngleFor(cell.side, droop + ((bump - droop) * i) / steps);
    for (let k = 0; k <= steps; k++) {
      if (cell.put(arm, -1 + (2 * k) / steps) !== PoseStatus.Ok) continue;
      for (const at of least.keys()) least[at] = Math.min(least[at]!, cell.margin(at));
    }
  }
  return least;
}

describe("the least margin over the range against plain sampling", () => {
  it("is found, and no sample is below its bound, rack and pitman arm", () => {
    for (const kind of ["rack", "pitman"] as const) {
      const [truck] = fc.sample(plausibleTrucks(kind), { seed: SEED.seed, numRuns: 1 });
      const model = modelOfTruck(truck!);
      const found = limitsOverRange(model);
      for (const side of ["left", "right"] as const) {
        const least = sampledLeast(model, side, 60);
        const ofSide = found.filter((one) => one.side === side);
        expect(ofSide.length).toBe(least.length);
        ofSide.forEach(({ name, margin, bound, measure }, i) => {
          const tolerance = measure === "angle" ? 0.0101 * DEG : 0.0501;
          expect([kind, side, name, margin <= least[i]! + tolerance]).toEqual([kind, side, name, true]);
          expect([kind, side, name, least[i]! >= bound - 1e-9]).toEqual([kind, side, name, true]);
          expect(margin - bound).toBeLessThanOrEqual(tolerance);
        });
      }
    }
  }, 120_000);
});

describe("a border of the reachable region", () => {
  const joint = { cone: 9 * DEG, inOut: null, foreAft: null, stud: null, housing: null };
  const model = limitModel(
    wishbone,
    {
      lowerBallJoint: { ...joint, stud: normalize([0.05, 0.05, 1]) },
      upperBallJoint: { ...joint, inOut: 7 * DEG },
      innerTieRodEnd: { misalignment: 14 * DEG, stud: null },
      bumpStop: 62,
      steeringStop: 21 * DEG,
    },
    { travel: { droop: -90, bump: 90 } },
  );
  const borders = new LimitBorders(model);

  it("has all limits kept on the way and the one named passed just past it", () => {
    let met = 0;
    for (const travel of [-50, -20, 0, 30, 55]) {
      for (const lock of [-1, 1] as const) {
        if (borders.passedAt(travel, 0) !== null) continue;
        const border = borders.alongSteer(travel, lock);
        for (let i = 0; i <= 50; i++) expect(borders.passedAt(travel, (border.at * i) / 50)).toBeNull();
        if (border.stop !== "limit") continue;
        met++;
        const past = borders.passedAt(travel, border.at + 1e-4 * lock);
        expect(past).toEqual({ side: border.side, name: border.name });
      }
    }
    expect(met).toBeGreaterThan(2);
  });

  it("along travel too", () => {
    let met = 0;
    for (const steer of [-0.3, 0, 0.2]) {
      if (borders.passedAt(0, steer) !== null) continue;
      for (const to of [-80, 80]) {
        const border = borders.alongTravel(steer, 0, to);
        met++;
        expect(border.stop).toBe("limit");
        for (let i = 0; i <= 50; i++) expect(borders.passedAt((border.at * i) / 50, steer)).toBeNull();
        expect(borders.passedAt(border.at + 0.01 * Math.sign(to), steer)).not.toBeNull();
      }
    }
    expect(met).toBe(6);
  });

  it("agrees with what a map asks of pose rows", () => {
    const { left } = model.frontEnd;
    const status = new LimitStatus(model, "left");
    const ends = new Float64Array(INNER_ENDS_ROW);
    const pose = new Float64Array(2 * POSE_ROW);
    const margins = new Float64Array(status.limits.length);
    let passed = 0;
    for (const travel of [-75, -30, 0, 40, 75]) {
      for (const steer of [-1, -0.4, 0, 0.5, 1]) {
        const arm = armAngleFor(left, travel);
        if (model.frontEnd.steering.innerEndsTo(ends, steer) !== PoseStatus.Ok) continue;
        const [x, y, z] = [ends[0]!, ends[1]!, ends[2]!];
        if (poseRowTo(pose, POSE_ROW, left.row, Math.cos(arm), Math.sin(arm), x, y, z) !== PoseStatus.Ok)
          continue;
        const found = status.limitStatusAt(pose, POSE_ROW, ends, 0, travel, steer);
        status.marginsTo(margins, pose, POSE_ROW, ends, 0, travel, steer);
        const told = limitMargins(model, travel, steer);
        if (!told.ok) continue;
        const ofLeft = told.margins.filter(({ side }) => side === "left");
        for (const [i, { name }] of status.limits.entries())
          expect(margins[i]).toBeCloseTo(ofLeft.find((one) => one.name === name)!.margin, 8);
        const worst = ofLeft[0]!;
        expect(found < 0 ? null : status.limits[found]!.name).toBe(worst.share < 0 ? worst.name : null);
        if (found >= 0) passed++;
      }
    }
    expect(passed).toBeGreaterThan(3);
    expect(passed).toBeLessThan(25);
  });
});
