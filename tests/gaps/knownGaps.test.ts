import { describe, expect, it, test } from "vitest";
import type { PartInput } from "../../src/gaps/partShape.ts";
import { addScaled, cross, normalize, type Vec3 } from "../../src/geometry/vec.ts";
import { flatMesh } from "../reference/flatMesh.ts";
import { ball, kernelGap } from "../reference/kernelGap.ts";
import { aboutAxis, axisOf, type RingCase, type WheelCase } from "../reference/referenceRing.ts";
import { chordError, roundedCylinder } from "../reference/rings.ts";

// Formulas of this file: class "derived". A cylinder with rounded shoulders is a disk and a ball added
// together (Minkowski), so its reach in a direction is the sum of theirs; the rest is plane trigonometry.
const DEG = Math.PI / 180;
const R = 355.5;
const W = 240;
const r = 25;
const PER_SHOULDER = 64;
/** The chords lie inside the arcs by up to this, so a gap to them is larger by up to this: 0.0019 mm. */
const POLYGON = chordError(r, PER_SHOULDER);

const rounded = roundedCylinder(R, W, r, 180, PER_SHOULDER);
const square: RingCase = {
  name: "square shoulders",
  profile: [
    [-W / 2, 180],
    [-W / 2, R],
    [W / 2, R],
    [W / 2, 180],
  ],
  barrelRadius: 180,
};
const level: WheelCase = { center: [0, 0, 0], axis: [0, 1, 0] };

/** A square of four corners in order, as two triangles. */
const SQUARE = [
  [0, 1, 2],
  [0, 2, 3],
] as const;

/** Gap to a flat panel across `u`, `far` from the wheel center and much larger than the wheel. */
function panelGap(ring: RingCase, wheel: WheelCase, u: Vec3, far: number): number {
  const a = normalize(cross(u, Math.abs(u[2]) < 0.8 ? [0, 0, 1] : [1, 0, 0]));
  const b = cross(u, a);
  const middle = addScaled(wheel.center, u, far);
  const corner = (s: number, t: number) => addScaled(addScaled(middle, a, 3000 * s), b, 3000 * t);
  const part: PartInput = {
    name: "panel",
    kind: "mesh",
    ...flatMesh([corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)], SQUARE),
  };
  return kernelGap(ring, wheel, part).gap;
}

/** The gap is at least the exact one and at most `error` more, both to the search's own tolerance. */
function expectWithin(gap: number, exact: number, error: number) {
  expect(gap - exact).toBeGreaterThan(-1e-5);
  expect(gap - exact).toBeLessThan(error + 1e-5);
}

describe("reach of a tire toward a flat panel: (W/2 − r)|n·u| + (R − r)√(1 − (n·u)²) + r", () => {
  // Steer, camber (degrees), reach toward +Y with r = 25 and with r = 0, mm, to 1e-4.
  test.each([
    [30, 0, 272.5224, 281.673],
    [30, 2, 272.7739, 281.9342],
    [-35, -1.5, 292.4922, 302.3134],
    [0, -2, 131.4764, 132.3337],
  ])(
    "outboard, steered %d° and leaned %d°: %f mm, %f mm with square shoulders",
    (steer, camber, soft, hard) => {
      const wheel = { center: [30, 790, 350] as Vec3, axis: axisOf(steer * DEG, camber * DEG) };
      expectWithin(panelGap(rounded, wheel, [0, 1, 0], 500), 500 - soft, POLYGON + 5e-5);
      expectWithin(panelGap(square, wheel, [0, 1, 0], 500), 500 - hard - 5e-5, 1e-4);
    },
  );

  it("holds in every direction, panel clear or through the tire", () => {
    for (let i = 0; i < 60; i++) {
      const u = normalize([Math.sin(2.1 * i), Math.cos(1.3 * i + 0.4), Math.sin(0.7 * i + 1)]);
      const wheel = { center: [0, 0, 0] as Vec3, axis: axisOf(0.37 * Math.sin(i), 0.12 * Math.cos(i)) };
      const along = Math.abs(u[0] * wheel.axis[0] + u[1] * wheel.axis[1] + u[2] * wheel.axis[2]);
      const reach = (W / 2 - r) * along + (R - r) * Math.sqrt(1 - along * along) + r;
      expectWithin(panelGap(rounded, wheel, u, reach + 80), 80, POLYGON);
    }
  });
});

describe("a point beside the tire", () => {
  it("at radius 400 mm and 150 mm out is √(69.5² + 55²) − 25 = 63.6298 mm away", () => {
    for (const turn of [0, 1, 2.5, Math.PI]) {
      expectWithin(
        kernelGap(rounded, level, ball(aboutAxis(level, 150, 400, turn))).gap,
        63.6298 - 5e-5,
        POLYGON + 1e-4,
      );
    }
  });

  it("moves with the radius of a ball about it", () => {
    const at = aboutAxis(level, 150, 400, 0.3);
    expectWithin(kernelGap(rounded, level, ball(at, 70)).gap, 63.6298 - 70 - 5e-5, POLYGON + 1e-4);
  });
});

