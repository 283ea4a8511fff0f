import { describe, expect, it } from "vitest";
import { Keeps, type KeptPoses } from "../../../src/studies/limits/keptPoses.ts";
import { Budget } from "../../../src/studies/numeric/budget.ts";
import { CELL_OF_POSES, CELL_OF_POSES_ROW, Known } from "../../../src/studies/search/cellOfPoses.ts";
import { Frontier } from "../../../src/studies/search/frontier.ts";
import { OtherWheel } from "../../../src/studies/search/otherWheel.ts";
import { PoseCells, type WheelToMove } from "../../../src/studies/search/poseCells.ts";
import { TriedPose } from "../../../src/studies/search/triedPose.ts";
import { armAngleFor } from "../../../src/suspension/armAngle.ts";
import type { SideModel } from "../../../src/suspension/frontEnd.ts";
import { POSE_ROW, poseRowTo } from "../../../src/suspension/poseRow.ts";
import { PoseStatus } from "../../../src/suspension/poseStatus.ts";
import { solveApart, solvePose } from "../../../src/suspension/solvePose.ts";
import { assembledModel, demoSetup, exampleSetup } from "../../reference/demoModel.ts";

const { frontEnd } = assembledModel(demoSetup());
const WHEEL: WheelToMove = {
  side: frontEnd.left,
  other: null,
  innerAt: 0,
  steering: frontEnd.steering,
};
const RANGE = { armLow: -0.12, armHigh: 0.2, steerLow: -0.5, steerHigh: 0.75 };

/** An arm angle amid those at which no pose closes, steering straight ahead. */
function goneArm({ row, innerAtRest }: SideModel): number {
  const pose = new Float64Array(POSE_ROW);
  const stands = (arm: number) =>
    poseRowTo(pose, 0, row, Math.cos(arm), Math.sin(arm), ...innerAtRest) === PoseStatus.Ok;
  for (let arm = 0; arm < 3; arm += 0.02) {
    const gone = [arm, -arm].find((one) => [-0.05, 0, 0.05].every((off) => !stands(one + off)));
    if (gone !== undefined) return gone;
  }
  throw new TypeError("it turns all round");
}
const GONE = goneArm(frontEnd.left);

/** Middle and half range of arm and steer. */
const rangeOf = (cells: PoseCells, cell: number) => [
  ...cells.rows.subarray(cell * CELL_OF_POSES_ROW, cell * CELL_OF_POSES_ROW + 4),
];

