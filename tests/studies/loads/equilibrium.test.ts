import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dot, length, scale, sub, type Vec3 } from "../../../src/geometry/vec.ts";
import type { LoadCase } from "../../../src/setup/types/loadsTypes.ts";
import { airStateAt } from "../../../src/studies/air/airState.ts";
import { appliedLoads, pushLineOf } from "../../../src/studies/loads/appliedLoads.ts";
import { allOf, caseAt } from "../../../src/studies/loads/caseAt.ts";
import { equilibriumOf } from "../../../src/studies/loads/equilibrium.ts";
import { type LinkageAt, linkageAt } from "../../../src/studies/loads/linkageAt.ts";
import { type ForceAt, plus } from "../../../src/studies/strength/wrench.ts";
import { GRAVITY } from "../../../src/units/quantity.ts";
import { planarFrontEnd } from "../../suspension/planarWishbone.ts";
import { plausibleTrucks } from "../../suspension/plausibleTrucks.ts";
import { assembled } from "../../suspension/trucks.ts";
import { example, truckOf } from "./loadTruck.ts";

const within = (found: number, wanted: number, share: number) =>
  expect(Math.abs(found - wanted)).toBeLessThanOrEqual(share * Math.max(1, Math.abs(wanted)));

/** A point fixed in the knuckle at one pose, where it stands at another. */
function carried(point: Vec3, from: LinkageAt, to: LinkageAt): Vec3 {
  const off = sub(point, from.lowerBallJoint);
  const { x, y, z } = from.knuckle;
  return [x, y, z].reduce<Vec3>(
    (sum, axis, i) => plus(sum, scale([to.knuckle.x, to.knuckle.y, to.knuckle.z][i]!, dot(off, axis))),
    to.lowerBallJoint,
  );
}

const work = (force: Vec3, from: Vec3, to: Vec3) => dot(force, sub(to, from));

describe("a planar front end worked by hand", () => {
  // Level arms 400 and 300 long, joints 300 apart one above the other, patch 120 outboard of them.
  const lower = { inner: [300, 200], outer: [700, 200] } as const;
  const frontEnd = assembled(
    planarFrontEnd({
      lowerInner: lower.inner,
      lowerOuter: lower.outer,
      upperInner: [400, 500],
      upperOuter: [700, 500],
      wheelCenter: [820, 330],
    }),
  );
  const at = linkageAt(frontEnd, "left", 0, 0)!;
  const load: ForceAt = { at: at.contactPatch, force: [0, 0, 5000] };

  it("a spring halfway out on the lower arm carries twice the wheel's load; the upper joint has load × 120/300", () => {
    const spring = { on: "lowerArm", at: [0, 500, 200], along: [0, 0, -1] } as const;
    const found = equilibriumOf(at, [load], spring)!;
    within(found.push, 5000 * 2, 1e-12);
    // Moments about the lower ball joint: the wheel's 5000 × 120 tips it inboard at the top, the upper arm holds it out.
    const expected: Vec3 = [0, (5000 * 120) / 300, 0];
    expect(length(sub(found.upperBallJoint, expected))).toBeLessThan(1e-8);
    // Lower joint and tie rod, both at its height, share what holds that; straight ahead the rod has none of it to turn.
    expect(plus(found.lowerBallJoint, found.tieRod)[1]).toBeCloseTo(-2000, 8);
    expect(found.lowerBallJoint[2]).toBeCloseTo(-5000, 8);
    expect(found.tieRod[1]).toBeCloseTo(0, 8);
  });

  it("a spring on the upper arm takes the load there, and the lower arm only pulls and pushes", () => {
    const spring = { on: "upperArm", at: [0, 600, 500], along: [0, 0, -1] } as const;
    const found = equilibriumOf(at, [load], spring)!;
    within(found.push, (5000 * 300) / 200, 1e-12);
    expect(found.lowerBallJoint[2]).toBeCloseTo(0, 8);
    expect(found.upperBallJoint[2]).toBeCloseTo(-5000, 8);
    expect(found.upperBallJoint[1]).toBeCloseTo(2000, 8);
  });

  it("a brake held by the knuckle turns it about the axle: the joints have force × height; a rolling wheel has none of it", () => {
    const spring = { on: "lowerArm", at: [0, 500, 200], along: [0, 0, -1] } as const;
    // Force −3000 at the ground, 200 below the lower joint, 500 below the upper one, and 120 outboard of both.
    const found = equilibriumOf(at, [{ at: at.contactPatch, force: [-3000, 0, 0] }], spring)!;
    expect(found.upperBallJoint[0]).toBeCloseTo((-3000 * 200) / 300, 8);
    // The tie rod, 150 behind, holds the 3000 × 120 that steers it.
    expect(Math.abs(found.tieRod[1])).toBeCloseTo((3000 * 120) / 150, 8);
    expect(found.lowerBallJoint[0]).toBeCloseTo(3000 + 2000, 8);
    // Rolling: as if met at the wheel center, 130 above the lower joint and 170 below the upper one.
    const rolling: LoadCase = {
      ...{ name: "drag", kind: "force", forward: -3000, outboard: 0, up: 0 },
      ...{ at: "contactPatch", wheel: "rolls", travel: null, steer: null },
    };
    const free = equilibriumOf(at, allOf(appliedLoads(rolling, "left", at, null)!), spring)!;
    const center = equilibriumOf(at, [{ at: at.wheelCenter, force: [-3000, 0, 0] }], spring)!;
    expect(length(sub(free.upperBallJoint, center.upperBallJoint))).toBeLessThan(1e-8);
    expect(center.upperBallJoint[0]).toBeCloseTo((3000 * 130) / 300, 8);
  });

  it("has no answer where the push has no lever", () => {
    const idle = { on: "lowerArm", at: [0, 500, 200], along: [0, 1, 0] } as const;
    expect(equilibriumOf(at, [load], idle)).toBeNull();
  });
});

