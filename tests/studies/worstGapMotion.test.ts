import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { MOTION, MOTION_ROW } from "../../src/geometry/motionRow.ts";
import { addScaled, cross, length, sub, type Vec3, vecAt } from "../../src/geometry/vec.ts";
import type { SideModel } from "../../src/suspension/frontEnd.ts";
import { type InnerEndSpread, motionBoundTo } from "../../src/suspension/motionBound.ts";
import { POSE, POSE_ROW, poseRowTo } from "../../src/suspension/poseRow.ts";
import { PoseStatus } from "../../src/suspension/poseStatus.ts";
import { INNER_ENDS_ROW, type Steering } from "../../src/suspension/steering.ts";
import { RATE, RATE_ROW, wheelRatesTo } from "../../src/suspension/wheelRates.ts";
import { between } from "../reference/gapCases.ts";
import { type GeneratedTruck, plausibleTrucks, SEED } from "../suspension/plausibleTrucks.ts";

interface Cell {
  readonly arm: number;
  readonly steer: number;
  readonly armHalf: number;
  readonly steerHalf: number;
}

interface Placed {
  readonly pose: Float64Array;
  readonly rates: Float64Array;
  readonly innerRate: readonly [number, number, number];
}

const INNER_AT = { left: 0, right: 3 } as const;
type Side = keyof typeof INNER_AT;

/** One side at one lower arm angle and steer, with its derivatives; null out of reach. */
function place(side: SideModel, steering: Steering, which: Side, arm: number, steer: number): Placed | null {
  const ends = new Float64Array(INNER_ENDS_ROW);
  const pose = new Float64Array(POSE_ROW);
  const rates = new Float64Array(RATE_ROW);
  const at = INNER_AT[which];
  if (steering.innerEndsTo(ends, steer) !== PoseStatus.Ok) return null;
  const [cos, sin] = [Math.cos(arm), Math.sin(arm)];
  if (poseRowTo(pose, 0, side.row, cos, sin, ends[at]!, ends[at + 1]!, ends[at + 2]!) !== PoseStatus.Ok)
    return null;
  const innerRate = vecAt(ends, at + 6);
  wheelRatesTo(rates, 0, side.row, pose, 0, cos, sin, ...innerRate);
  return { pose, rates, innerRate };
}

/** The motion row proven for a cell, with the placed middle; null when nothing is proven. */
function provenCell(
  { frontEnd }: GeneratedTruck,
  which: Side,
  cell: Cell,
): { motion: Float64Array; middle: Placed } | null {
  const side = frontEnd[which];
  const { steering } = frontEnd;
  const middle = place(side, steering, which, cell.arm, cell.steer);
  const spread: InnerEndSpread = { speedMost: 0, velocityOff: 0 };
  if (middle === null || !steering.innerEndSpreadTo(spread, cell.steer, cell.steerHalf)) return null;
  const motion = new Float64Array(MOTION_ROW);
  const [cos, sin] = [Math.cos(cell.arm), Math.sin(cell.arm)];
  const { pose, rates, innerRate } = middle;
  const proven = motionBoundTo(
    motion,
    side.row,
    pose,
    rates,
    cos,
    sin,
    cell.armHalf,
    cell.steerHalf,
    spread,
    innerRate,
  );
  return proven ? { motion, middle } : null;
}

const cells = () =>
  fc.record({
    arm: between(-0.2, 0.2),
    steer: between(-0.9, 0.9),
    armHalf: fc.oneof(between(0, 0.12), fc.constant(0), between(0, 0.005)),
    steerHalf: fc.oneof(between(0, 0.3), fc.constant(0), between(0, 0.01)),
  });

const inside = fc.array(fc.tuple(between(-1, 1), between(-1, 1)), { minLength: 12, maxLength: 12 });
const CORNERS = [
  [-1, -1],
  [-1, 1],
  [1, -1],
  [1, 1],
  [0, 1],
  [1, 0],
] as const;

const distance = (a: Vec3, b: Vec3) => length(sub(a, b));
const at = (placed: Placed, where: number) => vecAt(placed.rates, where);
const centerOf = (placed: Placed) => vecAt(placed.pose, POSE.wheelCenter);

/** Velocity of the body point that passes the place `p` now. */
function velocityAt(placed: Placed, turnAt: number, slideAt: number, p: Vec3): Vec3 {
  return addScaled(at(placed, slideAt), cross(at(placed, turnAt), sub(p, centerOf(placed))), 1);
}

/** Every bound a motion row states, against one pose of the cell: [what it is, what is allowed]. */
function claims(motion: Float64Array, middle: Placed, there: Placed): [number, number][] {
  const place = centerOf(middle);
  return (
    [
      [RATE.armTurn, RATE.armSlide, MOTION.armTurnOff],
      [RATE.steerTurn, RATE.steerSlide, MOTION.steerTurnOff],
    ] as const
  ).flatMap(([turn, slide, off]): [number, number][] => [
    [distance(at(there, turn), at(middle, turn)), motion[off]!],
    [distance(velocityAt(there, turn, slide, place), at(middle, slide)), motion[off + 1]!],
    [length(at(there, turn)), motion[off + 2]!],
  ]);
}