describe("cells of poses", () => {
  it("begin with the whole range, and are halved across arm or steer, once each", () => {
    const cells = PoseCells.over(WHEEL, RANGE);
    const near = (found: readonly number[], told: readonly number[]) =>
      found.forEach((v, i) => {
        expect(v).toBeCloseTo(told[i]!, 12);
      });
    near(rangeOf(cells, 0), [0.04, 0.16, 0.125, 0.625]);
    const arms = cells.half(0, "arm");
    near(rangeOf(cells, arms), [-0.04, 0.08, 0.125, 0.625]);
    near(rangeOf(cells, arms + 1), [0.12, 0.08, 0.125, 0.625]);
    const steers = cells.half(0, "steer");
    near(rangeOf(cells, steers), [0.04, 0.16, -0.1875, 0.3125]);
    near(rangeOf(cells, steers + 1), [0.04, 0.16, 0.4375, 0.3125]);
    expect([cells.half(0, "arm"), cells.half(0, "steer"), cells.count]).toEqual([arms, steers, 5]);
  });

  it("know what they would alone, however many there are", () => {
    const cells = PoseCells.over(WHEEL, RANGE);
    let cell = 0;
    for (let i = 0; i < 400; i++)
      cell = cells.half(cell, i % 2 === 0 ? "arm" : "steer") + (i % 3 === 0 ? 1 : 0);
    expect(cells.count).toBe(801);
    for (const one of [0, 7, 300, 800]) {
      const alone = new PoseCells(WHEEL);
      const at = alone.add(...(rangeOf(cells, one) as [number, number, number, number]));
      expect(alone.known[at]).toBe(cells.known[one]);
      expect([...alone.rows.subarray(0, CELL_OF_POSES_ROW)]).toEqual([
        ...cells.rows.subarray(one * CELL_OF_POSES_ROW, (one + 1) * CELL_OF_POSES_ROW),
      ]);
    }
    // The same search comes back to the same cells.
    const kept = { ...WHEEL, cells };
    expect(PoseCells.over(kept, RANGE).count).toBe(801);
  });

  it("have the pose of their middle where the wheel stands there, and say so", () => {
    const cells = PoseCells.over(WHEEL, RANGE);
    const angle = armAngleFor(frontEnd.left, 25);
    const cell = cells.add(angle, 0.001, 0.3, 0.001);
    const all = Known.Steers | Known.Stands | Known.OtherStands | Known.Moves | Known.Limits | Known.Kept;
    expect(cells.known[cell]).toBe(all);
    const pose = solvePose(frontEnd, 25, 0.3);
    if (!pose.ok) throw new TypeError("it stands");
    const at = cell * CELL_OF_POSES_ROW + CELL_OF_POSES.pose;
    pose.left.row.forEach((v, i) => {
      expect(cells.rows[at + i]).toBeCloseTo(v, 9);
    });
    expect([cells.stands(cell), cells.isPose(cell), cells.isOtherEmpty(cell)]).toEqual([true, true, false]);
    // Far past the reach nothing stands, and none of it can.
    const beyond = cells.add(GONE, 0.001, 0, 0.001);
    expect([cells.stands(beyond), cells.isPose(beyond)]).toEqual([false, false]);
    expect(cells.known[beyond]! & (Known.Stands | Known.Moves)).toBe(0);
    expect(cells.lookAtBorder(beyond) & (Known.AtBorder | Known.Empty | Known.Bounded)).toBe(
      Known.AtBorder | Known.Empty,
    );
  });

  it("look at the limits once, and what holds all over one holds in its halves", () => {
    const answers = { all: Keeps.All, none: Keeps.None, open: Keeps.Unknown };
    for (const [name, answer] of Object.entries(answers)) {
      const looked: number[][] = [];
      const limits = {
        look: (...range: number[]) => {
          looked.push(range);
          return answer;
        },
        keepsAt: (arm: number, steer: number) => arm > 0 && steer > 0,
      } as unknown as KeptPoses;
      const cells = PoseCells.over({ ...WHEEL, limits }, RANGE);
      expect(cells.known[0]! & (Known.Limits | Known.Kept | Known.Passed)).toBe(0);
      const told = { all: Known.Kept, none: Known.Passed, open: 0 }[name]!;
      for (let i = 0; i < 2; i++)
        expect(cells.lookAtLimits(0) & (Known.Limits | Known.Kept | Known.Passed)).toBe(Known.Limits | told);
      expect(looked).toEqual([rangeOf(cells, 0)]);
      const half = cells.half(0, "arm");
      for (const one of [half, half + 1])
        expect(cells.known[one]! & (Known.Limits | Known.Kept | Known.Passed)).toBe(
          name === "all" ? Known.Limits | Known.Kept : 0,
        );
      // Of a border the middle itself is asked.
      const isPose = [
        [0.01, 0.1],
        [-0.01, 0.1],
        [0.01, -0.1],
      ].map(([arm, steer]) => cells.isPose(cells.add(arm!, 0.001, steer!, 0.001)));
      expect(isPose).toEqual([true, false, false]);
    }
  });

  it("ask the other wheel once whether it can take any of it", () => {
    let asked = 0;
    const other = {
      stands: () => false,
      cannotStand: (arm: number) => {
        asked++;
        return arm > 0;
      },
    } as unknown as OtherWheel;
    const cells = PoseCells.over({ ...WHEEL, other }, RANGE);
    expect(cells.known[0]! & Known.OtherStands).toBe(0);
    expect([cells.isOtherEmpty(0), cells.isOtherEmpty(0), asked]).toEqual([true, true, 1]);
    const low = cells.add(-0.05, 0.01, 0, 0.01);
    expect([cells.isOtherEmpty(low), cells.isPose(low), asked]).toEqual([false, false, 2]);
  });
});