describe("equilibrium by virtual work", () => {
  // mm and share of lock: of the third order in what follows.
  const STEP = 1e-3;

  it("no force of the joints works: load, spring and rack do as much as they take, along travel and along steer", () => {
    const numbers = fc.double({ min: -1, max: 1, noNaN: true });
    fc.assert(
      fc.property(
        fc.oneof(plausibleTrucks("rack"), plausibleTrucks("pitman")),
        fc.tuple(numbers, numbers, numbers),
        fc.constantFrom("lowerArm", "upperArm"),
        fc.constantFrom("left", "right"),
        fc.double({ min: -40, max: 40, noNaN: true }),
        fc.double({ min: -0.9, max: 0.9, noNaN: true }),
        ({ frontEnd, input }, [fx, fy, fz], arm, side, travel, steer) => {
          const stand = (t: number, s: number) => linkageAt(frontEnd, side, t, s);
          const here = stand(travel, steer);
          const around = [
            [stand(travel - STEP, steer), stand(travel + STEP, steer)],
            [stand(travel, steer - STEP), stand(travel, steer + STEP)],
          ] as const;
          if (!here || around.flat().includes(null)) return;
          const joint = input[arm].ballJoint;
          const armMount: Vec3 = [joint[0] + 10, joint[1] - 90, joint[2] - 15];
          const bodyMount: Vec3 = [joint[0] - 20, joint[1] - 140, joint[2] + 260];
          const line = pushLineOf({ on: arm, bodyMount, armMount }, here);
          const force: Vec3 = [5000 * fx, 4000 * fy, 2000 + 9000 * fz];
          const load: ForceAt = { at: here.contactPatch, force };
          const found = equilibriumOf(here, [load], line);
          if (found === null) return;
          expect(found.residual).toBeLessThan(1e-9);
          for (const [before, after] of around) {
            const loadWork = work(force, carried(load.at, here, before!), carried(load.at, here, after!));
            const pushWork = work(
              scale(line.along, found.push),
              before!.onArm(arm, armMount),
              after!.onArm(arm, armMount),
            );
            // The rack holds the inner end with what the rod gives the knuckle.
            const rackWork = work(found.tieRod, before!.tieRodInner, after!.tieRodInner);
            const most = Math.max(Math.abs(loadWork), Math.abs(pushWork), Math.abs(rackWork), 1e-3);
            expect(Math.abs(loadWork + pushWork + rackWork) / most).toBeLessThan(1e-4);
          }
        },
      ),
      { seed: 1955, numRuns: 60 },
    );
  });
});

