import { describe, expect, it } from "vitest";
import type { Setup } from "../../../src/setup/types/types.ts";
import { type GapEntry, gapsAt } from "../../../src/studies/reports/gapsAt.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import { assembledModel, demoSetup } from "../../reference/demoModel.ts";
import { hardwareSetup } from "../../reference/hardwareSetup.ts";

/** The demo truck with a level pin 100 over the ball joint, hub face 160, wheel 381 × 203.2 with offset 30. */
function truck(hardware: Parameters<typeof hardwareSetup>[0], wheel: Partial<Setup["wheel"]> = {}): Setup {
  const setup = demoSetup();
  return {
    ...setup,
    truck: { ...setup.truck, body: [] },
    knuckle: { ...setup.knuckle, pinAngle: 0, pinHeight: 100, pinLead: 0, hubFace: 160 },
    wheel: { ...setup.wheel, offset: 30, barrelDiameter: 344, center: null, ...wheel },
    hardware: hardwareSetup(hardware),
  };
}

function gaps(setup: Setup, travel = 0, steer = 0): GapEntry[] {
  const model = assembledModel(setup);
  const pose = solvePose(model.frontEnd, travel, steer);
  if (!pose.ok) throw new TypeError("the demo truck takes this pose");
  return gapsAt(model, pose);
}

function gap(setup: Setup, part: string): number {
  return gaps(setup).find((e) => e.part === part && e.side === "left")!.gap;
}

const NEAR = 5; // decimal places of a mm: a gap at one pose is searched to 1e-6

describe("caliper to barrel, by hand: the barrel's cylinder is R = 172 from the pin's axis", () => {
  it("a box in the hub's frame whose farthest edge is at √(100² + 120²) from it", () => {
    const caliper = { frame: "hub", min: [-100, -90, -50], max: [-60, -40, 120] } as const;
    expect(gap(truck({ caliper }), "caliper to barrel")).toBeCloseTo(172 - Math.hypot(100, 120), NEAR);
  });

  it("the same box in the knuckle frame: y from the steering axis, z from the ball joint", () => {
    const caliper = { frame: "knuckle", min: [-100, 70, 50], max: [-60, 120, 220] } as const;
    expect(gap(truck({ caliper }), "caliper to barrel")).toBeCloseTo(172 - Math.hypot(100, 120), NEAR);
  });

  it("an edge past the barrel by 3 rubs, by 3 while the rim there is thicker than that", () => {
    const reach = Math.hypot(140, 105); // 175
    const caliper = { frame: "hub", min: [-140, -60, 0], max: [-60, -10, 105] } as const;
    expect(gap(truck({ caliper }), "caliper to barrel")).toBeCloseTo(172 - reach, 2);
  });
});

describe("caliper to wheel center, by hand", () => {
  const caliper = { frame: "hub", min: [-100, -90, -50], max: [-60, -12, 100] } as const;

  it("a flat disk at the mounting face: the box ends 12 inboard of it", () => {
    expect(gap(truck({ caliper }), "caliper to wheel center")).toBeCloseTo(12, NEAR);
  });

  it("a box 5 past the face is 5 deep, however thin the wheel", () => {
    const deep = { ...caliper, max: [-60, 5, 100] } as const;
    expect(gap(truck({ caliper: deep }), "caliper to wheel center")).toBeCloseTo(-5, 2);
  });

  it("a surface that steps 20 outboard at r 70 is 32 away, its step farther", () => {
    // The box's nearest edge to the axis is (−60, 0): r 60 < 70, so the pad at x 0 is what it meets: 12.
    const center = [
      [0, 40],
      [0, 55],
      [20, 55],
      [20, 165],
    ] as const;
    // r of the box is at least 60: 5 outboard of the step's edge (0, 55), 12 inboard of it: √(12² + 5²) = 13.
    expect(gap(truck({ caliper }, { center }), "caliper to wheel center")).toBeCloseTo(13, NEAR);
  });

  it("a cone's surface: distance to its line, not along the pin", () => {
    // x = r − 60 outboard of r 60, 45° to the pin: the box's corner nearest it is (−12, 60).
    const center = [
      [0, 60],
      [100, 160],
    ] as const;
    expect(gap(truck({ caliper }, { center }), "caliper to wheel center")).toBeCloseTo(12, NEAR);
    const away = { ...caliper, min: [-100, -90, -50], max: [-90, -12, 100] } as const;
    expect(gap(truck({ caliper: away }, { center }), "caliper to wheel center")).toBeCloseTo(
      42 / Math.SQRT2,
      NEAR,
    );
  });
});

