import { describe, expect, it } from "vitest";
import type { Vec3 } from "../../src/geometry/vec.ts";
import type { BodyPart } from "../../src/setup/types/truckTypes.ts";
import type { Setup } from "../../src/setup/types/types.ts";
import type { Model } from "../../src/studies/model/model.ts";
import { type CheckEntry, checkClearance } from "../../src/studies/reports/check.ts";
import { gapsAt } from "../../src/studies/reports/gapsAt.ts";
import { solvePose } from "../../src/suspension/solvePose.ts";
import { demoSetup, demoWith } from "../reference/demoModel.ts";
import { expectAtPose, expectHonest, expectProven, expectTight } from "../reference/expectCertified.ts";
import { flatMesh } from "../reference/flatMesh.ts";
import { aboutAxis } from "../reference/referenceRing.ts";
import type { SampledWorst } from "../reference/sampledCheck.ts";
import { runs } from "../runs.ts";

/** Where a place of the left tire is at a pose of the demo truck: x along the wheel axis, r from it, turned about it. */
function placeOf(model: Model, travel: number, steer: number, x: number, r: number, turn: number): Vec3 {
  const pose = solvePose(model.frontEnd, travel, steer);
  if (!pose.ok) throw new TypeError("the demo truck reaches this pose");
  return aboutAxis({ center: pose.left.wheelCenter, axis: pose.left.wheelAxis }, x, r, turn);
}

/** Poses sampled besides those about the worst. */
const SAMPLES = { travels: runs(9, 17), steers: runs(21, 41) };

/** Checks a truck with parts on the left, holds every promise to account, and returns what was found. */
function checked(model: Model): { entry: CheckEntry; sampled: SampledWorst } {
  const report = checkClearance(model)!;
  const sampled = expectProven(model, report, SAMPLES);
  expectAtPose(model, report);
  expectTight(report);
  expectHonest(model, report);
  return { entry: report.parts[0]!, sampled: sampled[0]! };
}

const left = (part: Omit<Extract<BodyPart, { kind: "path" }>, "side" | "kind">): BodyPart => ({
  ...part,
  side: "left",
  kind: "path",
});
const demo = demoWith([]);

/** A panel across the truck ahead of the wheel, x mm forward. */
const firewall = (x: number): BodyPart => ({
  name: "panel ahead",
  side: "left",
  kind: "mesh",
  ...flatMesh(
    [
      [x, 300, -200],
      [x, 1400, -200],
      [x, 1400, 1200],
      [x, 300, 1200],
    ],
    [
      [0, 1, 2],
      [0, 2, 3],
    ],
  ),
});