describe("a truck's cases", () => {
  const { model, carriers } = truckOf(example("half-ton-limits.json"));
  const named = (name: string) => carriers.cases.find((one) => one.name === name)!;

  it("standing on its scale, the spring carries what the air springs are worked out to carry, at every height", () => {
    for (const travel of [-90, -40, 0, 30, 80]) {
      const found = caseAt(model, carriers, named("standing"), "left", travel, 0)!;
      within(length(found.spring.force), airStateAt(model, "left", travel)!.load!, 1e-9);
      const twice = caseAt(model, carriers, { ...named("standing"), up: 2 }, "left", travel, 0)!;
      within(length(twice.spring.force), 2 * length(found.spring.force), 1e-12);
    }
  });

  it("the ground pushes up by the corner's weight, and what does not ride on the spring takes its own off", () => {
    const { applied } = caseAt(model, carriers, named("standing"), "right", 0, 0.3)!;
    const { corner, unsprung } = model.setup.masses!;
    expect(applied.wheel.force[2]).toBeCloseTo(corner * GRAVITY, 9);
    expect(applied.unsprung?.force[2]).toBeCloseTo(-unsprung * GRAVITY, 9);
  });

  it("leaves less than 1e-9 of the load over, in every case at every height and lock", () => {
    for (const one of carriers.cases)
      for (const travel of [-95, 0, 88])
        for (const steer of [-1, 0, 1]) {
          const found = caseAt(model, carriers, one, "left", travel, steer)!;
          expect(found.support.residual).toBeLessThan(1e-9);
        }
  });

  it("mirrored, carries the same with the steering reversed", () => {
    for (const one of carriers.cases) {
      const left = caseAt(model, carriers, one, "left", 25, 0.6)!.support;
      const right = caseAt(model, carriers, one, "right", 25, -0.6)!.support;
      expect(length(sub(left.lowerBallJoint, right.lowerBallJoint))).toBeLessThan(1e-6);
      expect(length(sub(left.tieRod, right.tieRod))).toBeLessThan(1e-6);
    }
  });

  it("a bump stop takes what the spring does not, from where it is met, and never pulls", () => {
    const stop = { on: "lowerArm", bodyMount: [0.25, 22, 14], armMount: [0.25, 22, 10], from: 3 };
    const stopped = truckOf({ ...example("half-ton-limits.json"), loads: { bumpStop: stop } });
    const at = (name: string, mm: number) =>
      caseAt(stopped.model, stopped.carriers, named(name), "left", mm, 0)!;
    expect(at("one-wheel landing", 70).bumpStop).toBeNull();
    const met = at("one-wheel landing", 80);
    const standing = caseAt(model, carriers, named("standing"), "left", 80, 0)!;
    within(length(met.spring.force), length(standing.spring.force), 1e-9);
    expect(met.bumpStop!.force[2]).toBeLessThan(0);
    // About the arm's pivot line both together turn it as the spring alone would.
    const alone = caseAt(model, carriers, named("one-wheel landing"), "left", 80, 0)!;
    expect(length(sub(met.support.upperBallJoint, alone.support.upperBallJoint))).toBeLessThan(1e-6);
    expect(length(sub(met.support.lowerBallJoint, alone.support.lowerBallJoint))).toBeLessThan(1e-6);
    // Less than the corner's weight presses no stop.
    expect(
      caseAt(stopped.model, stopped.carriers, { ...named("standing"), up: 0.5 }, "left", 80, 0)?.bumpStop,
    ).toBeNull();
    const held = truckOf({
      ...example("half-ton-limits.json"),
      loads: { bumpStop: { ...stop, springLoad: "2000 lb" } },
    });
    const { spring } = caseAt(held.model, held.carriers, named("one-wheel landing"), "left", 80, 0)!;
    within(length(spring.force), 2000 * 4.4482216152605, 1e-9);
  });

  it("every force on the knuckle, put together anew from what is told, adds up to nothing", () => {
    const found = caseAt(model, carriers, named("braking in a turn"), "left", -30, -0.7)!;
    const { support, applied } = found;
    const sum = [
      ...allOf(applied).map(({ force }) => force),
      support.lowerBallJoint,
      support.upperBallJoint,
      support.tieRod,
    ].reduce(plus);
    expect(length(sum)).toBeLessThan(1e-6);
  });
});
