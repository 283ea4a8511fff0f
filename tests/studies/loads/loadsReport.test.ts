import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readMaterials } from "../../../src/setup/catalogs/readMaterials.ts";
import { type LoadsAsk, loadsReport } from "../../../src/studies/loads/loadsReport.ts";
import { strengthOf } from "../../../src/studies/loads/strengthOf.ts";
import { Budget } from "../../../src/studies/numeric/budget.ts";
import { Materials } from "../../../src/studies/strength/material.ts";
import { NEWTONS_PER_POUND } from "../../../src/units/quantity.ts";
import { example, truckOf } from "./loadTruck.ts";

const read = readMaterials(
  JSON.parse(readFileSync(new URL("../../../shared/catalogs/materials.json", import.meta.url), "utf8")),
  "materials.json",
);
const catalog = read.ok ? read.value : [];
const document = example("ordered-knuckle.json");
const reportOf = (changed: object, ask: Partial<LoadsAsk> = {}) => {
  const { model, carriers } = truckOf({ ...document, ...changed });
  return loadsReport(
    model,
    carriers,
    strengthOf(model.setup, catalog),
    { name: null, pose: null, ...ask },
    Budget.endless(),
  );
};
const build = document.build as Record<string, unknown>;
const here = { pose: { travel: 20, steer: 0.4 } };

describe("the loads of the ordered knuckle", () => {
  const at = reportOf({}, here);

  it("weighs as tubular drop knuckles commonly do, about 9 lb (common practice, no source)", () => {
    const pounds = (at.weight!.mass * 9.80665) / NEWTONS_PER_POUND;
    expect(pounds).toBeGreaterThan(7);
    expect(pounds).toBeLessThan(11);
  });

  it("tells every case on both sides, with pin, members, welds, studs, rod end and deflection", () => {
    expect(at.cases).toHaveLength(14);
    for (const { strength } of at.cases) {
      const kinds = new Set(strength!.stresses.map(({ kind }) => kind));
      expect([...kinds].sort()).toEqual(["member", "pin", "rodEnd", "stud", "weld"]);
      expect(strength!.deflection!.hubFace).toBeGreaterThan(0);
    }
    const shares = at.cases.flatMap(({ strength }) => strength!.stresses.map((one) => one.shareOfYield));
    expect(at.governs?.shareOfYield).toBe(Math.max(...shares));
  });

  it("gives in proportion to its load, and camber goes in at the top under a push up", () => {
    const times = (up: number) =>
      reportOf(
        { loads: { ...(document.loads as object), cases: [{ name: "up", kind: "multiples", up }] } },
        here,
      );
    const [one, three] = [times(1), times(3)].map(({ cases }) => cases[0]!.strength!);
    expect(one!.deflection!.camber).toBeLessThan(0);
    expect(three!.deflection!.camber / one!.deflection!.camber).toBeCloseTo(3, 9);
    one!.stresses.forEach((stress, i) => {
      expect(three!.stresses[i]!.vonMises / stress.vonMises).toBeCloseTo(3, 9);
    });
  });

  it("welds carry what their members' ends carry, and a thinner wall is stressed more", () => {
    const members = (build.members as Record<string, unknown>[]).map((one) =>
      one.kind === "tube" ? { ...one, wall: 0.12 } : one,
    );
    const thin = reportOf({ build: { ...build, members } }, here);
    const share = ({ cases }: typeof thin) =>
      Math.max(
        ...cases[0]!
          .strength!.stresses.filter(({ kind }) => kind === "member")
          .map((one) => one.shareOfYield),
      );
    expect(share(thin)).toBeGreaterThan(1.3 * share(at));
    expect(thin.weight!.mass).toBeLessThan(at.weight!.mass);
  });

  it.each([
    ["no pin", { ...build, pin: undefined, members: [], welds: [], caliperAt: undefined }],
    ["no bearings", { ...build, pin: { ...(build.pin as object), bearings: undefined } }],
    ["no members", { ...build, members: [], welds: [] }],
  ])("without a frame says why: %s", (why, changed) => {
    const { noFrame, cases } = reportOf({ build: JSON.parse(JSON.stringify(changed)) }, here);
    expect(noFrame).toBe(why);
    expect(cases[0]!.strength!.deflection).toBeNull();
  });

  it("names the joint that no member meets", () => {
    const members = (build.members as { name: string }[]).filter(({ name }) => name !== "steering arm");
    expect(reportOf({ build: { ...build, members } }, here).noFrame).toEqual(["tieRodOuter"]);
  });

  it("a material that nobody knows is told with its key and the nearest name", () => {
    const { model } = truckOf({ ...document, build: { ...build, material: "4130 normalised tube" } });
    expect(new Materials(model.setup.build!, catalog).unknownMaterial("truck.json")).toMatchObject({
      key: "build.material",
      mend: 'no such material; did you mean "4130 normalized tube"?',
    });
    const own = [{ name: "4130 normalised tube", yield: 70_000, ultimate: 95_000 }];
    const given = truckOf({
      ...document,
      build: { ...build, material: "4130 normalised tube", materials: own },
    });
    expect(new Materials(given.model.setup.build!, catalog).unknownMaterial("truck.json")).toBeNull();
  });
});
