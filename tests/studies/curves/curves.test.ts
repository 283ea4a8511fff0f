import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { resolveSetup } from "../../../src/setup/resolveSetup.ts";
import type { ShockLimit } from "../../../src/setup/types/limitsTypes.ts";
import { rollCurve, USUAL_ROLL } from "../../../src/studies/curves/rollCurve.ts";
import { shockAt } from "../../../src/studies/curves/shockAt.ts";
import { suspensionRow } from "../../../src/studies/curves/suspensionRow.ts";
import { wholeSweep } from "../../../src/studies/curves/wholeSweep.ts";
import { limitMargins } from "../../../src/studies/limits/limitsOf.ts";
import { type Model, modelOf } from "../../../src/studies/model/model.ts";
import { solveApart, solvePose } from "../../../src/suspension/solvePose.ts";
import {
  type FrontViewPoint,
  type PlanarWishbone,
  planarFrontEnd,
  UNEQUAL_ARMS,
} from "../../suspension/planarWishbone.ts";
import { demoModel } from "../demoModel.ts";
import { modelAround } from "../geometry/modelAround.ts";

const SIDES = ["left", "right"] as const;
/** mm of travel each way of a central difference: the lengths are exact to 1e-10, so slopes are good to 1e-6. */
const STEP = 1e-3;

/** A truck with an air spring and a shock; the shock's mounts as asked. */
function limitsTruck(shock: Partial<ShockLimit> = {}): Model {
  const text = readFileSync(new URL("../../../shared/half-ton-limits.json", import.meta.url), "utf8");
  const read = resolveSetup(JSON.parse(text), "limits.json", null);
  if (!read.ok) throw new Error(read.issues[0]!.mend);
  const { limits } = read.value;
  const setup = { ...read.value, limits: { ...limits!, shock: { ...limits!.shock!, ...shock } } };
  const built = modelOf(setup, "limits.json");
  if (!built.ok) throw new Error(built.issues[0]!.mend);
  return built.value;
}

/** Knuckle frame: a mount off every axis, so that each part of the knuckle's turn tells. */
const ON_KNUCKLE = { on: "knuckle", lowerMount: [38, -22, 60] } as const;

const trucks = [
  ["on the lower arm", limitsTruck()],
  ["on the knuckle", limitsTruck(ON_KNUCKLE)],
] as const;

describe("a shock", () => {
  it.each(trucks)("%s has the slope of its length for a motion ratio", (_, model) => {
    for (const side of SIDES) {
      for (const travel of [-70, -20, 0, 31, 60]) {
        const [before, at, after] = [-STEP, 0, STEP].map((step) => shockAt(model, side, travel + step)!);
        const slope = -(after!.length - before!.length) / (2 * STEP);
        expect(at!.motionRatio).toBeCloseTo(slope, 6);
        expect(at!.motionRatio).toBeGreaterThan(0.2);
      }
    }
  });

  it.each(trucks)("%s is as long as its limits have it, and in from its extended length", (_, model) => {
    const { compressed, extended } = model.setup.limits!.shock!;
    for (const travel of [-60, 0, 45]) {
      const margins = limitMargins(model, travel, 0);
      if (!margins.ok) throw new Error("out of reach");
      const { length, travel: used } = shockAt(model, "left", travel)!;
      const ofShock = margins.margins.filter(({ side, name }) => side === "left" && /^shock/.test(name));
      expect(ofShock.map(({ margin }) => margin).sort((a, b) => a - b)).toEqual(
        [length - compressed, extended - length].sort((a, b) => a - b).map((mm) => expect.closeTo(mm, 9)),
      );
      expect(used + length).toBeCloseTo(extended, 12);
    }
  });

  it("upright on a level arm of parallel arms works at its share of the arm, as a lever does", () => {
    // The law of the lever: parallel equal arms do not turn the knuckle, so the wheel rises as the arm's end does.
    const [length, share] = [400, 0.62];
    const parallel: PlanarWishbone = {
      lowerInner: [300, 220],
      lowerOuter: [300 + length, 220],
      upperInner: [300, 480],
      upperOuter: [300 + length, 480],
      wheelCenter: [790, 350],
    };
    const shock: ShockLimit = {
      on: "lowerArm",
      bodyMount: [0, 300 + share * length, 620],
      lowerMount: [0, 300 + share * length, 220],
      ...{ compressed: 250, extended: 500, diameter: null },
    };
    const model = modelAround(planarFrontEnd(parallel), {
      limits: { ...limitsTruck().setup.limits!, shock },
    });
    const { motionRatio } = shockAt(model, "left", 0)!;
    expect(motionRatio).toBeCloseTo(share, 10);
    // Leaned by a, the shock sees the motion along its line alone: cos a of it.
    const leaned = { ...shock, bodyMount: [0, 300 + share * length - 400 * Math.tan(0.3), 620] as const };
    const other = modelAround(planarFrontEnd(parallel), {
      limits: { ...limitsTruck().setup.limits!, shock: leaned },
    });
    expect(shockAt(other, "left", 0)!.motionRatio).toBeCloseTo(share * Math.cos(0.3), 10);
  });

  it("is nothing where none is given, and out of reach", () => {
    expect(shockAt(demoModel(), "left", 0)).toBeNull();
    for (const [, model] of trucks) expect(shockAt(model, "left", -600)).toBeNull();
  });
});

