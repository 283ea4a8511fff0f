import { describe, expect, it } from "vitest";
import type { Vec3 } from "../../../src/geometry/vec.ts";
import { type Beam, type Frame, SolvedFrame, sectionForces } from "../../../src/studies/strength/frame.ts";
import { roundSection } from "../../../src/studies/strength/roundSection.ts";

const beam = (from: number, to: number, rest: Partial<Beam> = {}): Beam => ({
  ...{ from, to, area: 500, inertia: 40_000, polar: 80_000, shearArea: null },
  ...{ elasticity: 207_000, shearModulus: 80_000 },
  ...rest,
});
const clamp = (node: number) => [0, 1, 2, 3, 4, 5].map((freedom) => ({ node, freedom }));
const solved = (frame: Frame) => {
  const answer = SolvedFrame.of(frame);
  if (answer === null) throw new Error("moves without bending");
  return answer;
};
const near = (found: number, wanted: number, share = 1e-9) =>
  expect(Math.abs(found - wanted)).toBeLessThanOrEqual(share * Math.abs(wanted));

/** Beams of the handbooks: Roark's Formulas for Stress and Strain and Machinery's Handbook, from memory. */
describe("a cantilever", () => {
  const tip: Vec3 = [300, 400, 0]; // 500 long, askew
  const frame: Frame = { nodes: [[0, 0, 0], tip], beams: [beam(0, 1)], held: clamp(0) };

  it("sags by P L³ / 3 E I under a load at its end, turns by P L² / 2 E I, and is bent by P L at its root", () => {
    const { motion, ends } = solved(frame).under([{ node: 1, force: [0, 0, -900] }]);
    near(motion[8]!, (-900 * 500 ** 3) / (3 * 207_000 * 40_000));
    near(Math.hypot(motion[9]!, motion[10]!), (900 * 500 ** 2) / (2 * 207_000 * 40_000));
    near(sectionForces(ends[0]!, "from").bending, 900 * 500);
    near(sectionForces(ends[0]!, "from").shear, 900);
    expect(sectionForces(ends[0]!, "to").bending).toBeLessThan(1e-6);
  });

  it("stretches by P L / A E, twists by T L / G J, and a pull is told as one", () => {
    const { motion, ends } = solved(frame).under([
      { node: 1, force: [600, 800, 0], moment: [6000, 8000, 0] },
    ]);
    near(Math.hypot(motion[6]!, motion[7]!), (1000 * 500) / (500 * 207_000));
    near(Math.hypot(motion[9]!, motion[10]!), (10_000 * 500) / (80_000 * 80_000));
    near(sectionForces(ends[0]!, "from").pull, 1000);
    near(sectionForces(ends[0]!, "to").pull, 1000);
    near(sectionForces(ends[0]!, "to").torque, 10_000);
  });

  it("with shear, sags by P L / G A more", () => {
    const { shearShape, area } = roundSection(45, 6);
    const sheared = { ...frame, beams: [beam(0, 1, { shearArea: area / shearShape })] };
    const { motion } = solved(sheared).under([{ node: 1, force: [0, 0, -900] }]);
    const bent = (900 * 500 ** 3) / (3 * 207_000 * 40_000);
    near(-motion[8]!, bent + (900 * 500 * shearShape) / (80_000 * area));
  });
});

it("a beam clamped at both ends is bent by P L / 8 at its ends and its middle, and sags by P L³ / 192 E I", () => {
  const frame: Frame = {
    nodes: [
      [0, 0, 0],
      [200, 0, 0],
      [400, 0, 0],
    ],
    beams: [beam(0, 1), beam(1, 2)],
    held: [...clamp(0), ...clamp(2)],
  };
  const { motion, ends } = solved(frame).under([{ node: 1, force: [0, 0, -1000] }]);
  near(motion[8]!, (-1000 * 400 ** 3) / (192 * 207_000 * 40_000));
  near(sectionForces(ends[0]!, "from").bending, (1000 * 400) / 8);
  near(sectionForces(ends[1]!, "from").bending, (1000 * 400) / 8);
});

