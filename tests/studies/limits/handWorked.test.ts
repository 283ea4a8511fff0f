import { describe, expect, it } from "vitest";
import { cross, dot, length, mirrorY, normalize, scale, sub, type Vec3 } from "../../../src/geometry/vec.ts";
import type { BallJointLimit } from "../../../src/setup/types/limitsTypes.ts";
import { jointConesAt } from "../../../src/studies/limits/jointCones.ts";
import { limitMargins } from "../../../src/studies/limits/limitsOf.ts";
import { limitsOverRange, limitsPassed } from "../../../src/studies/limits/limitsPassed.ts";
import type { Model } from "../../../src/studies/model/model.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import { planarFrontEnd } from "../../suspension/planarWishbone.ts";
import { wishbone } from "../../suspension/trucks.ts";
import { limitModel } from "./limitTruck.ts";

const DEG = Math.PI / 180;
const CONE: BallJointLimit = { cone: 20 * DEG, inOut: null, foreAft: null, stud: null, housing: null };

/** A parallelogram in the front view, arms 400 mm and level: the knuckle stays upright, travel is 400·sin α. */
const parallelogram = planarFrontEnd({
  lowerInner: [300, 250],
  lowerOuter: [700, 250],
  upperInner: [300, 520],
  upperOuter: [700, 520],
  wheelCenter: [780, 360],
});

const TRAVEL = { droop: -120, bump: 140 };

function marginOf(model: Model, name: string, travel: number, steer = 0): number {
  const pose = limitMargins(model, travel, steer);
  if (!pose.ok) throw new Error("out of reach");
  const found = pose.margins.find((one) => one.name === name && one.side === "left");
  if (!found) throw new Error(`no ${name}`);
  return found.margin;
}

describe("a ball joint of a parallelogram, by hand", () => {
  const cone = 12 * DEG;
  const model = limitModel(
    parallelogram,
    {
      lowerBallJoint: { ...CONE, cone, inOut: cone, foreAft: cone },
      upperBallJoint: { ...CONE, cone },
    },
    { travel: TRAVEL },
  );

  it("leans by the arm's angle, asin(travel / 400), in the plane of the arm alone", () => {
    for (const travel of [-110, -60, -1, 0, 1, 45, 130]) {
      const lean = Math.abs(Math.asin(travel / 400));
      expect(marginOf(model, "lower ball joint", travel)).toBeCloseTo(cone - lean, 9);
      expect(marginOf(model, "upper ball joint", travel)).toBeCloseTo(cone - lean, 9);
      expect(marginOf(model, "lower ball joint, in and out", travel)).toBeCloseTo(cone - lean, 9);
      expect(marginOf(model, "lower ball joint, fore and aft", travel)).toBeCloseTo(cone, 9);
    }
  });

  it("starts to bind at 400·sin(cone) either way", () => {
    const found = limitsPassed(model).filter(({ side }) => side === "left");
    expect(found.map(({ name }) => name)).toEqual([
      "upper ball joint",
      "lower ball joint",
      "lower ball joint, in and out",
    ]);
    for (const { starts, margin, bound, travel } of found) {
      expect(starts?.bump).toBeCloseTo(400 * Math.sin(cone), 2);
      expect(starts?.droop).toBeCloseTo(-400 * Math.sin(cone), 2);
      expect(starts?.bump).toBeLessThanOrEqual(400 * Math.sin(cone) + 1e-6);
      expect(travel).toBeCloseTo(140, 6);
      expect(margin).toBeCloseTo(cone - Math.asin(140 / 400), 6);
      expect(margin - bound).toBeLessThanOrEqual(0.0101 * DEG);
    }
  });

  it("leans less one way and more the other when its housing is not centered", () => {
    const tipped = limitModel(
      parallelogram,
      { lowerBallJoint: { ...CONE, housing: [0, Math.sin(5 * DEG), Math.cos(5 * DEG)] } },
      { travel: TRAVEL },
    );
    // Bump turns the arm, and with it the housing's top, inboard: 5° of lean outboard are taken back first.
    expect(marginOf(tipped, "lower ball joint", 0)).toBeCloseTo(15 * DEG, 9);
    expect(marginOf(tipped, "lower ball joint", 400 * Math.sin(5 * DEG))).toBeCloseTo(20 * DEG, 7);
    expect(marginOf(tipped, "lower ball joint", -400 * Math.sin(5 * DEG))).toBeCloseTo(10 * DEG, 9);
  });

  it("takes a housing typed upside down for the same line", () => {
    const axis: Vec3 = [0.1, 0.2, 1];
    const [up, down] = [1, -1].map((way) =>
      limitModel(parallelogram, { upperBallJoint: { ...CONE, housing: normalize(scale(axis, way)) } }),
    );
    expect(marginOf(up!, "upper ball joint", 50, 0.5)).toBeCloseTo(
      marginOf(down!, "upper ball joint", 50, 0.5),
      12,
    );
  });
});