describe("worst poses that corners of the range do not show", () => {
  it("a stud off the front outboard shoulder is nearest at a steer between straight and lock", () => {
    // Of all the tire that shoulder is farthest from the steering axis: it passes the stud and goes on.
    const at = placeOf(demo, 0, 0.4, 108, 370, -Math.PI / 2);
    const model = demoWith([left({ name: "stud", radius: 4, points: [at] })]);
    const { entry, sampled } = checked(model);
    expect(Math.abs(entry.steer - 0.4)).toBeLessThan(0.35);
    expect(Math.abs(sampled.gap - entry.gap)).toBeLessThan(0.02);
    // Straight ahead and both locks miss it, at any height.
    for (const steer of [-1, 0, 1]) {
      const alone = Math.min(
        ...[-95, -60, -30, -10, 0, 10, 30, 60, 88].map((travel) => gapAt(model, travel, steer)),
      );
      expect(alone - entry.gap).toBeGreaterThan(0.5);
    }
  });

  it("two minima of the same gap, far apart in travel and steer, are both behind the bound", () => {
    const spot = (name: string, travel: number, steer: number, out: number): BodyPart =>
      left({ name, radius: 4, points: [placeOf(demo, travel, steer, 150, 300, out)] });
    const one = checked(demoWith([spot("one", 70, 0.6, 0.4)])).entry;
    const other = checked(demoWith([spot("other", -80, -0.9, 2.2)])).entry;
    // Even the two out by their radii: less gap is more radius, exactly.
    const part = (e: CheckEntry, name: string, travel: number, steer: number, turn: number): BodyPart => ({
      ...(spot(name, travel, steer, turn) as Extract<BodyPart, { kind: "path" }>),
      radius: 4 + e.gap - Math.min(one.gap, other.gap),
    });
    const both = demoWith([part(one, "one", 70, 0.6, 0.4), part(other, "other", -80, -0.9, 2.2)]);
    const report = checkClearance(both)!;
    expectProven(both, report, SAMPLES);
    expectTight(report);
    const [a, b] = report.parts as [CheckEntry, CheckEntry];
    expect(Math.abs(a.gap - b.gap)).toBeLessThan(0.02);
    expect(report.worst!.gap).toBe(Math.min(a.gap, b.gap));
  });

  it("one part that the tire comes equally near twice keeps one bound for both", () => {
    // A brake line run past the front and the rear of the tire; sampling halves evens the two out.
    const [front, rear] = [placeOf(demo, 20, 0.9, 128, 352, 0.8), placeOf(demo, 20, -0.9, 128, 352, 2.4)];
    const model = demoWith([
      {
        name: "two tabs",
        side: "left",
        kind: "mesh",
        ...flatMesh(
          [
            front,
            shift(front, 3, 40, 2),
            shift(front, -5, 40, 9),
            rear,
            shift(rear, 3, 40, 2),
            shift(rear, -5, 40, 9),
          ],
          [
            [0, 1, 2],
            [3, 4, 5],
          ],
        ),
      },
    ]);
    checked(model);
  });

  it("a part that only just touches at the worst pose has gap 0 within the tolerance", () => {
    const at = placeOf(demo, 40, 0.5, 190, 300, 0.9);
    const free = checked(demoWith([left({ name: "stud", radius: 5, points: [at] })])).entry;
    const { entry } = checked(demoWith([left({ name: "stud", radius: 5 + free.gap, points: [at] })]));
    expect(Math.abs(entry.gap)).toBeLessThan(0.02);
    expect(entry.bound).toBeLessThanOrEqual(entry.gap);
    const nearer = checked(
      demoWith([left({ name: "stud", radius: 5 + free.gap + 0.1, points: [at] })]),
    ).entry;
    expect(nearer.verdict).toBe("rubs");
  });

  it("a hose inside the barrel is nearest where the wheel leans and steers most", () => {
    const from = placeOf(demo, 0, 0, -90, 0, 0);
    const to = placeOf(demo, 0, 0, 60, 70, 0.5);
    const { entry, sampled } = checked(
      demoWith([left({ name: "brake hose", radius: 6, points: [from, to] })]),
    );
    expect(Math.abs(sampled.gap - entry.gap)).toBeLessThan(0.02);
  });

  it("a point that the wheel axis passes through, where every direction is as near", () => {
    const { entry } = checked(
      demoWith([left({ name: "cap", radius: 0, points: [placeOf(demo, 0, 0, 0, 0, 0)] })]),
    );
    expect(entry.gap).toBeGreaterThan(0);
  });

  it("a rod right through the tire, as deep as a section can be", () => {
    const from = placeOf(demo, 0, 0, -300, 265, 1);
    const to = placeOf(demo, 0, 0, 300, 265, 1);
    const { entry } = checked(demoWith([left({ name: "rod", radius: 0, points: [from, to] })]));
    expect(entry.verdict).toBe("rubs");
    expect(entry.gap).toBeLessThan(-50);
  });
});

describe("a corner of travel × steer that the tie rod cannot reach", () => {
  const setup = demoSetup();
  const steering = setup.truck.steering;
  if (steering.type !== "rack") throw new TypeError("the demo truck has a rack");
  // More stroke than the steering arm can follow: a bit of full lock near full droop, up to all of it everywhere.
  const long = (stroke: number, body: readonly BodyPart[]): Model =>
    demoWith(body, { truck: { ...setup.truck, steering: { ...steering, stroke } } as Setup["truck"] });

  describe.each([90, 126, 100, 160].slice(0, runs(2, 4)))("with a stroke of %d mm", (stroke) => {
    const bare = long(stroke, []);
    const border = checkClearance(bare)!.limits.find((l) => l.side === "left" && l.along === "steer")!;
    // Just off the tire's shoulder where the knuckle stands at the end of the tie rod's reach.
    const studs = [0.3, 1.5, 2.8, 4.2, 5.5].map((turn) =>
      left({
        name: `stud ${turn}`,
        radius: 3,
        points: [placeOf(bare, border.travel, border.startsAt, 100, 362, turn)],
      }),
    );
    const clear = [firewall(440), left({ name: "far stud", radius: 5, points: [[0, 1200, 700]] })];
    const model = long(stroke, [...clear, ...studs]);
    const report = checkClearance(model)!;

    it("no sampled pose is worse than the bound, up to the very border of reach", () => {
      const sampled = expectProven(model, report, { travels: runs(17, 33), steers: 41 });
      expect(sampled.some((s) => s.border)).toBe(true);
    });

    it("every bound is finite and within tolerance of its gap", () => expectTight(report));

    it("no verdict claims more than the bound proves", () => expectHonest(model, report));

    it("the truck can take the poses reported", () => expectAtPose(model, report));
  });
});

function shift([x, y, z]: Vec3, dx: number, dy: number, dz: number): Vec3 {
  return [x + dx, y + dy, z + dz];
}

/** Gap of the only left part at one pose. */
function gapAt(model: Model, travel: number, steer: number): number {
  const pose = solvePose(model.frontEnd, travel, steer);
  if (!pose.ok) throw new TypeError("the demo truck reaches this pose");
  return gapsAt(model, pose)[0]!.gap;
}
