import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cross, length, normalize, scale, sub, type Vec3, vecAt } from "../../src/geometry/vec.ts";
import { armAngleFor } from "../../src/suspension/armAngle.ts";
import type { FrontEnd, Side } from "../../src/suspension/frontEnd.ts";
import { POSE, POSE_ROW, poseRowTo } from "../../src/suspension/poseRow.ts";
import { PoseStatus } from "../../src/suspension/poseStatus.ts";
import { INNER_ENDS_ROW } from "../../src/suspension/steering.ts";
import { RATE, RATE_ROW, wheelRatesTo } from "../../src/suspension/wheelRates.ts";
import { drawnTrucks, inputOf } from "./drawnTrucks.ts";
import { plausibleTrucks, SEED, usualPoses } from "./plausibleTrucks.ts";
import { assembled } from "./trucks.ts";

/** rad or steer. Central differences are good to STEP² and to rounding / STEP, both below 1e-9 of the rates. */
const STEP = 1e-6;
const RELATIVE = 1e-5;

/** One side's pose row at an arm angle and a steering input, or null out of reach. */
function rowAt(frontEnd: FrontEnd, side: Side, armAngle: number, steer: number): Float64Array | null {
  const ends = new Float64Array(INNER_ENDS_ROW);
  if (frontEnd.steering.innerEndsTo(ends, steer) !== PoseStatus.Ok) return null;
  const row = new Float64Array(POSE_ROW);
  const at = side === "left" ? 0 : 3;
  const status = poseRowTo(
    row,
    0,
    frontEnd[side].row,
    Math.cos(armAngle),
    Math.sin(armAngle),
    ends[at]!,
    ends[at + 1]!,
    ends[at + 2]!,
  );
  return status === PoseStatus.Ok ? row : null;
}

function ratesAt(
  frontEnd: FrontEnd,
  side: Side,
  row: Float64Array,
  armAngle: number,
  steer: number,
): Float64Array {
  const ends = new Float64Array(INNER_ENDS_ROW);
  frontEnd.steering.innerEndsTo(ends, steer);
  const at = side === "left" ? 6 : 9;
  const out = new Float64Array(RATE_ROW);
  const [cos, sin] = [Math.cos(armAngle), Math.sin(armAngle)];
  wheelRatesTo(out, 0, frontEnd[side].row, row, 0, cos, sin, ends[at]!, ends[at + 1]!, ends[at + 2]!);
  return out;
}

function expectRate(found: Vec3, before: Vec3, after: Vec3, size: number, what: string) {
  const difference = scale(sub(after, before), 1 / (2 * STEP));
  const tolerance = RELATIVE * (size + length(difference));
  expect(length(sub(found, difference)), what).toBeLessThan(tolerance);
}

/** Turn and slide of the wheel, against the same two poses a step apart. */
function expectWheelRates(
  turn: Vec3,
  slide: Vec3,
  row: Float64Array,
  before: Float64Array,
  after: Float64Array,
  what: string,
) {
  const at = (r: Float64Array, i: number) => vecAt(r, i);
  expectRate(slide, at(before, POSE.wheelCenter), at(after, POSE.wheelCenter), 100, `${what}: wheel center`);
  for (const axis of ["wheelAxis", "knuckleX", "knuckleY", "knuckleZ"] as const) {
    const i = POSE[axis];
    expectRate(cross(turn, at(row, i)), at(before, i), at(after, i), 1, `${what}: ${axis}`);
  }
}

