import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readMaterials } from "../../src/setup/catalogs/readMaterials.ts";
import { readSetup } from "../../src/setup/readSetup.ts";
import { floorReport } from "../../src/studies/floor/floorReport.ts";
import { bumpSteer } from "../../src/studies/geometry/bumpSteer.ts";
import { carriersOf } from "../../src/studies/loads/carriers.ts";
import { loadsReport } from "../../src/studies/loads/loadsReport.ts";
import { strengthOf } from "../../src/studies/loads/strengthOf.ts";
import { type Model, modelOf } from "../../src/studies/model/model.ts";
import { Budget } from "../../src/studies/numeric/budget.ts";
import { type CheckReport, checkClearance } from "../../src/studies/reports/check.ts";

// Each example truck is a case with something to find. What is to be found is told here in words and held to.

const FOLDER = new URL("../../shared/", import.meta.url);

function example(name: string, variant: string | null = null): Model {
  const read = readSetup(readFileSync(new URL(`${name}.json`, FOLDER), "utf8"), name, variant);
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  const built = modelOf(read.value.setup, name);
  if (!built.ok) throw new Error(JSON.stringify(built.issues));
  return built.value;
}

const checks = new Map<string, CheckReport>();

/** A check of an example, once for all that is asked about it. */
function checkOf(name: string, variant: string | null = null): CheckReport {
  const who = `${name}, ${variant}`;
  const report = checks.get(who) ?? checkClearance(example(name, variant));
  checks.set(who, report);
  return report;
}

function worstOf(name: string, variant: string | null = null): string {
  const report = checkOf(name, variant);
  return `${report.verdict}: ${report.worst!.part}`;
}

const CATALOG = readMaterials(
  JSON.parse(readFileSync(new URL("catalogs/materials.json", FOLDER), "utf8")),
  "materials.json",
);

/** What each case does at full bump, steered a quarter to the left. */
function loadsOf(name: string, variant: string | null) {
  const model = example(name, variant);
  const carriers = carriersOf(model.setup, name);
  if (!carriers.ok || !CATALOG.ok) throw new Error("carriers or materials");
  const strength = strengthOf(model.setup, CATALOG.value);
  const pose = { travel: model.setup.travel.bump, steer: 0.25 };
  return loadsReport(model, carriers.value, strength, { name: null, pose }, Budget.endless());
}

function rootMeanSquare(name: string, side: "left" | "right", variant: string | null = null): number {
  const model = example(name, variant);
  return bumpSteer(model.frontEnd, side, model.setup.travel)!.rms;
}

describe("the example trucks", () => {
  it("are at least four unlike trucks: rack and steering box, front and rear steer, long and short arms", () => {
    const trucks = readdirSync(FOLDER)
      .filter((file) => file.endsWith(".json") && !/^(tire-sizes|scanned-fender)/.test(file))
      .map((file) => example(file.replace(".json", "")).setup);
    const arms = new Set(trucks.map(({ truck }) => JSON.stringify(truck.lowerArm)));
    expect(arms.size).toBeGreaterThanOrEqual(4);
    expect(new Set(trucks.map(({ truck }) => truck.steering.type))).toEqual(new Set(["rack", "pitman"]));
    expect(new Set(trucks.map(({ knuckle }) => Math.sign(knuckle.steeringArm[0])))).toEqual(new Set([-1, 1]));
    const lengths = trucks.map(({ truck: { lowerArm } }) => lowerArm.ballJoint[1] - lowerArm.frontPivot[1]);
    expect(Math.max(...lengths) / Math.min(...lengths)).toBeGreaterThan(1.5);
  });

  it("the long bed: a hose in the tire's way, an idler bracket mounted low, a shock that is too short", () => {
    expect(worstOf("long-bed-steering-box")).toBe("close: brake hose");
    expect(worstOf("long-bed-steering-box", "narrow hub face")).toBe("rubs: brake hose");
    expect(worstOf("long-bed-steering-box", "hose tied farther in")).toBe("clear: fender lip");
    const uneven = (variant: string | null) =>
      Math.abs(
        rootMeanSquare("long-bed-steering-box", "left", variant) -
          rootMeanSquare("long-bed-steering-box", "right", variant),
      );
    expect(uneven("idler bracket level")).toBeLessThan(0.2 * uneven(null));
    const passed = (variant: string | null) =>
      checkOf("long-bed-steering-box", variant).limitsPassed!.map(({ name }) => name);
    expect(passed(null)).toContain("shock extension");
    expect(passed("longer shock")).not.toContain("shock extension");
  });

  it("the compact: the lip rubs; a narrow hub face alone puts the tie rod end into the wheel", () => {
    expect(worstOf("compact-front-steer")).toBe("rubs: fender lip");
    expect(worstOf("compact-front-steer", "narrow hub face")).toBe("rubs: tie rod end");
    expect(worstOf("compact-front-steer", "six-inch wheel, narrower hub face")).toBe("close: fender lip");
    const [before, after] = [null, "rack 8 mm higher"].map((variant) =>
      rootMeanSquare("compact-front-steer", "left", variant),
    );
    expect(after).toBeLessThan(0.4 * before!);
  });

  it("the ordered knuckle: narrowed and dropped, it clears but for the lip at the bottom of its travel", () => {
    expect(worstOf("ordered-knuckle")).toBe("close: fender lip");
    const { order, knuckle } = example("ordered-knuckle").setup;
    expect(order).toMatchObject({ drop: 63.5, hubFace: 139.7, side: "pair", quantity: 1 });
    expect(knuckle.pinHeight).toBe(order!.base.pinHeight! + 63.5);
  });

  it("the tubular knuckle: the lip rubs; a brace's weld carries most, and without braces a post's weld passes yield", () => {
    expect(worstOf("tubular-knuckle")).toBe("rubs: fender lip");
    const { governs, weight } = loadsOf("tubular-knuckle", null);
    expect(governs).toMatchObject({ kind: "weld", member: "lower brace", case: "curb strike" });
    expect(governs!.shareOfYield).toBeLessThan(1);
    const bare = loadsOf("tubular-knuckle", "lighter posts, no braces");
    expect(bare.governs).toMatchObject({ kind: "weld", member: "lower post" });
    expect(bare.governs!.shareOfYield).toBeGreaterThan(2);
    expect(bare.weight!.mass).toBeLessThan(0.95 * weight!.mass);
  });

  it("the flatbed: the tie rod end in the barrel, and a crossmember under the scrub line", () => {
    expect(worstOf("flatbed-long-arms")).toBe("close: tie rod end");
    expect(worstOf("flatbed-long-arms", "steering arm as first built")).toBe("rubs: tie rod end");
    expect(worstOf("flatbed-long-arms", "wider hub face")).toBe("rubs: fender lip");
    const low = floorReport(example("flatbed-long-arms")).stances.find(({ name }) => name === "aired out")!;
    const hanging = low.scrub.flatMap(({ flat, dragging }) =>
      dragging.map(({ name, side }) => `${flat} tire flat: ${side} ${name}`),
    );
    expect(hanging).toEqual(["left tire flat: left crossmember", "right tire flat: right crossmember"]);
  });
});
