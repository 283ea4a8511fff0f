import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { addScaled, dot, length, scale, sub, type Vec3, vecAt } from "../../src/geometry/vec.ts";
import type { BodyPart } from "../../src/setup/types/truckTypes.ts";
import { checkClearance } from "../../src/studies/reports/check.ts";
import { AxisReach, axisCell, axisCellTo } from "../../src/suspension/axisCell.ts";
import type { SideModel } from "../../src/suspension/frontEnd.ts";
import { Border, type BorderCell, borderCell, borderCellTo } from "../../src/suspension/outOfReach.ts";
import { POSE, POSE_ROW, poseRowTo } from "../../src/suspension/poseRow.ts";
import { PoseStatus } from "../../src/suspension/poseStatus.ts";
import { solvePose } from "../../src/suspension/solvePose.ts";
import { demoSetup, demoWith } from "../reference/demoModel.ts";
import { expectAtPose, expectHonest, expectProven, expectTight } from "../reference/expectCertified.ts";
import { between } from "../reference/gapCases.ts";
import { aboutAxis } from "../reference/referenceRing.ts";
import { runs } from "../runs.ts";
import { plausibleTrucks } from "../suspension/plausibleTrucks.ts";

const SEED = 1955;

/** A pose row at an arm angle and inner end, or what stopped it. */
function poseAt(side: SideModel, arm: number, inner: Vec3): { row: Float64Array; status: PoseStatus } {
  const row = new Float64Array(POSE_ROW);
  return { row, status: poseRowTo(row, 0, side.row, Math.cos(arm), Math.sin(arm), ...inner) };
}

/** How far a pose's knuckle is turned from the cell's, once that is turned about its own axis by at most `spin`; rad. */
function turnedApart(row: Float64Array, { knuckle, spin }: BorderCell): number {
  const [x, y, z] = [0, 3, 6].map((at) => vecAt(knuckle, at)) as [Vec3, Vec3, Vec3];
  const [px, py, pz] = [POSE.knuckleX, POSE.knuckleY, POSE.knuckleZ].map((at) => vecAt(row, at)) as [
    Vec3,
    Vec3,
    Vec3,
  ];
  const best = Math.atan2(dot(px, y) - dot(py, x), dot(px, x) + dot(py, y));
  const [cos, sin] = [Math.cos, Math.sin].map((of) => of(Math.max(-spin, Math.min(spin, best)))) as [
    number,
    number,
  ];
  const off = [
    sub(px, addScaled(scale(x, cos), y, sin)),
    sub(py, addScaled(scale(y, cos), x, -sin)),
    sub(pz, z),
  ];
  return 2 * Math.asin(Math.sqrt(off.reduce((sum, one) => sum + dot(one, one), 0) / 8));
}

/** Lower arm angle past which the upper ball joint cannot follow, from straight ahead up or down; null = none found. */
function upperBorder(side: SideModel, way: 1 | -1): number | null {
  const fails = (arm: number) => poseAt(side, arm, side.innerAtRest).status === PoseStatus.UpperArmOutOfReach;
  let good = 0;
  for (let arm = 0; Math.abs(arm) < 1.5; arm += way * 0.01) {
    if (!fails(arm)) {
      good = arm;
      continue;
    }
    let bad = arm;
    for (let i = 0; i < 60; i++) {
      const middle = 0.5 * (good + bad);
      if (fails(middle)) bad = middle;
      else good = middle;
    }
    return good;
  }
  return null;
}

/** Cells looked at, and what share they are of all. */
const CELLS = runs(200, 600);
const LOOKED = CELLS / 600;

/** A cell of arm angles about a border, from far wider than a search leaves it to far narrower. */
const cellsAbout = fc.record({
  way: fc.constantFrom(1 as const, -1 as const),
  size: between(-7, -1).map((power) => 10 ** power),
  off: between(-1.2, 1.2),
  steer: between(-1, 1),
  steerSize: between(-7, -2).map((power) => 10 ** power),
});

const apart = (a: Vec3, b: Vec3) => length(sub(a, b));
/** Between unit vectors, from their chord: exact for small angles too. */
const angle = (a: Vec3, b: Vec3) => 2 * Math.asin(Math.min(1, 0.5 * apart(a, b)));