describe(`rates are the derivatives of the pose (seed ${SEED.seed}, ${SEED.numRuns} runs)`, () => {
  it.each(["rack", "pitman"] as const)("per radian of lower arm and per unit of steer, %s", (kind) => {
    let compared = 0;
    fc.assert(
      fc.property(plausibleTrucks(kind), usualPoses(), ({ frontEnd }, { travel, steer }) => {
        for (const side of ["left", "right"] as const) {
          const angle = armAngleFor(frontEnd[side], travel);
          if (Number.isNaN(angle)) continue;
          const row = rowAt(frontEnd, side, angle, steer);
          const [lower, higher] = [
            rowAt(frontEnd, side, angle - STEP, steer),
            rowAt(frontEnd, side, angle + STEP, steer),
          ];
          const [before, after] = [
            rowAt(frontEnd, side, angle, steer - STEP),
            rowAt(frontEnd, side, angle, steer + STEP),
          ];
          if (row === null || lower === null || higher === null || before === null || after === null)
            continue;
          const rates = ratesAt(frontEnd, side, row, angle, steer);
          const [armTurn, armSlide] = [vecAt(rates, RATE.armTurn), vecAt(rates, RATE.armSlide)];
          expectWheelRates(armTurn, armSlide, row, lower, higher, `${side} arm`);
          const [steerTurn, steerSlide] = [vecAt(rates, RATE.steerTurn), vecAt(rates, RATE.steerSlide)];
          expectWheelRates(steerTurn, steerSlide, row, before, after, `${side} steer`);
          compared++;
        }
      }),
      SEED,
    );
    expect(compared).toBeGreaterThan(1.7 * SEED.numRuns);
  });

  it.each(["rack", "pitman"] as const)("inner tie rod ends per unit of steer, %s", (kind) => {
    let compared = 0;
    fc.assert(
      fc.property(plausibleTrucks(kind), usualPoses(), ({ frontEnd }, { steer }) => {
        const ends = [-STEP, 0, STEP].map((step) => {
          const out = new Float64Array(INNER_ENDS_ROW);
          return frontEnd.steering.innerEndsTo(out, steer + step) === PoseStatus.Ok ? out : null;
        });
        const [before, here, after] = ends;
        if (!before || !here || !after) return;
        compared++;
        expectRate(vecAt(here, 6), vecAt(before, 0), vecAt(after, 0), 10, "left inner end");
        expectRate(vecAt(here, 9), vecAt(before, 3), vecAt(after, 3), 10, "right inner end");
      }),
      SEED,
    );
    expect(compared).toBeGreaterThan(0.9 * SEED.numRuns);
  });

  it("inner tie rod ends far off a center link that tilts much", () => {
    // Pitman arm longer than the idler, both leaned: the link turns by several degrees about two axes.
    const truck = inputOf(drawnTrucks.find(({ name }) => name.startsWith("tall knuckle, pitman"))!);
    if (truck.steering.type !== "pitman") throw new Error("expected pitman-arm steering");
    const { innerEndsTo } = assembled({
      ...truck,
      steering: {
        ...truck.steering,
        innerEnd: [-301, 219, 538],
        innerEndRight: [-96, -228, 96],
        idler: { pivot: [-59, -291, 352], axis: normalize([0.4, 0.3, 1]), end: [-159, -301, 325] },
      },
    }).steering;
    const [before, here, after] = [0, 0, 0].map(() => new Float64Array(INNER_ENDS_ROW));
    for (let steer = -0.8; steer <= 0.8; steer += 0.1) {
      for (const [row, step] of [
        [before!, -STEP],
        [here!, 0],
        [after!, STEP],
      ] as const) {
        expect(innerEndsTo(row, steer + step)).toBe(PoseStatus.Ok);
      }
      for (const at of [0, 3]) {
        const difference = scale(sub(vecAt(after!, at), vecAt(before!, at)), 1 / (2 * STEP));
        expect(length(sub(vecAt(here!, 6 + at), difference))).toBeLessThan(1e-6);
      }
    }
  });

  it("the wheel center's rise per radian is the slope that finds the travel: their quotient gives back a small travel", () => {
    fc.assert(
      fc.property(plausibleTrucks(), ({ frontEnd }) => {
        const row = rowAt(frontEnd, "left", 0, 0);
        if (row === null) throw new Error("rest must be reachable");
        const rise = ratesAt(frontEnd, "left", row, 0, 0)[RATE.armSlide + 2]!;
        const tiny = 1e-4;
        expect(armAngleFor(frontEnd.left, tiny)).toBeCloseTo(tiny / rise, 9);
      }),
      SEED,
    );
  });
});