describe("rotor gaps, by hand: disk from 160 − 45 − 25 to 160 − 45 along the pin", () => {
  const rotor = { diameter: 300, thickness: 25, inboard: 45 };

  it("to the lower ball joint: center 100 under the pin at the axis, 90 inboard of the disk, ball 28", () => {
    expect(gap(truck({ rotor }), "rotor to lower ball joint")).toBeCloseTo(90 - 28, NEAR);
  });

  it("past the disk's edge: to its edge", () => {
    const small = { ...rotor, diameter: 120 };
    expect(gap(truck({ rotor: small }), "rotor to lower ball joint")).toBeCloseTo(
      Math.hypot(90, 40) - 28,
      NEAR,
    );
  });

  it("a ball that reaches 8 into the face is 8 deep: the axis is no surface of the disk", () => {
    const deep = { ...rotor, thickness: 60, inboard: 80 };
    // Inboard face at 20; ball joint at 0 with radius 28.
    expect(gap(truck({ rotor: deep }), "rotor to lower ball joint")).toBeCloseTo(-8, NEAR);
    const onAxis = truck({ rotor: deep });
    const level = { ...onAxis, knuckle: { ...onAxis.knuckle, pinHeight: 0 } };
    expect(gap(level, "rotor to lower ball joint")).toBeCloseTo(-8, NEAR);
  });
});

describe("ring to what rides on the knuckle, by hand", () => {
  it("ball joints inside the barrel: R less their way from the pin's axis and their radius", () => {
    const setup = truck({});
    // The lower ball joint stands 100 from the axis, under the barrel: the ring begins at its inboard bead.
    const beside = gap(setup, "lower ball joint");
    const inboardEdge = 160 - 30 - 101.6; // beads 203.2 apart; the section is closed to the barrel there
    expect(beside).toBeCloseTo(Math.hypot(inboardEdge, 172 - 100) - 28, NEAR);
  });
});

describe("what rides together", () => {
  it("has one gap at every pose, and its points ride with the wheel", () => {
    const setup = truck({ caliper: { frame: "hub", min: [-100, -90, -50], max: [-60, -40, 120] } });
    const model = assembledModel(setup);
    const entries = (travel: number, steer: number) => gaps(setup, travel, steer).filter((e) => e.together);
    const rest = entries(0, 0);
    expect(rest.length).toBe(2 * (5 + 4 + 2));
    for (const [travel, steer] of [
      [-60, -0.7],
      [40, 0.9],
    ] as const) {
      const pose = solvePose(model.frontEnd, travel, steer);
      if (!pose.ok) throw new TypeError("the demo truck takes this pose");
      entries(travel, steer).forEach((entry, i) => {
        expect(entry.gap).toBe(rest[i]!.gap);
        const apart = Math.hypot(...entry.point.map((v, k) => v - entry.onRing[k]!));
        expect(apart).toBeCloseTo(Math.abs(entry.gap), 5);
        // As far from the hub face's middle as it was at rest.
        const restPose = solvePose(model.frontEnd, 0, 0);
        if (!restPose.ok) throw new TypeError("rest");
        const from = (p: readonly number[], q: readonly number[]) =>
          Math.hypot(...p.map((v, k) => v - q[k]!));
        expect(from(entry.point, pose[entry.side].hubFace)).toBeCloseTo(
          from(rest[i]!.point, restPose[entry.side].hubFace),
          6,
        );
      });
    }
  });
});
