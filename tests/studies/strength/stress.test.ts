import { readFileSync } from "node:fs";
import Module from "manifold-3d";
import { describe, expect, it } from "vitest";
import { readMaterials } from "../../../src/setup/catalogs/readMaterials.ts";
import type { BuildSetup, Member, PinSetup, PlateSetup } from "../../../src/setup/types/buildTypes.ts";
import type { KnuckleSetup } from "../../../src/setup/types/types.ts";
import { knuckleLoads } from "../../../src/studies/strength/knuckleLoads.ts";
import { STEEL_DENSITY } from "../../../src/studies/strength/material.ts";
import { throatStress } from "../../../src/studies/strength/memberStress.ts";
import { partWeight } from "../../../src/studies/strength/partWeight.ts";
import { pinStresses } from "../../../src/studies/strength/pinStress.ts";
import {
  combinedStress,
  NO_RISE,
  roundSection,
  vonMises,
} from "../../../src/studies/strength/roundSection.ts";
import { shoulderRise } from "../../../src/studies/strength/stressRise.ts";
import { rodEndStress, studStress } from "../../../src/studies/strength/studStress.ts";
import { plus } from "../../../src/studies/strength/wrench.ts";
import { MPA_PER_PSI, NEWTONS_PER_POUND } from "../../../src/units/quantity.ts";
import { parseThread } from "../../../src/units/threadCallout.ts";

const IN = 25.4;
const near = (found: number, wanted: number, share: number) =>
  expect(Math.abs(found - wanted)).toBeLessThanOrEqual(share * Math.abs(wanted));
const psi = (mpa: number) => mpa / MPA_PER_PSI;
const bar = (inches: number) => roundSection(inches * IN, null);
const bent = (pounds: number, lever: number) => ({
  ...{ pull: 0, shear: 0, torque: 0 },
  bending: pounds * NEWTONS_PER_POUND * lever * IN,
});

describe("a round section", () => {
  it("is bent by 32 M / π d³ (Machinery's Handbook, Z = 0.0982 d³, from memory)", () => {
    near(psi(combinedStress(bar(1.25), bent(10_000, 1))), 52_151.9, 1e-5);
    near(psi(combinedStress(bar(1), bent(10_000, 1))), 101_859.2, 1e-5);
    near(psi(combinedStress(bar(1.5), bent(10_000, 1))), 30_180.5, 1e-5);
    near(psi(combinedStress(roundSection(1.5 * IN, 0.25 * IN), bent(10_000, 1))), 37_609.5, 1e-5);
    near(bar(1.25).modulus / IN ** 3, 0.191748, 1e-5);
    near(psi(combinedStress(bar(1.25), bent(3000, 3.5))), 54_759.5, 1e-4);
  });

  it("has its largest shear 4 V / 3 A at its middle, twice V / A in a thin tube, and von Mises is √3 of it", () => {
    const shear = { pull: 0, bending: 0, torque: 0, shear: 5000 * NEWTONS_PER_POUND };
    near(psi(combinedStress(bar(1.25), shear)) / Math.sqrt(3), 5432.5, 1e-4);
    near(roundSection(100, 0.01).shearPeak, 2, 1e-3);
  });

  it("of a shaft bent and twisted is stressed as printed: Shigley, Mechanical Engineering Design, example 7-1 (from memory)", () => {
    // d 1.100 in, M 1260 and T 1100 lbf·in, K_f 1.58, K_fs 1.37, yield 82 ksi: 15 235 and 9988, 18 217 together, 4.50 times.
    const forces = {
      ...bent(1260, 1),
      torque: 1100 * NEWTONS_PER_POUND * IN,
    };
    const rise = { ...NO_RISE, bending: 1.58, torque: 1.37 };
    near(psi(combinedStress(bar(1.1), { ...forces, torque: 0 }, rise)), 15_235, 1e-3);
    near(psi(combinedStress(bar(1.1), { ...forces, bending: 0 }, rise)), 9988, 1e-3);
    near(psi(combinedStress(bar(1.1), forces, rise)), 18_217, 1e-3);
    near(82_000 / psi(combinedStress(bar(1.1), forces, rise)), 4.5, 1e-3);
    expect(vonMises(3, 0)).toBe(3);
  });
});