describe("ball joints of a spatial front end against the angle between two lines", () => {
  const stud: Vec3 = normalize([0.05, -0.1, 1]);
  const housing: Vec3 = normalize([0.06, 0.05, 1]);
  const model = limitModel(wishbone, { lowerBallJoint: { ...CONE, stud, housing } }, { travel: TRAVEL });

  it("is acos(stud · housing), the housing turned with the arm by Rodrigues' formula", () => {
    const { frontPivot, rearPivot } = wishbone.lowerArm;
    const axis = normalize(sub(frontPivot, rearPivot));
    for (const [travel, steer] of [
      [0, 0],
      [60, 0.7],
      [-70, -1],
      [25, 1],
    ] as const) {
      const pose = solvePose(model.frontEnd, travel, steer);
      if (!pose.ok) throw new Error("out of reach");
      const { row, armAngle } = pose.left;
      const turned = rotate(housing, axis, armAngle, wishbone.lowerArm.ballJoint, frontPivot);
      const inTruck = [0, 1, 2].map(
        (i) => stud[0] * row[12 + i]! + stud[1] * row[15 + i]! + stud[2] * row[18 + i]!,
      ) as unknown as Vec3;
      const lean = Math.acos(dot(inTruck, turned));
      expect(marginOf(model, "lower ball joint", travel, steer)).toBeCloseTo(20 * DEG - lean, 8);
    }
  });
});

/** Turns `v` about `axis` by `angle`, the way that lifts `joint`. */
function rotate(v: Vec3, axis: Vec3, angle: number, joint: Vec3, pivot: Vec3): Vec3 {
  const lifts = cross(axis, sub(joint, pivot))[2] > 0 ? 1 : -1;
  const k = scale(axis, lifts);
  const across = cross(k, v);
  const along = dot(k, v) * (1 - Math.cos(angle));
  return [0, 1, 2].map(
    (i) => v[i]! * Math.cos(angle) + across[i]! * Math.sin(angle) + k[i]! * along,
  ) as unknown as Vec3;
}

describe("the cones at a pose", () => {
  it("hold housing and stud as far apart as the margins say, mirrored on the right", () => {
    const model = limitModel(
      wishbone,
      { upperBallJoint: { ...CONE, stud: normalize([0.1, 0.1, 1]) }, lowerBallJoint: CONE },
      { travel: TRAVEL },
    );
    const pose = solvePose(model.frontEnd, 55, 0);
    if (!pose.ok) throw new Error("out of reach");
    const cones = jointConesAt(model, pose);
    expect(cones.map(({ name, side }) => [name, side])).toEqual([
      ["upper ball joint", "left"],
      ["lower ball joint", "left"],
      ["upper ball joint", "right"],
      ["lower ball joint", "right"],
    ]);
    for (const { name, side, cone, housing, stud, center } of cones) {
      const joint = name === "upper ball joint" ? pose[side].upperBallJoint : pose[side].lowerBallJoint;
      expect(center).toEqual(joint);
      expect([length(housing), length(stud)]).toEqual([expect.closeTo(1, 9), expect.closeTo(1, 9)]);
      expect(cone - Math.acos(dot(housing, stud))).toBeCloseTo(marginOf(model, name, 55), 7);
    }
    expect(cones[2]?.stud).toEqual(mirrorY(cones[0]!.stud));
  });
});

describe("tie rod ends", () => {
  const limits = {
    outerTieRodEnd: { misalignment: 25 * DEG, stud: null },
    innerTieRodEnd: { misalignment: 30 * DEG, stud: null },
  };

  it("lean by the rod's angle off square to the stud, and off the rack's line", () => {
    const model = limitModel(wishbone, limits, { travel: TRAVEL });
    for (const [travel, steer] of [
      [0, 0],
      [70, 0.5],
      [-80, -1],
    ] as const) {
      const pose = solvePose(model.frontEnd, travel, steer);
      if (!pose.ok) throw new Error("out of reach");
      const { tieRodOuter, tieRodInner, upperBallJoint, lowerBallJoint } = pose.left;
      const rod = sub(tieRodOuter, tieRodInner);
      const axis = normalize(sub(upperBallJoint, lowerBallJoint));
      const offSquare = Math.abs(Math.PI / 2 - Math.acos(dot(rod, axis) / length(rod)));
      expect(marginOf(model, "outer tie rod end", travel, steer)).toBeCloseTo(25 * DEG - offSquare, 8);
      const offRack = Math.acos(rod[1] / length(rod));
      expect(marginOf(model, "inner tie rod end", travel, steer)).toBeCloseTo(30 * DEG - offRack, 8);
    }
  });

  it("on a center link that moves level, lean off square to an upright stud", () => {
    const pitman = {
      ...wishbone,
      steering: {
        type: "pitman",
        innerEnd: [-140, 270, 275],
        innerEndRight: [-140, -270, 275],
        swing: 25 * DEG,
        pitman: { pivot: [-290, 320, 285], axis: [0, 0, 1], end: [-140, 320, 275] },
        idler: { pivot: [-290, -320, 285], axis: [0, 0, 1], end: [-140, -320, 275] },
      },
    } as const;
    const model = limitModel(pitman, limits, { travel: TRAVEL });
    for (const [travel, steer] of [
      [0, 0],
      [60, 1],
      [-60, -0.6],
    ] as const) {
      const pose = solvePose(model.frontEnd, travel, steer);
      if (!pose.ok) throw new Error("out of reach");
      const rod = sub(pose.left.tieRodOuter, pose.left.tieRodInner);
      expect(marginOf(model, "inner tie rod end", travel, steer)).toBeCloseTo(
        30 * DEG - Math.abs(Math.asin(rod[2] / length(rod))),
        7,
      );
    }
  });
});

