import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { LoadCase } from "../../../src/setup/types/loadsTypes.ts";
import { limitTravel } from "../../../src/studies/limits/limitsPassed.ts";
import { BOUND_TOLERANCE } from "../../../src/studies/loads/boundForces.ts";
import type { Carriers } from "../../../src/studies/loads/carriers.ts";
import { caseAt, type ForceName, forceSizes } from "../../../src/studies/loads/caseAt.ts";
import { forceJets } from "../../../src/studies/loads/forceJets.ts";
import { largestForces } from "../../../src/studies/loads/loadsReport.ts";
import { searchWorst, type WorstForce } from "../../../src/studies/loads/worstPoses.ts";
import type { Model } from "../../../src/studies/model/model.ts";
import { Budget } from "../../../src/studies/numeric/budget.ts";
import { mostLength } from "../../../src/studies/numeric/jet.ts";
import { armAngleFor } from "../../../src/suspension/armAngle.ts";
import type { Side } from "../../../src/suspension/frontEnd.ts";
import { runs } from "../../runs.ts";
import { example, truckOf } from "./loadTruck.ts";

const ordered = example("ordered-knuckle.json");
const ownLoads = ordered.loads as Record<string, unknown>;
const box = example("long-bed-steering-box.json");
const onUpper = { on: "upperArm", bodyMount: [0, 18, 27], armMount: [0, 22, 18.5] };

/** Rack and steering box, spring on either arm, a stop with a known spring load, sides of different weight. */
const TRUCKS: readonly (readonly [string, object])[] = [
  ["a rack, spring on the lower arm, a stop", ordered],
  [
    "a steering box, spring on the upper arm",
    { ...box, masses: { corner: 1100, unsprung: 90 }, loads: { spring: onUpper } },
  ],
  [
    "one side heavier, the spring's load known at the stop",
    {
      ...ordered,
      masses: { corner: 980, cornerRight: 1040, unsprung: 95 },
      loads: { ...ownLoads, bumpStop: { ...(ownLoads.bumpStop as object), springLoad: 900 } },
    },
  ],
];

const names = (sizes: Partial<Record<ForceName, number>>) => Object.entries(sizes) as [ForceName, number][];

function boundOf(worst: readonly WorstForce[], one: string, side: Side): ReadonlyMap<ForceName, number> {
  const told = worst.filter((force) => force.case === one && force.side === side);
  return new Map(told.map(({ name, bound }) => [name, bound!]));
}

/** Poses of a case anywhere in its range, nothing the search looks at. */
function drawnPoses(model: Model, one: LoadCase, count: number, seed: number) {
  const { low, high } = limitTravel(model);
  const share = fc.double({ min: 0, max: 1, noNaN: true });
  return fc
    .sample(fc.tuple(share, share), { numRuns: count, seed })
    .map(([t, s]) => [one.travel ?? low + t * (high - low), one.steer ?? 2 * s - 1] as const);
}

function worstOf(model: Model, carriers: Carriers, cases = carriers.cases, budget = Budget.endless()) {
  return searchWorst(model, carriers, null, cases, budget).worst;
}