describe("a shoulder", () => {
  it("of 38 to 32 with a fillet of 3 raises bending 1.65 times by the chart (Shigley, example 6-6), and fatigue 1.55", () => {
    const { bending } = shoulderRise(38, 32, 3);
    near(bending, 1.65, 0.03); // read off a chart, two formulas
    near(1 + (bending - 1) / (1 + 0.313353 / Math.sqrt(3)), 1.55, 0.03);
  });

  it("sharp, raises about as first estimates do: 2.7 in bending, 2.2 in torsion, 3.0 in pull (Shigley, Table 7-1, from memory)", () => {
    const rise = shoulderRise(1.5 * 40, 40, null);
    near(rise.bending, 2.7, 0.12);
    near(rise.torque, 2.2, 0.2);
    near(rise.pull, 3, 0.12);
  });

  it("raises less the rounder it is, never lowers, and a step of nothing raises nothing", () => {
    let before = Number.POSITIVE_INFINITY;
    for (const fillet of [0.2, 0.5, 1, 2, 4]) {
      const { bending } = shoulderRise(40, 32, fillet);
      expect(bending).toBeLessThan(before);
      expect(bending).toBeGreaterThanOrEqual(1);
      before = bending;
    }
    expect(shoulderRise(32, 32, 1)).toBe(NO_RISE);
    // Where the two fits of the curves meet.
    near(shoulderRise(40, 32, 1.999).bending, shoulderRise(40, 32, 2.001).bending, 2e-3);
  });
});

const knuckle: KnuckleSetup = {
  ...{ span: 270, pinHeight: 136, pinLead: 0, pinAngle: 0, hubFace: 150 },
  steeringArm: [-150, -25, 35],
};
const pin: PinSetup = {
  material: null,
  steps: [
    { from: 20, to: 60, diameter: 50, fillet: null },
    { from: 60, to: 120, diameter: 32, fillet: 3 },
    { from: 120, to: 160, diameter: 20, fillet: null },
  ],
  bearings: { inner: 80, outer: 130 },
  forHubFace: null,
};
const empty: BuildSetup = {
  ...{ material: "x", materials: [], pin, joints: [], members: [], plates: [], welds: [], studs: [] },
  ...{ rodEnds: [], caliperAt: null },
};
const still = {
  lowerBallJoint: [0, 0, 0],
  upperBallJoint: [0, 0, 0],
  tieRodOuter: [0, 0, 0],
  up: [0, 0, 1],
} as const;

describe("the pin", () => {
  // 9000 N up, 160 out along the pin.
  const wheel = { at: [0, 160, 136], force: [0, 0, 9000] } as const;
  const loads = knuckleLoads(empty, knuckle, { ...still, onHub: [wheel] })!;

  it("shares a load between its bearings as a beam on two supports does", () => {
    near(loads.outerBearing[2], (9000 * 80) / 50, 1e-12);
    near(loads.innerBearing[2], 9000 - (9000 * 80) / 50, 1e-12);
  });

  it("is bent by load × lever at every cut inboard of its bearings, by a bearing's alone between them", () => {
    const at = (place: number) => pinStresses(pin, knuckle, loads, 20).find((one) => one.at === place)!;
    near(at(20).forces.bending, 9000 * 140, 1e-12);
    near(at(60).forces.bending, 9000 * 100, 1e-12);
    near(at(60).nominal, (32 * 9000 * 100) / (Math.PI * 32 ** 3), 1e-12);
    expect(at(60).vonMises / at(60).nominal).toBeCloseTo(shoulderRise(50, 32, 3).bending, 9);
    near(at(80).forces.bending, 14_400 * 50, 1e-12);
    near(at(120).forces.bending, 14_400 * 10, 1e-12);
    expect(at(130).forces.bending).toBeLessThan(1e-6);
    near(at(130).forces.shear, 14_400, 1e-12);
  });

  it("carries a push inboard at its inner bearing, a pull outboard at its outer one", () => {
    const push = { at: [0, 160, 136], force: [0, -700, 0] } as const;
    expect(knuckleLoads(empty, knuckle, { ...still, onHub: [push] })!.innerBearing[1]).toBe(-700);
    const pull = { ...push, force: [0, 700, 0] } as const;
    expect(knuckleLoads(empty, knuckle, { ...still, onHub: [pull] })!.outerBearing[1]).toBe(700);
  });

  it("a braked wheel's torque goes through the caliper at its lever, and bearings carry what it pushes back", () => {
    const braked: BuildSetup = {
      ...empty,
      joints: [{ name: "caliper", at: [90, 60, 136] }],
      caliperAt: "caliper",
    };
    // 3000 N back at the ground, 340 under the pin.
    const brake = { at: [0, 160, 136 - 340], force: [-3000, 0, 0] } as const;
    const found = knuckleLoads(braked, knuckle, { ...still, onHub: [brake] })!;
    near(Math.abs(found.caliper[2]), (3000 * 340) / 90, 1e-12);
    const sum = [found.caliper, found.innerBearing, found.outerBearing].reduce(plus);
    expect(Math.hypot(sum[0] + 3000, sum[1], sum[2])).toBeLessThan(1e-9);
    expect(Math.hypot(...found.rootMoment)).toBe(0);
    const without = knuckleLoads(empty, knuckle, { ...still, onHub: [brake] })!;
    near(Math.hypot(...without.rootMoment), 3000 * 340, 1e-12);
  });
});