describe("a shock on the lower arm, by the law of cosines", () => {
  // Pivot (300, 250), mount 300 mm out along the level arm, body mount 350 mm straight above the pivot.
  const shock = {
    bodyMount: [0, 300, 600] as Vec3,
    lowerMount: [0, 600, 250] as Vec3,
    on: "lowerArm" as const,
    compressed: 400,
    extended: 500,
    diameter: null,
  };
  const lengthAt = (travel: number) =>
    Math.sqrt(300 ** 2 + 350 ** 2 - 2 * 300 * 350 * Math.cos(Math.PI / 2 - Math.asin(travel / 400)));

  it("has its margins, and binds where that says", () => {
    const model = limitModel(parallelogram, { shock }, { travel: TRAVEL });
    for (const travel of [-100, -20, 0, 55, 139]) {
      expect(marginOf(model, "shock compression", travel)).toBeCloseTo(lengthAt(travel) - 400, 8);
      expect(marginOf(model, "shock extension", travel, -0.8)).toBeCloseTo(500 - lengthAt(travel), 8);
    }
    const starts = limitsPassed(model)
      .filter(({ side }) => side === "left")
      .map(({ name, starts: at }) => [name, at?.bump, at?.droop] as const);
    // sin α = (300² + 350² − length²) / (2·300·350).
    const at = (length: number) => 400 * ((300 ** 2 + 350 ** 2 - length ** 2) / (2 * 300 * 350));
    expect(starts).toEqual([
      ["shock compression", expect.closeTo(at(400), 2), null],
      ["shock extension", null, expect.closeTo(at(500), 2)],
    ]);
  });

  it("on the knuckle of a parallelogram moves as the wheel does: up, and in by the arm's turn", () => {
    const model = limitModel(
      parallelogram,
      { shock: { ...shock, on: "knuckle", lowerMount: [0, -20, 60], bodyMount: [0, 600, 700] } },
      { travel: TRAVEL },
    );
    for (const travel of [-100, 0, 80]) {
      const inward = 400 * (1 - Math.cos(Math.asin(travel / 400)));
      const expected = Math.hypot(680 - inward - 600, 310 + travel - 700);
      expect(marginOf(model, "shock compression", travel)).toBeCloseTo(expected - 400, 8);
    }
  });
});

describe("stops", () => {
  it("on travel hold exactly where they are, and what is typed at the end of travel is kept", () => {
    const at = (bumpStop: number, droopStrap: number) =>
      limitsOverRange(
        limitModel(wishbone, { bumpStop, droopStrap }, { travel: { droop: -70, bump: 80 } }),
      ).filter(({ side }) => side === "left");
    const [bump, droop] = at(62.5, -41);
    expect(bump).toMatchObject({ name: "bump stop", travel: expect.closeTo(80, 6), steer: 0 });
    expect(bump?.margin).toBeCloseTo(-17.5, 8);
    expect(bump?.starts?.bump).toBeCloseTo(62.5, 2);
    expect(droop?.margin).toBeCloseTo(-29, 8);
    expect(droop?.starts?.droop).toBeCloseTo(-41, 2);
    for (const kept of at(80, -70)) expect([kept.starts, Math.abs(kept.margin) < 1e-8]).toEqual([null, true]);
  });

  it("of the steering are met at the wheel's steer angle and at the stroke", () => {
    const model = limitModel(
      wishbone,
      { steeringStop: 18 * DEG, steeringStroke: 54 },
      { travel: { droop: -60, bump: 60 } },
    );
    const [stop, stroke] = limitsPassed(model).filter(({ side }) => side === "left");
    expect(stop?.name).toBe("steering stop");
    for (const start of [stop?.starts?.left, stop?.starts?.right]) {
      const pose = solvePose(model.frontEnd, start!.travel, start!.steer);
      if (!pose.ok) throw new Error("out of reach");
      expect(Math.abs(pose.left.steerAngle)).toBeCloseTo(18 * DEG, 4);
    }
    // Full lock asks for 60 mm of the rack, which has 54.
    expect(stroke?.name).toBe("rack stroke");
    expect(stroke?.margin).toBeCloseTo(-6, 9);
    expect(stroke?.starts?.left?.steer).toBeCloseTo(0.9, 4);
    expect(stroke?.starts?.right?.steer).toBeCloseTo(-0.9, 4);
  });
});