it("a bent cantilever loaded across its plane sags by P a³/3EI + P b³/3EI + P a² b/GJ (Castigliano)", () => {
  const [b, a] = [350, 220];
  const frame: Frame = {
    nodes: [
      [0, 0, 0],
      [b, 0, 0],
      [b, a, 0],
    ],
    beams: [beam(0, 1), beam(1, 2)],
    held: clamp(0),
  };
  const { motion, ends } = solved(frame).under([{ node: 2, force: [0, 0, -700] }]);
  const bend = 3 * 207_000 * 40_000;
  near(motion[14]!, -(700 * a ** 3) / bend - (700 * b ** 3) / bend - (700 * a * a * b) / (80_000 * 80_000));
  near(sectionForces(ends[0]!, "from").torque, 700 * a);
  near(sectionForces(ends[0]!, "from").bending, 700 * b);
});

it("a portal clamped at its feet has P h/2 · (3k+1)/(6k+1) there and P h/2 · 3k/(6k+1) at its corners (Kleinlogel, from memory)", () => {
  const [h, span] = [300, 450];
  // So thick along that only bending counts, as the formula has it.
  const post = { area: 5e8 };
  const rail = { area: 5e8, inertia: 70_000 };
  const frame: Frame = {
    nodes: [
      [0, 0, 0],
      [0, 0, h],
      [0, span, h],
      [0, span, 0],
    ],
    beams: [beam(0, 1, post), beam(1, 2, rail), beam(2, 3, post)],
    held: [...clamp(0), ...clamp(3)],
  };
  const { ends } = solved(frame).under([{ node: 1, force: [0, 800, 0] }]);
  const k = (70_000 / 40_000) * (h / span);
  near(sectionForces(ends[0]!, "from").bending, ((800 * h) / 2) * ((3 * k + 1) / (6 * k + 1)), 1e-5);
  near(sectionForces(ends[0]!, "to").bending, ((800 * h) / 2) * ((3 * k) / (6 * k + 1)), 1e-5);
});

it("a space frame of three bars moves as printed: Logan, A First Course in the Finite Element Method, example 5.8 (from memory)", () => {
  // kip, in: E 30 000, G 10 000, A 10, I 100 both ways, J 50, three bars of 100 in to fixed ends.
  const bar = (from: number): Beam => ({
    ...{ from, to: 0, area: 10, inertia: 100, polar: 50, shearArea: null },
    ...{ elasticity: 30_000, shearModulus: 10_000 },
  });
  const frame: Frame = {
    nodes: [
      [0, 0, 0],
      [-100, 0, 0],
      [0, 0, -100],
      [0, -100, 0],
    ],
    beams: [bar(1), bar(2), bar(3)],
    held: [...clamp(1), ...clamp(2), ...clamp(3)],
  };
  const { motion } = solved(frame).under([{ node: 0, force: [0, -50, 0], moment: [-1000, 0, 0] }]);
  const printed = [7.098e-5, -0.014, -2.352e-3, -3.996e-3, 1.78e-5, -1.033e-4];
  // As many digits as are printed.
  const rounding = [5e-9, 5e-4, 5e-7, 5e-7, 5e-9, 5e-8];
  printed.forEach((wanted, i) => {
    expect([i, Math.abs(motion[i]! - wanted) <= 1.01 * rounding[i]!, motion[i]]).toEqual([
      i,
      true,
      motion[i],
    ]);
  });
});

it("a frame that nothing holds has no answer", () => {
  expect(
    SolvedFrame.of({
      nodes: [
        [0, 0, 0],
        [1, 0, 0],
      ],
      beams: [beam(0, 1)],
      held: [],
    }),
  ).toBeNull();
});