it("a fillet all round a tube is a line: π d³ throat / 8 by d/2 in bending, twice that in torsion (Shigley, Table 9-2, from memory)", () => {
  const none = { pull: 0, shear: 0, bending: 0, torque: 0 };
  const [d, h] = [40, 6];
  const r = d / 2;
  near(
    throatStress(d, h, { ...none, bending: 1e6 }),
    (1e6 * r) / (Math.SQRT1_2 * h * Math.PI * r ** 3),
    2e-4,
  );
  near(
    throatStress(d, h, { ...none, torque: 1e6 }),
    (1e6 * r) / (Math.SQRT1_2 * h * 2 * Math.PI * r ** 3),
    2e-4,
  );
  near(throatStress(d, h, { ...none, pull: -1e4 }), 1e4 / (Math.SQRT2 * Math.PI * h * r), 2e-4);
});

it("a stud is bent at its large end by the force across it; a rod end is pulled on its thread's stress area, bent by its lean", () => {
  const stud = { joint: "lowerBallJoint", diameter: 20, reach: 22, material: null } as const;
  near(studStress(stud, [0, 0, 1], [6000, 8000, 0]), (32 * 10_000 * 22) / (Math.PI * 20 ** 3), 1e-12);
  near(studStress(stud, [0, 0, 1], [0, 0, 9000]), 9000 / (Math.PI * 100), 1e-12);
  const read = parseThread("5/8-18");
  if (!read.ok) throw new Error(read.mend);
  const end = { joint: "tieRodOuter", thread: read.thread, reach: 40, lean: 0, material: null } as const;
  // Grade 5 proof stress 85 ksi on 0.255957 in² is 21 760 lbf (ASME B1.1, SAE J429, from memory).
  near(psi(rodEndStress(end, [0, 21_760 * NEWTONS_PER_POUND, 0])), 85_000, 2e-3);
  const leaned = rodEndStress({ ...end, lean: Math.PI / 6 }, [0, 1000, 0]);
  const d = Math.sqrt((4 * 0.255957 * IN ** 2) / Math.PI);
  near(
    leaned,
    (1000 * Math.cos(Math.PI / 6)) / (0.255957 * IN ** 2) + (32 * 500 * 40) / (Math.PI * d ** 3),
    1e-4,
  );
});

