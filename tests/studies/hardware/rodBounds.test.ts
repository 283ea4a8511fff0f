import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { boundCell, cellBound } from "../../../src/gaps/cells/cellBound.ts";
import { CELL_ROW } from "../../../src/gaps/cells/cells.ts";
import { MOTION_ROW } from "../../../src/geometry/motionRow.ts";
import type { Model } from "../../../src/studies/model/model.ts";
import type { RodPair } from "../../../src/studies/model/pairs.ts";
import { boundFan, fanBound } from "../../../src/studies/search/rodFan.ts";
import { rodCellTo, rodMotionTo, scaledMotionTo } from "../../../src/studies/search/rodMotion.ts";
import { motionBoundTo } from "../../../src/suspension/motionBound.ts";
import { POSE, POSE_ROW, poseRowTo } from "../../../src/suspension/poseRow.ts";
import { PoseStatus } from "../../../src/suspension/poseStatus.ts";
import { INNER_ENDS_ROW } from "../../../src/suspension/steering.ts";
import { RATE_ROW, wheelRatesTo } from "../../../src/suspension/wheelRates.ts";
import { assembledModel } from "../../reference/demoModel.ts";
import { hardwareSetup } from "../../reference/hardwareSetup.ts";
import { setupCases } from "../../reference/setupCases.ts";

const SEED = 1964;

/** Poses and points of a piece of a rod that are looked at one by one: an unpruned grid, corners included. */
const GRID = [-1, -0.5, 0.2, 1];

interface Cell {
  readonly pair: RodPair;
  readonly rod: number;
  readonly arm: number;
  readonly armHalf: number;
  readonly steer: number;
  readonly steerHalf: number;
  readonly near: number;
  readonly far: number;
}

/** Bounds of one cell, and the least distance of every grid point; null where the motion is not proven. */
function boundsOf(model: Model, cell: Cell) {
  const { pair, rod, arm, armHalf, steer, steerHalf, near, far } = cell;
  const { steering } = model.frontEnd;
  const side = model.frontEnd[pair.side];
  const innerAt = pair.side === "left" ? 0 : 3;
  const ends = new Float64Array(INNER_ENDS_ROW);
  const pose = new Float64Array(POSE_ROW);
  const place = (a: number, s: number) =>
    steering.innerEndsTo(ends, s) === PoseStatus.Ok &&
    poseRowTo(
      pose,
      0,
      side.row,
      Math.cos(a),
      Math.sin(a),
      ends[innerAt]!,
      ends[innerAt + 1]!,
      ends[innerAt + 2]!,
    ) === PoseStatus.Ok;
  const inner = () =>
    pair.pivots === null ? ([pose, POSE.tieRodInner] as const) : ([pair.pivots, 3 * rod] as const);
  if (!place(arm, steer)) return null;
  const v = [ends[innerAt + 6]!, ends[innerAt + 7]!, ends[innerAt + 8]!] as const;
  const rates = new Float64Array(RATE_ROW);
  const motion = new Float64Array(MOTION_ROW);
  const scaled = new Float64Array(MOTION_ROW);
  const spread = { speedMost: 0, velocityOff: 0 };
  const [cos, sin] = [Math.cos(arm), Math.sin(arm)];
  wheelRatesTo(rates, 0, side.row, pose, 0, cos, sin, ...v);
  if (!steering.innerEndSpreadTo(spread, steer, steerHalf)) return null;
  if (!motionBoundTo(motion, side.row, pose, rates, cos, sin, armHalf, steerHalf, spread, v)) return null;
  const [b, at] = inner();
  const own = pair.pivots === null ? { velocity: v, spread } : null;
  rodMotionTo(motion, motion, pose, b[at]!, b[at + 1]!, b[at + 2]!, own);
  scaledMotionTo(scaled, motion, far);
  const radius = 10;
  const row = new Float64Array(CELL_ROW);
  rodCellTo(row, pose, pair.outerAt, b, at, near, far, radius);
  const whole = cellBound();
  boundCell(whole, pair.ring, pose, POSE.wheelCenter, row, 0, scaled);
  const fan = fanBound();
  boundFan(fan, pair.ring, pose, POSE.wheelCenter, pose, pair.outerAt, b, at, near, far, radius, motion);

  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  const point = cellBound();
  for (const i of GRID) {
    for (const j of GRID) {
      // Proven motion says that the pose exists all over the cell.
      expect(place(arm + i * armHalf, steer + j * steerHalf)).toBe(true);
      for (const k of GRID) {
        const s = near + 0.5 * (k + 1) * (far - near);
        const [c, cAt] = inner();
        rodCellTo(row, pose, pair.outerAt, c, cAt, s, s, radius);
        boundCell(point, pair.ring, pose, POSE.wheelCenter, row, 0, null);
        least = Math.min(least, point.value);
        most = Math.max(most, point.value);
      }
    }
  }
  return { whole: whole.bound, fan: fan.bound, least, most };
}

describe.each(["rack", "pitman"] as const)(
  `the bounds of a piece of a rod, %s steering (seed ${SEED})`,
  (kind) => {
    it("no pose and point of the cell is nearer, and small cells are bounded closely", () => {
      let proven = 0;
      let close = 0;
      let fans = 0;
      let small = 0;
      const share = fc.double({ min: 0, max: 1, noNaN: true });
      fc.assert(
        fc.property(
          setupCases(kind),
          fc.array(fc.tuple(share, share, share, share, share, share), { minLength: 16, maxLength: 16 }),
          ({ setup }, draws) => {
            const { truck } = setup;
            const model = assembledModel({
              ...setup,
              truck: { ...truck, body: [] },
              hardware: hardwareSetup(),
            });
            const rods = model.pairs.filter((pair) => pair.kind === "rod");
            draws.forEach(([which, armAt, steerAt, size, from, to], i) => {
              const pair = rods[Math.floor(which * (rods.length - 1e-9))]!;
              const isSmall = i % 2 === 1;
              const half = (isSmall ? 0.002 : 0.15) * size;
              const near = i % 3 === 0 ? 0 : Math.min(from, to);
              const bounds = boundsOf(model, {
                pair,
                rod: pair.pivots === null ? 0 : i % 2,
                arm: 0.3 * (armAt - 0.5),
                armHalf: half,
                steer: 1.6 * (steerAt - 0.5),
                steerHalf: half,
                near,
                far: isSmall ? Math.min(1, near + 0.005) : Math.max(from, to),
              });
              if (bounds === null) return;
              proven++;
              expect(bounds.least).toBeGreaterThanOrEqual(bounds.whole - 1e-9);
              expect(bounds.least).toBeGreaterThanOrEqual(bounds.fan - 1e-9);
              if (bounds.fan > bounds.whole) fans++;
              if (!isSmall || bounds.least < 0) return;
              small++;
              if (
                bounds.least - Math.max(bounds.whole, bounds.fan) <
                0.3 + 0.3 * (bounds.most - bounds.least)
              )
                close++;
            });
          },
        ),
        { seed: SEED, numRuns: 15 },
      );
      expect(proven).toBeGreaterThan(100);
      expect(fans).toBeGreaterThan(0.2 * proven);
      expect(close).toBeGreaterThan(0.8 * small);
      expect(small).toBeGreaterThan(30);
    });
  },
);