describe("a round wheel arch over the tire", () => {
  it("of radius 420 mm, centers 15 and 30 mm apart, is 420 − √(15² + 30²) − 355.5 = 30.9590 mm away", () => {
    // A polyline on the arch: its chords come nearer than the circle by up to 420(1 − cos(π/n)).
    const n = 6000;
    const points = Array.from({ length: n + 1 }, (_, i): Vec3 => {
      const turn = (2 * Math.PI * i) / n;
      return [15 + 420 * Math.cos(turn), 0, 30 + 420 * Math.sin(turn)];
    });
    const { gap } = kernelGap(rounded, level, { name: "arch", kind: "path", radius: 0, points });
    const chord = 420 * (1 - Math.cos(Math.PI / n));
    expect(chord).toBeLessThan(1e-4);
    expect(Math.abs(gap - 30.959)).toBeLessThan(1e-4 + chord);
  });
});

describe("a rotor disk and a ball joint: a = n·(B − C), ρ = |B − C − a n|, e = |a| − t/2", () => {
  const radius = 152;
  const thickness = 22;
  const disk: RingCase = {
    name: "rotor",
    profile: [
      [-thickness / 2, 60],
      [-thickness / 2, radius],
      [thickness / 2, radius],
      [thickness / 2, 60],
    ],
    barrelRadius: 60,
  };
  const wheel = { center: [5, 760, 340] as Vec3, axis: axisOf(0.3, -0.03) };
  const ballRadius = 17;

  it.each([
    [40, 100, 12],
    [-11.5, 150, -16.5],
    [-90, 61, 62],
  ])("facing the disk (a %d, ρ %d) the gap is e − rb = %d mm", (a, rho, gap) => {
    for (const turn of [0.2, 3]) {
      expect(kernelGap(disk, wheel, ball(aboutAxis(wheel, a, rho, turn), ballRadius)).gap).toBeCloseTo(
        gap,
        9,
      );
    }
  });

  it.each([
    [0, 200],
    [10, 170],
    [11, 160],
    [40, 190],
    [-75, 152.5],
  ])("past its rim (a %d, ρ %d) the gap is √((ρ − R)² + max(0, e)²) − rb", (a, rho) => {
    const e = Math.abs(a) - thickness / 2;
    const expected = Math.sqrt((rho - radius) ** 2 + Math.max(0, e) ** 2) - ballRadius;
    expect(kernelGap(disk, wheel, ball(aboutAxis(wheel, a, rho, 1.1), ballRadius)).gap).toBeCloseTo(
      expected,
      9,
    );
  });
});

describe("the ring as a solid with a hole", () => {
  it("a point on the axis is a barrel radius away, outboard of the barrel farther by Pythagoras", () => {
    expect(kernelGap(square, level, ball([0, 0, 0])).gap).toBeCloseTo(180, 9);
    expect(kernelGap(square, level, ball([0, 200, 0])).gap).toBeCloseTo(Math.sqrt(180 ** 2 + 80 ** 2), 9);
  });

  it("a brake hose through the barrel along the axis is a barrel radius less its own away", () => {
    const hose: PartInput = {
      name: "hose",
      kind: "path",
      radius: 9,
      points: [
        [0, -400, 20],
        [0, 400, 20],
      ],
    };
    expect(kernelGap(square, level, hose).gap).toBeCloseTo(180 - 20 - 9, 5);
  });

  it("a panel through the wheel center cuts half the section deep", () => {
    // Halfway between tread and barrel the section is (355.5 − 180)/2 deep, less than half its width.
    const panel: PartInput = {
      name: "panel",
      kind: "mesh",
      ...flatMesh(
        [
          [-900, 0, -900],
          [900, 0, -900],
          [900, 0, 900],
          [-900, 0, 900],
        ],
        SQUARE,
      ),
    };
    const { gap } = kernelGap(square, level, panel);
    expect(Math.abs(gap + (R - 180) / 2)).toBeLessThan(0.01);
  });

  it("a box that swallows the whole ring is as deep as the middle of the section, though no face touches", () => {
    const box: PartInput = { name: "box", kind: "box", min: [-500, -300, -500], max: [500, 300, 500] };
    const { gap } = kernelGap(square, level, box);
    expect(Math.abs(gap + (R - 180) / 2)).toBeLessThan(0.015);
  });

  it("a box inside the barrel that touches nothing is clear", () => {
    const box: PartInput = { name: "box", kind: "box", min: [-100, -60, -100], max: [100, 60, 100] };
    expect(kernelGap(square, level, box).gap).toBeCloseTo(180 - Math.SQRT2 * 100, 5);
  });
});
