import { describe, expect, it } from "vitest";
import {
  type Dimension,
  dimensionsAt,
  type LinearDimension,
  trackOf,
} from "../../src/app/stage/overlay/dimensions.ts";
import { layOutDimension, type Projection } from "../../src/app/stage/overlay/layOutDimension.ts";
import { type Truck, truckOf } from "../../src/app/state/truck.ts";
import { dot, length, sub, type Vec3 } from "../../src/geometry/vec.ts";
import { type SolvedPose, solvePose } from "../../src/suspension/solvePose.ts";
import { exampleText } from "./exampleText.ts";

function truck(variant: string | null = null): Truck {
  const made = truckOf(exampleText, "example.json", variant);
  if (!made.ok) throw new Error(made.issues.map((issue) => issue.mend).join("; "));
  return made.value;
}

function poseOf({ model }: Truck, travel: number, steer: number): SolvedPose {
  const pose = solvePose(model.frontEnd, travel, steer);
  if (!pose.ok) throw new Error("the example reaches this pose");
  return pose;
}

function linear(dimensions: readonly Dimension[], name: string): LinearDimension {
  const found = dimensions.find((one) => one.text.startsWith(name));
  if (found?.kind !== "linear") throw new Error(`no length called ${name}`);
  return found;
}

const span = ({ from, to }: LinearDimension) => length(sub(to, from));
const IN = { units: "in" } as const;

describe("dimensions of the truck", () => {
  const shown = truck();
  for (const side of ["left", "right"] as const) {
    for (const [travel, steer] of [
      [0, 0],
      [60, 0.7],
      [-40, -1],
    ] as const) {
      it(`span what they say, ${side} at ${travel} mm and steer ${steer}`, () => {
        const pose = poseOf(shown, travel, steer);
        const all = dimensionsAt({ truck: shown, pose, side, format: IN, base: null });
        expect(span(linear(all, "hub face"))).toBeCloseTo(shown.setup.knuckle.hubFace, 9);
        expect(linear(all, "hub face").text).toBe("hub face 6 1/8 in");
        expect(span(linear(all, "scrub"))).toBeCloseTo(Math.abs(pose[side].scrubRadius), 9);
        // From where the steering axis meets the floor, seen along the wheel's heading.
        const foot = linear(all, "scrub").from;
        expect(foot[2]).toBeCloseTo(pose[side].contactPatch[2], 9);
        const lip = linear(all, "lip");
        expect(lip.from[2]).toBeCloseTo(pose[side].contactPatch[2], 9);
        expect(Math.sign(lip.from[1])).toBe(side === "left" ? 1 : -1);
        const pin = all.find((one) => one.kind === "angle");
        expect(pin?.kind === "angle" && Math.acos(dot(pin.from, pin.to))).toBeCloseTo(
          shown.setup.knuckle.pinAngle,
          6,
        );
      });
    }
  }

  it("give the lip's underside over the wheel's middle", () => {
    const pose = poseOf(shown, 0, 0);
    const lip = linear(dimensionsAt({ truck: shown, pose, side: "left", format: IN, base: null }), "lip");
    // Its top is at 30 in, 0.1 in thick about its line, and falls 6 in within 14 in fore and aft.
    const x = Math.abs(pose.left.wheelCenter[0]) / 25.4;
    expect(lip.to[2] / 25.4).toBeCloseTo(30 - (6 * x) / 14 - 0.1, 9);
  });

  it("tell how much narrower a variant is than the setup below it", () => {
    const narrow = truck("narrow");
    const base = poseOf(shown, 0, 0);
    const pose = poseOf(narrow, 0, 0);
    const track = linear(dimensionsAt({ truck: narrow, pose, side: "left", format: IN, base }), "track");
    expect(track.text).toMatch(/^track .* in, −1 in$/);
    // Half an inch a side along a pin that leans.
    expect(trackOf(pose) - trackOf(base)).toBeLessThan(-24);
    expect(trackOf(pose) - trackOf(base)).toBeGreaterThan(-25.4);
  });
});

describe("a dimension on the picture", () => {
  /** Looked at from the front: y to the right, z up, half a pixel a mm. */
  const front: Projection = {
    toScreen: ([, y, z]: Vec3) => ({ x: 500 + 0.5 * y, y: 400 - 0.5 * z }),
    zoom: 0.5,
  };
  const across = (to: Vec3): LinearDimension => ({
    kind: "linear",
    from: [0, 0, 0],
    to,
    asides: [
      [200, 0, 0],
      [0, 0, 100],
    ],
    text: "",
  });

  it("stands on the first side that is seen, with extension lines, and its text between", () => {
    const layout = layOutDimension(across([0, 400, 0]), front, 60);
    expect(layout?.label).toEqual({ x: 600, y: 350 });
    expect(layout?.lines).toHaveLength(3);
    expect(layout?.arrows.map(({ at, way }) => [at.x, way.x])).toEqual([
      [500, -1],
      [700, 1],
    ]);
  });

  it("has its text clear of its line on the far side where it is asked to stand outside, or before its start", () => {
    const up = (textStands: "outside" | "before"): LinearDimension => ({
      ...{ kind: "linear", from: [0, 0, 0], to: [0, 0, 200], text: "", textStands },
      asides: [[0, -100, 0]],
    });
    // The line stands at x 450, from y 400 up to y 300.
    const outside = layOutDimension(up("outside"), front, 60)!;
    expect(outside.label.x + 30).toBeLessThan(450);
    expect(outside.label.y).toBe(350);
    const before = layOutDimension(up("before"), front, 60)!;
    expect(before.label.x).toBe(450 - 30);
    expect(before.label.y).toBeGreaterThan(400 + 9);
    for (const { arrows } of [outside, before])
      expect(arrows.map(({ at, way }) => [at.y, way.y])).toEqual([
        [400, 1],
        [300, -1],
      ]);
  });

  it("has its arrows and text outside where it is short", () => {
    const layout = layOutDimension(across([0, 20, 0]), front, 60);
    expect(layout?.arrows.map(({ at, way }) => [at.x, way.x])).toEqual([
      [500, 1],
      [510, -1],
    ]);
    expect(layout!.label.x).toBeGreaterThan(510 + 30);
  });

  it("is left out where it is seen from its end", () => {
    expect(layOutDimension(across([400, 20, 0]), front, 60)).toBeNull();
  });
});
