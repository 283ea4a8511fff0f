import { readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { readSetup } from "../../../src/setup/readSetup.ts";
import type { KnuckleSetup, Setup } from "../../../src/setup/types/types.ts";
import { bumpSteer } from "../../../src/studies/geometry/bumpSteer.ts";
import { asBuiltReport, builtKnuckles } from "../../../src/studies/jig/asBuiltReport.ts";
import { type AsBuiltTruck, asBuiltTruck } from "../../../src/studies/jig/asBuiltTruck.ts";
import { jigReadingsOf, turned } from "../../../src/studies/jig/jigReadings.ts";
import { orderedKnuckle } from "../../../src/studies/jig/jigSheet.ts";
import { type Model, modelOf } from "../../../src/studies/model/model.ts";
import { Budget } from "../../../src/studies/numeric/budget.ts";
import { checkClearance } from "../../../src/studies/reports/check.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import { stepBudget } from "../../reference/stepBudget.ts";
import { DEG } from "./jigCases.ts";

const EXAMPLE = join(import.meta.dirname, "..", "..", "..", "shared", "half-ton-on-air.json");

function modelFrom(patch: Partial<Setup> = {}): Model {
  const read = readSetup(readFileSync(EXAMPLE, "utf8"), "example", null);
  if (!read.ok) throw new Error(read.issues[0]?.mend);
  const built = modelOf({ ...read.value.setup, ...patch }, "example");
  if (!built.ok) throw new Error(built.issues[0]?.mend);
  return built.value;
}

const SHIMS = {
  kind: "shims",
  direction: [0, -1, 0],
  front: 6,
  rear: 6,
  least: 0,
  most: 25,
  step: 0.1,
} as const;

function onTruck(model: Model, left: KnuckleSetup, right: KnuckleSetup): AsBuiltTruck {
  const ask = { knuckles: { left, right }, fits: { left: null, right: null }, file: "example" };
  const result = asBuiltTruck(model, ask, Budget.endless());
  if (!result.ok) throw new Error(result.issues[0]?.mend);
  return result;
}

describe("knuckles as built on the truck", () => {
  const model = modelFrom();
  const { knuckle } = model.setup;
  const wrong: KnuckleSetup = {
    ...knuckle,
    pinAngle: knuckle.pinAngle + 0.6 * DEG,
    hubFace: knuckle.hubFace - 4,
    pinLead: 1.5,
    steeringArm: [knuckle.steeringArm[0] + 2, knuckle.steeringArm[1] - 3, knuckle.steeringArm[2] + 4],
  };
  let leftWrong: AsBuiltTruck;
  beforeAll(() => {
    leftWrong = onTruck(model, wrong, knuckle);
  });

  it("stand as the pose kernel has that very knuckle, and the other side as ordered", () => {
    const own = modelFrom({ knuckle: wrong });
    const pose = solvePose(own.frontEnd, 0, 0);
    const asOrdered = solvePose(model.frontEnd, 0, 0);
    if (!pose.ok || !asOrdered.ok) throw new Error("stands");
    const { left, right } = leftWrong.asBuilt;
    expect(left.camber).toBe(pose.left.camber);
    expect(left.caster).toBe(pose.left.caster);
    expect(left.scrubRadius).toBe(pose.left.scrubRadius);
    expect(left.halfTrack).toBe(pose.left.contactPatch[1]);
    expect(left.tieRod).toBeCloseTo(pose.left.tieRodLength, 12);
    expect(right.camber).toBe(asOrdered.right.camber);
    expect(right.halfTrack).toBe(-asOrdered.right.contactPatch[1]);
    expect(leftWrong.asBuilt.track).toBe(pose.left.contactPatch[1] - asOrdered.right.contactPatch[1]);
    expect(left.bumpSteer).toEqual(bumpSteer(own.frontEnd, "left", model.setup.travel));
  });

  it("have the worst gaps that a check of each side's own truck certifies", () => {
    const [own, asOrdered] = [modelFrom({ knuckle: wrong }), model].map((one) => checkClearance(one));
    const { parts } = leftWrong.asBuilt.check;
    expect(parts).toHaveLength(asOrdered!.parts.length);
    for (const { part, side, gap, bound } of parts) {
      const from = side === "left" ? own! : asOrdered!;
      const alone = from.parts.find((entry) => entry.part === part && entry.side === side);
      expect(Math.abs(gap - alone!.gap)).toBeLessThan(0.1);
      expect(bound).toBeLessThanOrEqual(gap);
    }
    expect(leftWrong.asOrdered.check).toEqual(asOrdered);
  });

  it("toe off on the old tie rods by what another toe would make these rods as long as", () => {
    const { toeAsBolted, tieRodChange } = leftWrong.effects.left;
    const toed = modelFrom({ knuckle: wrong, alignment: { toe: toeAsBolted!, targets: null } });
    const pose = solvePose(toed.frontEnd, 0, 0);
    const ordered = solvePose(model.frontEnd, 0, 0);
    if (!pose.ok || !ordered.ok) throw new Error("stands");
    expect(pose.left.tieRodLength).toBeCloseTo(ordered.left.tieRodLength, 8);
    expect(tieRodChange).toBeCloseTo(leftWrong.asBuilt.left.tieRod - ordered.left.tieRodLength, 12);
    expect(Math.abs(tieRodChange)).toBeGreaterThan(0.5);
    expect(leftWrong.effects.right).toMatchObject({ tieRodChange: 0, shims: { kind: "none" } });
  });

  it("do the same on the right as on the left, mirrored", () => {
    const rightWrong = onTruck(model, knuckle, wrong);
    for (const key of [
      "camber",
      "caster",
      "kingpinInclination",
      "scrubRadius",
      "halfTrack",
      "tieRod",
    ] as const) {
      expect(rightWrong.asBuilt.right[key]).toBeCloseTo(leftWrong.asBuilt.left[key], 9);
      expect(rightWrong.asBuilt.left[key]).toBeCloseTo(leftWrong.asBuilt.right[key], 9);
    }
    expect(rightWrong.effects.right.toeAsBolted).toBeCloseTo(leftWrong.effects.left.toeAsBolted!, 12);
  });

  it("with toe built in by mistake keep camber, caster and track; the tie rod takes it out", () => {
    // The steering arm stayed where the jig had it: seen from the pin it is turned back.
    const toed = { ...knuckle, steeringArm: turned(knuckle.steeringArm, -1 * DEG) };
    const { asOrdered, asBuilt, effects } = onTruck(model, toed, toed);
    expect(asBuilt.left.camber).toBeCloseTo(asOrdered.left.camber, 12);
    expect(asBuilt.left.caster).toBeCloseTo(asOrdered.left.caster, 12);
    expect(asBuilt.track).toBeCloseTo(asOrdered.track, 9);
    // On the old rods the wheel stands toed in by the degree that was built in: the arm is where it was.
    expect(effects.left.toeAsBolted! - model.setup.alignment.toe).toBeCloseTo(1 * DEG, 3);
    expect(Math.abs(effects.left.tieRodChange)).toBeGreaterThan(2);
    expect(effects.left.shims).toEqual({ kind: "none" });
  });

  it("are shimmed back to camber and caster as ordered where the truck has shims", () => {
    const shimmed = onTruck(modelFrom({ adjusters: SHIMS }), wrong, knuckle).effects.left.shims;
    if (shimmed.kind !== "set") throw new Error(shimmed.kind);
    expect(shimmed.reached).toBe(true);
    expect(Math.abs(shimmed.leftOver.camber)).toBeLessThan(0.05 * DEG);
    expect(Math.abs(shimmed.leftOver.caster)).toBeLessThan(0.1 * DEG);
    expect(shimmed.settings.some(({ setting, asBolted }) => Math.abs(setting - asBolted) > 0.5)).toBe(true);
    expect(leftWrong.effects.left.shims).toEqual({ kind: "noAdjusters" });
  });

  it("are not shimmed where what is off may be the readings alone, and are where it is not", () => {
    const { setup } = model;
    const ordered = orderedKnuckle(setup);
    const within = { tape: 0.4, angle: 0.1 * DEG, height: 0.4 };
    const shimsAt = (off: number) => {
      const readings = jigReadingsOf(
        { ...ordered, pinAngle: ordered.pinAngle + off },
        setup.jig,
        ordered.pinHeight,
      );
      const asBuilt = { left: { readings, clampedAt: null }, right: null, within };
      const report = asBuiltReport(modelFrom({ asBuilt, adjusters: SHIMS }), "example", stepBudget(40));
      if (!report?.onTheTruck.ok) throw new Error("goes on");
      return report.onTheTruck.effects.left;
    };
    const small = shimsAt(0.1 * DEG);
    expect(small.shims).toEqual({ kind: "withinReadings" });
    expect(small.within!.camber! / DEG).toBeGreaterThan(0.05);
    expect(shimsAt(0.5 * DEG).shims.kind).toBe("set");
  });

  it("stand at the truck's targets on either knuckle where it is aligned first, by other shims", () => {
    const wanted = { camber: -0.5 * DEG, caster: 4 * DEG, toe: 0 };
    const targets = { stance: null, left: wanted, right: wanted };
    const own = modelFrom({ alignment: { toe: 0, targets }, adjusters: SHIMS });
    const off = { ...knuckle, pinAngle: knuckle.pinAngle + 0.4 * DEG };
    const ask = { knuckles: { left: off, right: knuckle }, fits: { left: null, right: null }, file: "" };
    const result = asBuiltTruck(own, { ...ask, isAligned: true }, stepBudget(40));
    if (!result.ok) throw new Error(result.issues[0]?.mend);
    const { asOrdered, asBuilt, effects } = result;
    for (const { left } of [asOrdered, asBuilt])
      expect(Math.abs(left.camber - wanted.camber)).toBeLessThan(0.05 * DEG);
    expect(effects.left.shims).toMatchObject({ kind: "set", reached: true });
    const bolted = asBuiltTruck(own, ask, stepBudget(40));
    if (!bolted.ok) throw new Error("goes on");
    expect(Math.abs(bolted.asBuilt.left.camber - wanted.camber)).toBeGreaterThan(0.2 * DEG);
  });

  it("say which side's knuckle does not go on", () => {
    const long = { ...knuckle, span: 2000 };
    const knuckles = { left: knuckle, right: long };
    const ask = { knuckles, fits: { left: null, right: null }, file: "example" };
    const result = asBuiltTruck(model, ask, Budget.endless());
    expect(result).toMatchObject({ ok: false, side: "right" });
    expect(result.ok ? "" : result.issues[0]?.key).toBe("knuckle.span");
  });
});

describe("the as-built report", () => {
  it("puts the knuckles that were read on the truck, with the toe found turned into where the arm stands", () => {
    const { setup } = modelFrom();
    const ordered = orderedKnuckle(setup);
    const off = { ...ordered, toe: 0.5 * DEG, hubFace: ordered.hubFace + 1 };
    const readings = jigReadingsOf(off, setup.jig, ordered.pinHeight);
    const within = { tape: 0.4, angle: 0.1 * DEG, height: 0.4 };
    const asBuilt = { left: { readings, clampedAt: null }, right: null, within };
    const model = modelFrom({ asBuilt });
    const report = asBuiltReport(model, "example", Budget.endless())!;
    const { left, right } = builtKnuckles(model.setup, report.sides);
    expect(right).toBe(model.setup.knuckle);
    expect(left).not.toHaveProperty("toe");
    expect(left.hubFace).toBeCloseTo(off.hubFace, 6);
    expect(left.steeringArm[0]).toBeCloseTo(off.steeringArm[0], 6);
    expect(report.sides.right).toBeNull();
    // 1 mm of hub face is within 1/16 in, the toe's difference of the tapes, 2 × 254 sin 0.5° cos a = 4.4 mm, is not.
    const failing = report.sides.left!.passes.filter(({ passes }) => !passes).map(({ key }) => key);
    expect(failing).toContain("difference");
    expect(failing).not.toContain("faceAngle");
    expect(report.sides.left!.allPass).toBe(false);
  });
});
