import { describe, expect, it } from "vitest";
import { length, sub, type Vec3 } from "../../../src/geometry/vec.ts";
import type { BodyPart } from "../../../src/setup/types/truckTypes.ts";
import type { Model } from "../../../src/studies/model/model.ts";
import { gapsAt } from "../../../src/studies/reports/gapsAt.ts";
import { overlapsAt } from "../../../src/studies/reports/overlapsAt.ts";
import { type SolvedPose, solvePose } from "../../../src/suspension/solvePose.ts";
import { assembledModel, demoWith, exampleSetup } from "../../reference/demoModel.ts";
import { closedOutline, sectionDistance } from "../../reference/sectionDistance.ts";

/** mm. Places on the ring's surface are found by halving bits of 10 mm twelve times. */
const CUT = 0.005;

function posed(model: Model, travel: number, steer: number): SolvedPose {
  const pose = solvePose(model.frontEnd, travel, steer);
  if (!pose.ok) throw new Error("out of reach");
  return pose;
}

/** Signed distance from a point to the tire of a side, the slow way. */
function tireDistance(model: Model, pose: SolvedPose, side: "left" | "right", point: Vec3): number {
  const { wheelCenter, wheelAxis } = pose[side];
  const off = sub(point, wheelCenter);
  const x = off[0] * wheelAxis[0] + off[1] * wheelAxis[1] + off[2] * wheelAxis[2];
  const r = Math.sqrt(Math.max(0, length(off) ** 2 - x * x));
  const { profile, barrelRadius } = model.tire;
  const pairs = Array.from(
    { length: profile.length / 2 },
    (_, i) => [profile[2 * i]!, profile[2 * i + 1]!] as const,
  );
  return sectionDistance(closedOutline(pairs, barrelRadius), x, r);
}

const part = (more: Partial<BodyPart> & Pick<BodyPart, "kind">): BodyPart =>
  ({ name: "it", side: "both", ...more }) as BodyPart;

describe("overlaps at a pose", () => {
  const model = assembledModel(exampleSetup("half-ton-limits.json"));

  it("are those of the pairs that touch, and of no other", () => {
    for (const [travel, steer] of [
      [0, 0],
      [88.9, -0.9],
      [88.9, 0.9],
      [80, 1],
    ] as const) {
      const pose = posed(model, travel, steer);
      const touching = gapsAt(model, pose).filter(({ gap }) => gap < 0);
      const found = overlapsAt(model, pose);
      expect(found.map(({ part, side }) => [part, side])).toEqual(
        touching.map(({ part, side }) => [part, side]),
      );
      for (const { fill } of found) expect(fill.length).toBeGreaterThan(0);
    }
    expect(overlapsAt(model, posed(model, 88.9, -0.9)).length).toBeGreaterThan(0);
  });

  it("draw a lip's as wide as it is deep, all of it inside the tire", () => {
    const pose = posed(model, 88.9, -0.9);
    for (const { part, side, fill } of overlapsAt(model, pose)) {
      const { gap } = gapsAt(model, pose).find((one) => one.part === part && one.side === side)!;
      const widths = fill.flatMap(([a, b, onB, onA]) => [length(sub(a!, onA!)), length(sub(b!, onB!))]);
      expect(Math.max(...widths)).toBeLessThanOrEqual(-gap + 1e-6);
      expect(Math.max(...widths)).toBeGreaterThan(-0.95 * gap);
      for (const point of fill.flat()) {
        expect(tireDistance(model, pose, side, point)).toBeLessThan(1e-6);
      }
    }
  });

  it("cut a box and a mesh where the tire's surface passes them", () => {
    const box = part({ kind: "box", min: [-80, 600, 560], max: [120, 760, 900] } as never);
    const sheet = part({
      kind: "mesh",
      positions: Float64Array.from([-300, 500, 600, 300, 500, 600, 300, 1000, 620, -300, 1000, 640]),
      triangles: Uint32Array.from([0, 1, 2, 0, 2, 3]),
    } as never);
    for (const body of [box, sheet]) {
      const solid = demoWith([body]);
      const pose = posed(solid, 20, 0.3);
      const found = overlapsAt(solid, pose).filter((one) => one.part === "it");
      expect(found.map(({ side }) => side)).toEqual(["left", "right"]);
      for (const { side, fill, border } of found) {
        expect(border.length).toBeGreaterThan(10);
        for (const point of border.flat())
          expect(Math.abs(tireDistance(solid, pose, side, point))).toBeLessThan(CUT);
        for (const point of fill.flat()) expect(tireDistance(solid, pose, side, point)).toBeLessThan(CUT);
      }
    }
  });
});
