import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { length, sub, vecAt } from "../../src/geometry/vec.ts";
import { armAngleFor } from "../../src/suspension/armAngle.ts";
import type { FrontEnd, Side } from "../../src/suspension/frontEnd.ts";
import { POSE, POSE_ROW, poseRowTo } from "../../src/suspension/poseRow.ts";
import { PoseStatus } from "../../src/suspension/poseStatus.ts";
import { INNER_ENDS_ROW } from "../../src/suspension/steering.ts";
import { RATE, RATE_ROW, wheelRatesTo } from "../../src/suspension/wheelRates.ts";
import { plausibleTrucks, SEED } from "./plausibleTrucks.ts";

const STEPS = 300;
/** mm. For the places where a joint hardly moves and what speed it has changes within the step. */
const SLACK = 0.05;
const MOVING = ["upperBallJoint", "tieRodOuter", "wheelCenter"] as const;

/** How fast a point that rides on the knuckle moves, from the knuckle's turn and the wheel center's slide. */
function speedOf(
  rates: Float64Array,
  row: Float64Array,
  point: number,
  turnAt: number,
  slideAt: number,
): number {
  const [wx, wy, wz] = vecAt(rates, turnAt);
  const [rx, ry, rz] = sub(vecAt(row, point), vecAt(row, POSE.wheelCenter));
  const [vx, vy, vz] = vecAt(rates, slideAt);
  return length([vx + wy * rz - wz * ry, vy + wz * rx - wx * rz, vz + wx * ry - wy * rx]);
}

interface Place {
  readonly arm: number;
  readonly steer: number;
}

/**
 * Walks from place to place until a joint is out of reach: a step may be no longer than the speed at its two
 * ends allows (twice, for what the speed does in between). Where two roots meet the speed has no bound, but a
 * jump from one root to the other away from there is tens of millimeters against fractions of one.
 * @returns how many steps were walked.
 */
function expectNoJump(
  frontEnd: FrontEnd,
  side: Side,
  places: readonly Place[],
  along: "arm" | "steer",
): number {
  const ends = new Float64Array(INNER_ENDS_ROW);
  const at = side === "left" ? 0 : 3;
  const [turnAt, slideAt] =
    along === "arm" ? [RATE.armTurn, RATE.armSlide] : [RATE.steerTurn, RATE.steerSlide];
  let last: { row: Float64Array; rates: Float64Array; place: Place } | null = null;
  let steps = 0;
  let worst = { excess: Number.NEGATIVE_INFINITY, where: "" };
  for (const place of places) {
    const row = new Float64Array(POSE_ROW);
    const rates = new Float64Array(RATE_ROW);
    const [cos, sin] = [Math.cos(place.arm), Math.sin(place.arm)];
    if (frontEnd.steering.innerEndsTo(ends, place.steer) !== PoseStatus.Ok) break;
    const model = frontEnd[side].row;
    if (poseRowTo(row, 0, model, cos, sin, ends[at]!, ends[at + 1]!, ends[at + 2]!) !== PoseStatus.Ok) break;
    wheelRatesTo(rates, 0, model, row, 0, cos, sin, ends[at + 6]!, ends[at + 7]!, ends[at + 8]!);
    if (last !== null) {
      const step = Math.abs(place[along] - last.place[along]);
      for (const joint of MOVING) {
        const moved = length(sub(vecAt(row, POSE[joint]), vecAt(last.row, POSE[joint])));
        const speed = Math.max(
          speedOf(rates, row, POSE[joint], turnAt, slideAt),
          speedOf(last.rates, last.row, POSE[joint], turnAt, slideAt),
        );
        const excess = moved - 2 * speed * step;
        if (!(excess <= worst.excess)) worst = { excess, where: `${joint} at ${along} ${place[along]}` };
      }
      steps++;
    }
    last = { row, rates, place };
  }
  if (steps > 0) expect(worst.excess, worst.where).toBeLessThan(SLACK);
  return steps;
}

const spread = (from: number, to: number) =>
  Array.from({ length: STEPS + 1 }, (_, i) => from + ((to - from) * i) / STEPS);

describe(`roots do not change on the way (seed ${SEED.seed})`, () => {
  it("through the whole reach of the lower arm no joint jumps", () => {
    fc.assert(
      fc.property(plausibleTrucks(), ({ frontEnd }) => {
        for (const side of ["left", "right"] as const) {
          const { droop, bump } = frontEnd[side].reach;
          const places = spread(droop.armAngle, bump.armAngle).map((arm) => ({ arm, steer: 0 }));
          expect(expectNoJump(frontEnd, side, places, "arm")).toBe(STEPS);
        }
      }),
      { ...SEED, numRuns: 200 },
    );
  });

  it("from straight ahead to either lock, at full droop, rest and full bump, no joint jumps", () => {
    fc.assert(
      fc.property(
        plausibleTrucks(),
        fc.constantFrom(-90, 0, 90),
        fc.constantFrom(-1, 1),
        ({ frontEnd }, travel, lock) => {
          for (const side of ["left", "right"] as const) {
            const arm = armAngleFor(frontEnd[side], travel);
            if (Number.isNaN(arm)) continue;
            const places = spread(0, lock).map((steer) => ({ arm, steer }));
            expect(expectNoJump(frontEnd, side, places, "steer")).toBeGreaterThan(STEPS / 10);
          }
        },
      ),
      { ...SEED, numRuns: 200 },
    );
  });
});