describe("poses tried outside any cell", () => {
  it("stand as solved, on their own side", () => {
    for (const [which, innerAt] of [
      ["left", 0],
      ["right", 3],
    ] as const) {
      const tried = new TriedPose({ ...WHEEL, side: frontEnd[which], innerAt }, RANGE);
      const angle = armAngleFor(frontEnd[which], -30);
      expect(tried.stands(angle, 0.4)).toBe(true);
      const pose = solvePose(frontEnd, -30, 0.4);
      if (!pose.ok) throw new TypeError("it stands");
      pose[which].row.forEach((v, i) => {
        expect(tried.row[i]).toBeCloseTo(v, 9);
      });
      expect(tried.stands(goneArm(frontEnd[which]), 0)).toBe(false);
      expect(tried.keeps(angle, 0.4)).toBe(true);
    }
    const limits = { keepsAt: (arm: number) => arm > 0 } as unknown as KeptPoses;
    const limited = new TriedPose({ ...WHEEL, limits }, RANGE);
    expect([limited.keeps(0.1, 0), limited.keeps(-0.1, 0)]).toEqual([true, false]);
    const other = { stands: () => false } as unknown as OtherWheel;
    expect(new TriedPose({ ...WHEEL, other }, RANGE).stands(0, 0)).toBe(false);
  });

  it("are a grid over the range, its ends included, then ever closer ones about the worst", () => {
    const tried = new TriedPose(WHEEL, RANGE);
    const search = new Frontier(-100);
    // A gap that falls toward one pose, with a slope in it that a grid does not hit.
    const gap = (arm: number, steer: number) =>
      30 + 400 * Math.abs(arm - 0.093) + 50 * Math.abs(steer - 0.31);
    const seen: [number, number, number][] = [];
    const take = (arm: number, steer: number, coarse: number) => {
      seen.push([arm, steer, coarse]);
      search.offer(gap(arm, steer), arm, steer);
    };
    tried.lookOver(search, take, Budget.endless(), 1);
    const grid = seen.slice(0, 9 * 13);
    const sorted = (values: Iterable<number>) => [...new Set([...values].map((v) => v.toFixed(9)))].length;
    expect([sorted(grid.map(([arm]) => arm)), sorted(grid.map(([, steer]) => steer))]).toEqual([9, 13]);
    for (const [at, ends] of [
      [0, [RANGE.armLow, RANGE.armHigh]],
      [1, [RANGE.steerLow, RANGE.steerHigh]],
    ] as const) {
      expect(Math.min(...grid.map((one) => one[at]))).toBeCloseTo(ends[0], 12);
      expect(Math.max(...grid.map((one) => one[at]))).toBeCloseTo(ends[1], 12);
    }
    expect(grid.every(([, , coarse]) => coarse === 1)).toBe(true);
    // Each is near the last one.
    const apart = grid
      .slice(1)
      .map(([arm, steer], i) => Math.abs(arm - grid[i]![0]) / 0.32 + Math.abs(steer - grid[i]![1]) / 1.25);
    expect(Math.max(...apart)).toBeLessThan(0.13);
    for (const [arm, steer] of seen) {
      expect(arm).toBeGreaterThanOrEqual(RANGE.armLow - 1e-12);
      expect(arm).toBeLessThanOrEqual(RANGE.armHigh + 1e-12);
      expect(steer).toBeGreaterThanOrEqual(RANGE.steerLow - 1e-12);
      expect(steer).toBeLessThanOrEqual(RANGE.steerHigh + 1e-12);
    }
    expect(seen.length).toBe(9 * 13 + 4 * 24);
    expect(search.best).toBeLessThan(30.01);
    const last = seen.at(-1)!;
    expect(last[2]).toBe(0.001);
    expect(Math.hypot(last[0] - 0.093, last[1] - 0.31)).toBeLessThan(0.001);
    const ends: [number, number][] = [];
    tried.lookAtEnds((arm, steer) => ends.push([arm, steer]), Budget.endless(), 1);
    expect(ends.length).toBe(66);
    expect(ends.slice(0, 33).every(([arm]) => arm === RANGE.armLow)).toBe(true);
    expect(ends.slice(33).every(([arm]) => arm === RANGE.armHigh)).toBe(true);
    expect([ends[0]![1], ends[1]![1], ends[32]![1], ends[33]![1]]).toEqual([
      -0.5,
      -0.5 + 1.25 / 32,
      0.75,
      -0.5,
    ]);
  });

  it("are not tried once the budget is spent", () => {
    let now = 0;
    const budget = Budget.of(0.001, () => (now += 1));
    const tried = new TriedPose(WHEEL, RANGE);
    let looks = 0;
    tried.lookOver(new Frontier(-100), () => looks++, budget, 1000);
    tried.lookAtEnds(() => looks++, budget, 1000);
    expect(looks).toBeLessThan(3);
  });
});

describe("the wheel opposite", () => {
  const { frontEnd: uneven } = assembledModel(exampleSetup("long-bed-steering-box.json"));

  it("stands where it stands at the travel of this one, mirrored or not", () => {
    const ends = new Float64Array(12);
    for (const [front, isMirrored] of [
      [frontEnd, true],
      [uneven, false],
    ] as const) {
      for (const side of ["left", "right"] as const) {
        const other = new OtherWheel(front, side, isMirrored);
        const opposite = side === "left" ? "right" : "left";
        for (const travel of [-40, 0, 35]) {
          for (const steer of [-0.9, 0.2, 1]) {
            front.steering.innerEndsTo(ends, steer);
            const arm = armAngleFor(front[side], travel);
            const pose = solveApart(front, { left: travel, right: travel }, steer);
            expect(other.stands(arm, ends)).toBe(pose.ok || pose.side !== opposite);
            if (pose.ok) expect(other.cannotStand(arm, 0.01, steer, 0.01)).toBe(false);
          }
        }
        front.steering.innerEndsTo(ends, 0);
        expect(other.stands(goneArm(front[side]), ends)).toBe(false);
        expect(other.standsAllOver(-20, 20)).toBe(true);
        expect(other.standsAllOver(-20, front[opposite].reach.bump.travel + 1)).toBe(false);
      }
    }
  });

  it("of mirrored sides cannot stand past the reach both share", () => {
    const other = new OtherWheel(frontEnd, "left", true);
    expect(other.cannotStand(GONE, 0.005, 0, 0.01)).toBe(true);
    expect(other.cannotStand(0, 0.005, 0, 0.01)).toBe(false);
  });
});