describe.each(["rack", "pitman"] as const)(
  `motion proven over a cell, %s steering (seed ${SEED.seed}, ${SEED.numRuns} cells)`,
  (kind) => {
    it("no pose of the cell turns or slides otherwise than the bounds allow, nor is out of reach", () => {
      let proven = 0;
      fc.assert(
        fc.property(
          plausibleTrucks(kind),
          fc.constantFrom<Side>("left", "right"),
          cells(),
          inside,
          (truck, which, cell, spots) => {
            const found = provenCell(truck, which, cell);
            if (found === null) return;
            proven++;
            const { motion, middle } = found;
            for (const [u, v] of [...CORNERS, ...spots]) {
              const arm = cell.arm + u * cell.armHalf;
              const steer = cell.steer + v * cell.steerHalf;
              const there = place(truck.frontEnd[which], truck.frontEnd.steering, which, arm, steer);
              expect(there).not.toBeNull();
              for (const [is, allowed] of claims(motion, middle, there!))
                expect(is).toBeLessThanOrEqual(allowed + 1e-9);
              // The wheel center's way M from the middle: M ≤ Σ half·(|v| + v's spread + |ω|·M), whatever the path.
              const halves = [motion[MOTION.armHalf]!, motion[MOTION.steerHalf]!] as const;
              const slides =
                halves[0] * (length(at(middle, RATE.armSlide)) + motion[MOTION.armSlideOff]!) +
                halves[1] * (length(at(middle, RATE.steerSlide)) + motion[MOTION.steerSlideOff]!);
              const turns =
                halves[0] * motion[MOTION.armTurnMost]! + halves[1] * motion[MOTION.steerTurnMost]!;
              if (turns < 1)
                expect(distance(centerOf(there!), centerOf(middle))).toBeLessThanOrEqual(
                  slides / (1 - turns) + 1e-9,
                );
              // The wheel axis turns by no more than the turns add up to.
              const axis = distance(vecAt(there!.pose, POSE.wheelAxis), vecAt(middle.pose, POSE.wheelAxis));
              expect(axis).toBeLessThanOrEqual(turns + 1e-12);
            }
          },
        ),
        { ...SEED, endOnFailure: true },
      );
      // Unproven cells claim nothing; enough must have been proven.
      expect(proven).toBeGreaterThan(0.4 * SEED.numRuns);
    });

    it("the inner tie rod ends keep to their speed and its spread, by differences of where they are", () => {
      let proven = 0;
      fc.assert(
        fc.property(
          plausibleTrucks(kind),
          between(-0.9, 0.9),
          between(0.001, 0.3),
          inside,
          ({ frontEnd }, steer, half, spots) => {
            const spread: InnerEndSpread = { speedMost: 0, velocityOff: 0 };
            if (!frontEnd.steering.innerEndSpreadTo(spread, steer, half)) return;
            proven++;
            const ends = (s: number) => {
              const row = new Float64Array(INNER_ENDS_ROW);
              expect(frontEnd.steering.innerEndsTo(row, s)).toBe(PoseStatus.Ok);
              return row;
            };
            const middle = ends(steer);
            for (const [u, v] of [[-1, 1] as const, ...spots]) {
              const by = (v - u) * half;
              if (Math.abs(by) < 1e-5) continue;
              const [from, to] = [ends(steer + u * half), ends(steer + v * half)];
              for (const where of [0, 3]) {
                // The mean velocity between two steers lies within every bound that holds all along.
                const mean = sub(vecAt(to, where), vecAt(from, where)).map((x) => x / by) as unknown as Vec3;
                expect(length(mean)).toBeLessThanOrEqual(spread.speedMost + 1e-6);
                expect(distance(mean, vecAt(middle, where + 6))).toBeLessThanOrEqual(
                  spread.velocityOff + 1e-6,
                );
              }
            }
          },
        ),
        { ...SEED, endOnFailure: true },
      );
      expect(proven).toBeGreaterThan(0.6 * SEED.numRuns);
    });

    it("the spreads shrink with the cell, half as wide half as large, and are not far above what happens", () => {
      let compared = 0;
      let ratios = 0;
      let halved = 0;
      const loose: number[] = [];
      fc.assert(
        fc.property(
          plausibleTrucks(kind),
          fc.constantFrom<Side>("left", "right"),
          cells(),
          (truck, which, { arm, steer }) => {
            const halves = [4e-4, 2e-4, 1e-4].map((h) =>
              provenCell(truck, which, { arm, steer, armHalf: h, steerHalf: h }),
            );
            if (halves.some((found) => found === null)) return;
            compared++;
            const offs = [MOTION.armTurnOff, MOTION.armSlideOff, MOTION.steerTurnOff, MOTION.steerSlideOff];
            for (const off of offs) {
              const [wide, half, quarter] = halves.map((found) => found!.motion[off]!) as [
                number,
                number,
                number,
              ];
              // Halving the cell halves a spread; what is above that is second order, largest near the end of reach.
              expect(half / quarter).toBeGreaterThan(1.99);
              expect(half / quarter).toBeLessThan(2.5);
              expect(wide / half).toBeLessThan(3.2);
              ratios++;
              if (half / quarter < 2.1) halved++;
            }
            const { motion, middle } = halves[2]!;
            const corners = CORNERS.map(([u, v]) =>
              place(truck.frontEnd[which], truck.frontEnd.steering, which, arm + 1e-4 * u, steer + 1e-4 * v),
            );
            const real = Math.max(...corners.map((c) => claims(motion, middle, c!)[1]![0]));
            loose.push(motion[MOTION.armSlideOff]! / real);
          },
        ),
        { ...SEED, numRuns: 200, endOnFailure: true },
      );
      expect(compared).toBeGreaterThan(120);
      expect(halved).toBeGreaterThan(0.9 * ratios);
      loose.sort((a, b) => a - b);
      // Half of them are within a factor that ball arithmetic loses by taking every term at its worst.
      expect(loose[Math.floor(loose.length / 2)]).toBeLessThan(25);
    });
  },
);