describe("weight", () => {
  const tube = (diameter: number, wall: number): Member => ({
    kind: "tube",
    name: "tube",
    from: "lowerBallJoint",
    to: "upperBallJoint",
    material: null,
    diameter: diameter * IN,
    wall: wall * IN,
  });
  const plate = (rest: Pick<PlateSetup, "name" | "thickness" | "outline" | "holes">): PlateSetup => ({
    material: null,
    at: [0, 0, 0],
    across: [1, 0, 0],
    up: [0, 1, 0],
    ...rest,
  });
  const foot = { ...knuckle, span: 12 * IN };
  const pounds = (build: BuildSetup) => (partWeight(build, foot).mass * 9.80665) / NEWTONS_PER_POUND;

  it.each([
    [1.5, 0.12, 1.769],
    [1.75, 0.134, 2.3127],
    [1.75, 0.12, 2.089],
    [1.5, 0.095, 1.4255],
    [1.25, 0.12, 1.4482],
    [1.5, 0.25, 3.3375],
    [1.75, 0.25, 4.005],
    [2, 0.12, 2.4094],
  ])(
    "of a foot of %s × %s tube is %s lb by the published 10.68 (OD − t) t, to 0.2 %%",
    (od, wall, wanted) => {
      near(pounds({ ...empty, pin: null, members: [tube(od, wall)] }), wanted, 2e-3);
    },
  );

  it("of bar is 2.673 d² lb a foot, of plate 40.84 lb a square foot an inch, as published, to 0.1 %", () => {
    const bars: Member[] = [{ ...tube(1.25, 0.1), kind: "bar", diameter: 1.25 * IN, material: null }];
    near(pounds({ ...empty, pin: null, members: bars }), 4.177, 1e-3);
    const side = 12 * IN;
    const square = [
      [0, 0],
      [side, 0],
      [side, side],
      [0, side],
    ] as const;
    const plates = [plate({ name: "plate", thickness: 0.5 * IN, outline: square, holes: [] })];
    near(pounds({ ...empty, pin: null, plates }), 20.419, 1e-3);
    const { center } = partWeight({ ...empty, pin: null, plates }, foot);
    expect(Math.hypot(center![0] - side / 2, center![1] - side / 2, center![2])).toBeLessThan(1e-9);
    near(STEEL_DENSITY * 1e9, 7850.02, 1e-5);
  });

  it("agrees with volumes of a solid modeling library (manifold-3d): a tube, a plate with holes, a pin of three steps", async () => {
    const wasm = await Module();
    wasm.setup();
    const { Manifold, CrossSection } = wasm;
    const round = (d: number, h: number) => Manifold.cylinder(h, d / 2, d / 2, 512);
    const [outer, inner] = [round(44.45, 304.8), round(44.45 - 2 * 4.8, 304.8)];
    const members = [tube(44.45 / IN, 4.8 / IN)];
    const tubeMass = partWeight({ ...empty, pin: null, members }, foot).mass;
    near(tubeMass, outer.subtract(inner).volume() * STEEL_DENSITY, 1e-4);
    const outline: [number, number][] = [
      [0, 0],
      [90, -10],
      [110, 40],
      [20, 60],
    ];
    const holes = [
      { at: [30, 20] as const, diameter: 16 },
      { at: [80, 15] as const, diameter: 10 },
    ];
    const flat = holes.reduce(
      (sum, { at, diameter }) => sum.subtract(CrossSection.circle(diameter / 2, 512).translate([...at])),
      new CrossSection([outline]),
    );
    const plates = [plate({ name: "bracket", thickness: 9.5, outline, holes })];
    const plateMass = partWeight({ ...empty, pin: null, plates }, foot).mass;
    near(plateMass, flat.extrude(9.5).volume() * STEEL_DENSITY, 1e-4);
    const steps = pin.steps.reduce(
      (sum, { from, to, diameter }) => sum + round(diameter, to - from).volume(),
      0,
    );
    near(partWeight(empty, foot).mass, steps * STEEL_DENSITY, 1e-4);
  });
});

describe("the catalog of materials", () => {
  const file = new URL("../../../shared/catalogs/materials.json", import.meta.url);
  const document = JSON.parse(readFileSync(file, "utf8")) as { items: { [key: string]: unknown }[] };

  it("has the published strengths, ksi, each with its source", () => {
    const read = readMaterials(document, "materials.json");
    if (!read.ok) throw new Error(read.issues[0]!.mend);
    const told = Object.fromEntries(
      read.value.map((one) => [one.name, [psi(one.yield) / 1000, psi(one.ultimate) / 1000].map(Math.round)]),
    );
    expect(told).toEqual({
      "1020 hot rolled": [30, 55],
      "1020 cold drawn": [57, 68],
      "1020 DOM tube": [55, 65],
      "1026 DOM tube": [65, 75],
      "4130 normalized bar": [63, 97],
      "4130 normalized tube": [75, 95],
      "4130 quenched and tempered": [132, 150],
      "4140 quenched and tempered": [121, 138],
      "4340 quenched and tempered": [156, 170],
      "4340 tempered at 800 °F": [198, 213],
    });
    expect(read.value.every(({ source }) => source.length > 10)).toBe(true);
    near(read.value.find(({ name }) => name.startsWith("4140"))!.yield, 834, 1e-3);
  });

  it.each([
    [{ yield: "75 kis" }, "materials.json items[0].yield", 'unknown unit "kis"; did you mean'],
    [{ ultimate: 90 }, "materials.json items[0].ultimate", "must be text in double quotes"],
    [{ ultimate: "90" }, "materials.json items[0].ultimate", "must be a stress such as"],
    [{ name: "" }, "materials.json items[0].name", "must not be empty"],
    [{ name: "1020 cold drawn" }, "materials.json items[1].name", "is the name of another material already"],
  ])("refuses %o with its key and mend", (change, key, mend) => {
    const items = document.items.map((item, i) => (i === 0 ? { ...item, ...change } : item));
    const read = readMaterials({ ...document, items }, "materials.json");
    const [issue] = read.ok ? [] : read.issues;
    expect(`${issue?.file} ${issue?.key}`).toBe(key);
    expect(issue?.mend).toContain(mend);
  });
});