describe("the suspension at a height", () => {
  const [, model] = trucks[0];

  it("has the slopes of camber, toe and spring height", () => {
    for (const travel of [-60, 0, 50]) {
      const at = suspensionRow(model, travel).left!;
      const [before, after] = [-STEP, STEP].map((step) => {
        const pose = solvePose(model.frontEnd, travel + step, 0);
        const row = suspensionRow(model, travel + step).left!;
        if (!pose.ok) throw new Error("out of reach");
        return { ...pose.left, height: row.spring!.height };
      });
      const slope = (key: "camber" | "toe" | "height") => (after![key] - before![key]) / (2 * STEP);
      expect(at.camberGain).toBeCloseTo(slope("camber"), 8);
      expect(at.toeGain).toBeCloseTo(slope("toe"), 8);
      expect(at.spring!.motionRatio).toBeCloseTo(-slope("height"), 6);
    }
  });

  it("is mirrored on the right, and without spring and shock tells of neither", () => {
    const { left, right } = suspensionRow(model, 20);
    expect(right!.instantCenter!.y).toBeCloseTo(-left!.instantCenter!.y, 6);
    expect(right!.swingArm).toBeCloseTo(left!.swingArm!, 6);
    expect(right!.spring!.wheelRate).toBeCloseTo(left!.spring!.wheelRate!, 6);
    expect(suspensionRow(demoModel(), 20).left).toMatchObject({ spring: null, shock: null });
  });
});

/** Where the lines a–b and c–d cross. */
function meet(a: FrontViewPoint, b: FrontViewPoint, c: FrontViewPoint, d: FrontViewPoint): FrontViewPoint {
  const [ux, uz, vx, vz] = [b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]];
  const t = ((c[0] - a[0]) * vz - (c[1] - a[1]) * vx) / (ux * vz - uz * vx);
  return [a[0] + t * ux, a[1] + t * uz];
}

describe("the roll center as the body rolls", () => {
  const drawn: PlanarWishbone = UNEQUAL_ARMS;
  const planar = modelAround(planarFrontEnd(drawn));

  it("is where the lines from both patches through their instant centers cross", () => {
    // The construction of Milliken & Milliken, Race Car Vehicle Dynamics, 1995, chapter 17 (from memory), drawn with both
    // wheels where they are in roll.
    const rows = rollCurve(planar, 0, 9);
    expect(rows).toHaveLength(9);
    for (const { travels, rollCenter } of rows) {
      const pose = solveApart(planar.frontEnd, travels, 0);
      if (!pose.ok) throw new Error("out of reach");
      const ofSide = (side: "left" | "right") => {
        const way = side === "left" ? 1 : -1;
        const view = ([, y, z]: readonly [number, number, number]): FrontViewPoint => [y, z];
        const inner = ([y, z]: FrontViewPoint): FrontViewPoint => [way * y, z];
        const { lowerBallJoint, upperBallJoint, contactPatch } = pose[side];
        const center = meet(
          inner(drawn.lowerInner),
          view(lowerBallJoint),
          inner(drawn.upperInner),
          view(upperBallJoint),
        );
        return { patch: view(contactPatch), center };
      };
      const [left, right] = [ofSide("left"), ofSide("right")];
      const [y, z] = meet(left.patch, left.center, right.patch, right.center);
      expect(rollCenter!.y).toBeCloseTo(y, 4);
      expect(rollCenter!.z).toBeCloseTo(z, 4);
    }
  });

  it("lies in the middle of a level body, and the other way round for the other roll", () => {
    const rows = rollCurve(planar, 0, 9);
    expect(rows[4]!.roll).toBeCloseTo(0, 9);
    expect(rows[4]!.rollCenter!.y).toBeCloseTo(0, 6);
    for (const [i, row] of rows.entries()) {
      const other = rows[8 - i]!;
      expect(other.roll).toBeCloseTo(-row.roll, 9);
      expect(other.rollCenter!.y).toBeCloseTo(-row.rollCenter!.y, 4);
      expect(other.rollCenter!.height).toBeCloseTo(row.rollCenter!.height, 4);
    }
    expect(Math.abs(rows[8]!.rollCenter!.y)).toBeGreaterThan(1);
  });

  it("goes to the roll asked for, or as far as both wheels keep their travel", () => {
    const most = 1.5 * (Math.PI / 180);
    const asked = rollCurve(modelAround(planarFrontEnd(drawn), { roll: { most, curb: null } }), 0, 3);
    expect(asked[0]!.roll).toBeCloseTo(-most, 6);
    expect(asked[2]!.roll).toBeCloseTo(most, 6);
    const short = rollCurve(modelAround(planarFrontEnd(drawn), { travel: { droop: -12, bump: 40 } }), 0, 3);
    expect(short[2]!.travels).toEqual({ left: expect.closeTo(-12, 9), right: expect.closeTo(12, 9) });
    expect(short[2]!.roll).toBeLessThan(USUAL_ROLL);
    expect(rollCurve(planar, planar.setup.travel.bump, 3)).toEqual([]);
  });
});

describe("a whole sweep", () => {
  it("has a row of suspension for each height, and rolls at travel 0", () => {
    const [, model] = trucks[0];
    const { byTravel, suspension, byRoll } = wholeSweep(model, 5);
    expect(suspension.map(({ travel }) => travel)).toEqual(byTravel.map(({ travel }) => travel));
    expect(byRoll).toHaveLength(5);
    for (const { travels } of byRoll) expect(travels.left + travels.right).toBeCloseTo(0, 9);
  });
});