describe("what no pose passes of a force", () => {
  it.each(TRUCKS)("is passed at none of many poses, and is near to the largest found: %s", (_, document) => {
    const { model, carriers } = truckOf(document);
    const cases = carriers.cases.filter((_, i) => i % 2 < runs(1, 2) && i > 0);
    const worst = worstOf(model, carriers, cases);
    expect(new Set(worst.map(({ isNear }) => isNear))).toEqual(new Set([true]));
    for (const side of ["left", "right"] as const)
      for (const one of cases) {
        const bounds = boundOf(worst, one.name, side);
        for (const [travel, steer] of drawnPoses(model, one, runs(150, 4000), 71)) {
          const at = caseAt(model, carriers, one, side, travel, steer);
          for (const [name, size] of at ? names(forceSizes(at)) : [])
            expect(size, `${one.name}, ${side}, ${name}`).toBeLessThanOrEqual(bounds.get(name)!);
        }
      }
    for (const { name, size, bound, side, travel, steer, ...rest } of worst) {
      const one = carriers.cases.find((each) => each.name === rest.case)!;
      const at = caseAt(model, carriers, one, side, travel, steer)!;
      expect(forceSizes(at)[name]).toBeCloseTo(size, 6);
      const load = Math.hypot(...at.applied.wheel.force);
      expect(bound!).toBeGreaterThanOrEqual(size);
      expect(bound! - size).toBeLessThanOrEqual(BOUND_TOLERANCE * Math.max(size, load) * (1 + 1e-6));
    }
  });

  it.each(TRUCKS)("holds of every cell by itself, stopped or not: %s", (_, document) => {
    const { model, carriers } = truckOf(document);
    const { low, high } = limitTravel(model);
    const stop = carriers.bumpStop?.from ?? Number.POSITIVE_INFINITY;
    const share = fc.double({ min: -1, max: 1, noNaN: true });
    let looked = 0;
    fc.assert(
      fc.property(
        fc.nat(carriers.cases.length - 1),
        fc.constantFrom<Side>("left", "right"),
        fc.tuple(share, share, share, share),
        fc.double({ min: 0.01, max: 10, noNaN: true }),
        (which, side, [t, s, u, v], half) => {
          const one = carriers.cases[which]!;
          const [from, to] = [0.5 * (low + high) + t * (0.5 * (high - low) - half), half].map(
            (mid, i, [m]) => (i === 0 ? mid - half : m! + half),
          ) as [number, number];
          if (from < stop && to >= stop) return;
          const side0 = model.frontEnd[side];
          const [a, b] = [armAngleFor(side0, from), armAngleFor(side0, to)];
          const steerHalf = half / 40;
          const cell = {
            angle: 0.5 * (a + b),
            angleHalf: 0.5 * (b - a),
            steer: s * (1 - steerHalf),
            steerHalf,
          };
          const ways = forceJets(model, carriers, one, side, cell, from >= stop);
          const at = caseAt(
            model,
            carriers,
            one,
            side,
            from + 0.5 * (u + 1) * (to - from),
            cell.steer + v * steerHalf,
          );
          if (at === null) return;
          looked++;
          for (const [name, size] of names(forceSizes(at))) {
            const most = Math.max(...ways.map((way) => (way[name] ? mostLength(way[name]) : 0)));
            expect(size, name).toBeLessThanOrEqual(most * (1 + 1e-9));
          }
        },
      ),
      { numRuns: runs(200, 4000), seed: 72 },
    );
    expect(looked).toBeGreaterThan(100);
  });

  it("is of the only pose of a case that has one, and of one way where that is fixed", () => {
    const { model, carriers } = truckOf(ordered);
    const fixed = { ...carriers.cases[1]!, travel: 31, steer: -0.4 };
    for (const { size, bound } of worstOf(model, carriers, [fixed])) expect(bound! / size).toBeCloseTo(1, 8);
    const ahead = { ...fixed, travel: null, steer: 0 };
    const bounds = boundOf(worstOf(model, carriers, [ahead]), ahead.name, "left");
    const free = boundOf(worstOf(model, carriers, [{ ...ahead, steer: null }]), ahead.name, "left");
    expect(bounds.get("upperBallJoint")!).toBeLessThan(free.get("upperBallJoint")!);
  });

  it("is none where the steering comes to the end of its reach, and says so", () => {
    const truck = ordered.truck as { steering: object };
    const wide = { ...ordered, truck: { ...truck, steering: { ...truck.steering, stroke: 5.6 } } };
    const { model, carriers } = truckOf(wide);
    const worst = worstOf(model, carriers, [carriers.cases[2]!]);
    expect(worst.find(({ name }) => name === "tieRod")).toMatchObject({ bound: null, isNear: false });
    expect(largestForces(worst).find(({ name }) => name === "tieRod")).toMatchObject({
      bound: null,
      isNear: false,
    });
  });

  it("still holds where the budget was spent, only farther off or not at all", () => {
    const { model, carriers } = truckOf(ordered);
    const cases = [carriers.cases[5]!];
    let now = 0;
    const clock = () => now++;
    const worst = worstOf(model, carriers, cases, Budget.of(0.075, clock));
    const near = boundOf(worstOf(model, carriers, cases), cases[0]!.name, "left");
    expect(worst.some(({ isNear }) => !isNear)).toBe(true);
    for (const { name, side, bound } of worst)
      if (side === "left")
        expect(bound ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(near.get(name)! * 0.999);
  });
});