describe.each(["rack", "pitman"] as const)(`generated trucks with %s steering (seed ${SEED})`, (kind) => {
  it("the steering axis stays within what is said of it, at the very end of the upper arm's reach", () => {
    let bounded = 0;
    let empty = 0;
    fc.assert(
      fc.property(plausibleTrucks(kind), cellsAbout, ({ frontEnd: { left } }, { way, size, off }) => {
        const border = upperBorder(left, way);
        if (border === null) return;
        const middle = border + off * size;
        const said = axisCell();
        const reach = axisCellTo(said, left, middle, size);
        if (reach === AxisReach.Unknown) return;
        if (reach === AxisReach.Empty) empty++;
        for (let i = -10; i <= 10; i++) {
          const { row, status } = poseAt(left, middle + (i / 10) * size, left.innerAtRest);
          if (status === PoseStatus.UpperArmOutOfReach) continue;
          expect(reach).toBe(AxisReach.Bounded);
          if (status !== PoseStatus.Ok) continue;
          const joint = vecAt(row, POSE.lowerBallJoint);
          bounded++;
          expect(apart(joint, vecAt(said.lowerBallJoint, 0))).toBeLessThan(said.slide + 1e-9);
          expect(angle(vecAt(row, POSE.knuckleZ), vecAt(said.axis, 0))).toBeLessThan(said.turn + 1e-9);
        }
      }),
      { seed: SEED, numRuns: CELLS, endOnFailure: true },
    );
    expect(bounded).toBeGreaterThan(500 * LOOKED);
    expect(empty).toBeGreaterThan(10 * LOOKED);
  });

  it("and shrinks there like a square root: a hundredth of the cell, a tenth of the turn", () => {
    let compared = 0;
    for (const { frontEnd } of fc.sample(plausibleTrucks(kind), { seed: SEED, numRuns: 120 })) {
      const border = upperBorder(frontEnd.left, -1) ?? upperBorder(frontEnd.left, 1);
      if (border === null) continue;
      const said = axisCell();
      const turns = [1e-5, 1e-7].map((size) => {
        expect(axisCellTo(said, frontEnd.left, border, size)).toBe(AxisReach.Bounded);
        return said.turn;
      });
      compared++;
      expect(turns[0]! / turns[1]!).toBeGreaterThan(8);
      expect(turns[0]! / turns[1]!).toBeLessThan(12);
    }
    expect(compared).toBeGreaterThan(20);
  });

  it("the wheel stays within what is said of it, about both borders of reach", () => {
    let bounded = 0;
    fc.assert(
      fc.property(plausibleTrucks(kind), cellsAbout, fc.boolean(), (truck, cell, atUpper) => {
        const { left, steering } = truck.frontEnd;
        const { way, size, off, steer, steerSize } = cell;
        const arm = (atUpper ? upperBorder(left, way) : null) ?? way * 0.2 + off * 0.1;
        const middle = arm + off * size;
        const ends = new Float64Array(12);
        const spread = { speedMost: 0, velocityOff: 0 };
        if (steering.innerEndsTo(ends, steer) !== PoseStatus.Ok) return;
        if (!steering.innerEndSpreadTo(spread, steer, steerSize)) return;
        const said = borderCell();
        const innerOff = spread.speedMost * steerSize;
        const state = borderCellTo(said, left, middle, size, [ends[0]!, ends[1]!, ends[2]!], innerOff);
        if (state === Border.Unknown) return;
        for (let i = -4; i <= 4; i++) {
          for (let j = -4; j <= 4; j++) {
            if (steering.innerEndsTo(ends, steer + (j / 4) * steerSize) !== PoseStatus.Ok) continue;
            const { row, status } = poseAt(left, middle + (i / 4) * size, vecAt(ends, 0));
            if (status !== PoseStatus.Ok) continue;
            expect(state).toBe(Border.Bounded);
            bounded++;
            const [joint, center] = [vecAt(said.lowerBallJoint, 0), vecAt(said.wheel, 0)];
            expect(apart(vecAt(row, POSE.lowerBallJoint), joint)).toBeLessThan(said.slide + 1e-9);
            expect(angle(vecAt(row, POSE.wheelAxis), vecAt(said.wheel, 3))).toBeLessThan(said.turn + 1e-9);
            expect(apart(vecAt(row, POSE.wheelCenter), center)).toBeLessThan(
              said.slide + said.turn * apart(center, joint) + 1e-9,
            );
            expect(said.steerTurn).toBeLessThanOrEqual(said.turn);
            expect(turnedApart(row, said)).toBeLessThan(said.turn - said.spin + 1e-9);
          }
        }
      }),
      { seed: SEED, numRuns: CELLS, endOnFailure: true },
    );
    expect(bounded).toBeGreaterThan(5000 * LOOKED);
  });
});

describe("a truck whose upper arm ends its travel", () => {
  const setup = demoSetup();
  const { upperArm } = setup.truck;
  /** The upper pivots brought so near its ball joint that the arm is too short for the lower one's bump. */
  const short = (p: Vec3): Vec3 => [p[0], upperArm.ballJoint[1] + 0.4 * (p[1] - upperArm.ballJoint[1]), p[2]];
  const truck = {
    ...setup.truck,
    upperArm: { ...upperArm, frontPivot: short(upperArm.frontPivot), rearPivot: short(upperArm.rearPivot) },
  };
  const travel = { droop: -60, bump: 300 };
  const bare = demoWith([], { truck, travel });
  const end = bare.frontEnd.left.reach.bump;

  it("has that end within the travel asked for", () => {
    expect(end.status).toBe(PoseStatus.UpperArmOutOfReach);
    expect(end.travel).toBeLessThan(travel.bump);
  });

  it("has its worst gap there, proven to the tolerance", () => {
    const pose = solvePose(bare.frontEnd, end.travel - 1e-6, 0);
    if (!pose.ok) throw new TypeError("just short of the end of reach");
    const { wheelCenter: center, wheelAxis: axis } = pose.left;
    // Beside and over the wheel as it leans there, where only the end of bump comes near.
    const studs = (
      [
        [-170, 2.8],
        [-130, 2.8],
        [-130, 3.5],
        [0, 2.8],
      ] as const
    ).map(([x, turn]): BodyPart => {
      const place = aboutAxis({ center, axis }, x, 385, turn);
      return { name: `stud ${x} ${turn}`, side: "left", kind: "path", radius: 4, points: [place] };
    });
    const model = demoWith(studs, { truck, travel });
    const report = checkClearance(model)!;
    expectTight(report);
    expectHonest(model, report);
    expectAtPose(model, report);
    expectProven(model, report, { travels: 41, steers: 21 });
    const found = report.parts.filter(({ part }) => part.startsWith("stud"));
    expect(found).toHaveLength(studs.length);
    for (const entry of found) expect(end.travel - entry.travel).toBeLessThan(0.1);
  });
});
