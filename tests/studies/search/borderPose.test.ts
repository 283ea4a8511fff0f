import fc from "fast-check";
import { expect, it } from "vitest";
import { addScaled, cross, dot, length, scale, sub, type Vec3, vecAt } from "../../../src/geometry/vec.ts";
import { BorderPose } from "../../../src/studies/search/borderPose.ts";
import { borderWay, movesEvenly } from "../../../src/studies/search/borderWay.ts";
import { CELL_OF_POSES, CELL_OF_POSES_ROW, Known } from "../../../src/studies/search/cellOfPoses.ts";
import { Cut } from "../../../src/studies/search/nodes.ts";
import { PoseCells } from "../../../src/studies/search/poseCells.ts";
import { POSE } from "../../../src/suspension/poseRow.ts";
import { SIDE } from "../../../src/suspension/sideRow.ts";
import { between, offsets } from "../../reference/gapCases.ts";
import { plausibleTrucks } from "../../suspension/plausibleTrucks.ts";

const RUN = { seed: 1955, numRuns: 120 } as const;

const near = (a: number, b: number) => expect(Math.abs(a - b)).toBeLessThan(1e-9 * (1 + Math.abs(b)));
const samePoint = (a: Vec3, b: Vec3) => expect(length(sub(a, b))).toBeLessThan(1e-8);

/** A cell that may hold the end of the upper arm's reach. */
const cells = fc
  .tuple(plausibleTrucks(), between(-4, -2), between(-1, 1), between(-0.5, 0.5))
  .map(([{ frontEnd }, size, off, steer]) => {
    const side = frontEnd.left;
    const poses = new PoseCells({ side, other: null, innerAt: 0, steering: frontEnd.steering });
    const half = 10 ** size;
    const cell = poses.add(side.reach.bump.armAngle + off * half, half, steer, half);
    return { poses, cell, side: side.row, known: poses.lookAtBorder(cell) };
  })
  .filter(({ known }) => (known & Known.Bounded) !== 0);

it(`a pose amid the border turns about its steering axis alone, and tells how far any other is (seed ${RUN.seed})`, () => {
  let byArm = 0;
  fc.assert(
    fc.property(
      cells,
      between(-0.1, 0.1),
      between(0, 0.1),
      offsets(300),
      ({ poses, cell, side }, middle, half, p) => {
        const { rows } = poses;
        const at = cell * CELL_OF_POSES_ROW;
        const border = new BorderPose();
        border.take(poses, cell);
        const row = (name: "slide" | "turn" | "spin" | "steerTurn" | "borderInnerOff" | "armHalf") =>
          rows[at + CELL_OF_POSES[name]]!;
        expect([border.slide, border.spin, border.innerOff, border.armHalf]).toEqual([
          row("slide"),
          row("spin"),
          row("borderInnerOff"),
          row("armHalf"),
        ]);
        near(border.turn, row("turn"));
        near(border.tilt, row("turn") - row("spin"));
        const joint = vecAt(border.pose, POSE.lowerBallJoint);
        const k = vecAt(border.pose, POSE.knuckleZ);
        const before = border.pose.slice();
        // As it stands in the cell.
        samePoint(joint, vecAt(rows, at + CELL_OF_POSES.borderJoint));
        samePoint(vecAt(before, POSE.tieRodInner), vecAt(rows, at + CELL_OF_POSES.borderInner));
        samePoint(vecAt(before, POSE.wheelCenter), vecAt(rows, at + CELL_OF_POSES.borderWheel));
        samePoint(vecAt(before, POSE.wheelAxis), vecAt(rows, at + CELL_OF_POSES.borderWheel + 3));
        samePoint(vecAt(before, POSE.upperBallJoint), addScaled(joint, k, side[SIDE.span]!));
        const arm = sub(vecAt(before, POSE.tieRodOuter), joint);
        const own = [POSE.knuckleX, POSE.knuckleY, POSE.knuckleZ].map((axis) =>
          dot(arm, vecAt(before, axis)),
        );
        own.forEach((part, i) => {
          near(part, side[SIDE.steeringArm + i]!);
        });
        const turned = (v: Vec3): Vec3 =>
          addScaled(
            addScaled(scale(v, Math.cos(middle)), cross(k, v), Math.sin(middle)),
            k,
            dot(k, v) * (1 - Math.cos(middle)),
          );
        border.put(middle, half);
        near(border.turn, half + border.tilt);
        for (const place of [POSE.upperBallJoint, POSE.tieRodOuter, POSE.wheelCenter])
          samePoint(vecAt(border.pose, place), addScaled(joint, turned(sub(vecAt(before, place), joint)), 1));
        for (const axis of [POSE.knuckleX, POSE.knuckleY, POSE.knuckleZ, POSE.wheelAxis])
          samePoint(vecAt(border.pose, axis), turned(vecAt(before, axis)));
        const lever = border.lever([0, ...p], 1);
        near(lever, length(sub(p, joint)));
        near(border.way(lever), border.slide + (half + border.tilt) * lever);
        near(border.spinWay(lever), half * lever);
        near(borderWay(rows, at, lever), row("slide") + row("turn") * lever);
        for (const extra of [0, half]) {
          const bySteer = row("steerTurn") * lever + extra;
          const rest = row("slide") + row("turn") * lever + extra - bySteer;
          expect(border.cut(lever, extra)).toBe(rest > bySteer ? Cut.Arm : Cut.Steer);
          if (rest > bySteer) byArm++;
        }
      },
    ),
    RUN,
  );
  expect(byArm).toBeGreaterThan(20);
});

it(`the wheel moves evenly over a cell where its speed differs by less than half of what is known without it (seed ${RUN.seed})`, () => {
  const seen = { even: 0, uneven: 0 };
  fc.assert(
    fc.property(
      plausibleTrucks(),
      fc.tuple(between(-5, -1), between(0, 2), between(-0.8, 0.8)),
      between(0, 500),
      ({ frontEnd }, [size, off, steer], lever) => {
        const side = frontEnd.left;
        const poses = new PoseCells({ side, other: null, innerAt: 0, steering: frontEnd.steering });
        const half = 10 ** size;
        const cell = poses.add(side.reach.bump.armAngle - off * half, half, steer, half);
        fc.pre((poses.known[cell]! & Known.Moves) !== 0);
        const found = movesEvenly(poses, cell, lever);
        const known = poses.lookAtBorder(cell);
        if (!(known & Known.Bounded)) {
          expect(found).toBe(!(known & Known.Empty));
          return;
        }
        const { rows } = poses;
        const at = cell * CELL_OF_POSES_ROW;
        const [armHalf, steerHalf, ...motion] = rows.subarray(at + CELL_OF_POSES.motion);
        const [armTurnOff, armSlideOff, , steerTurnOff, steerSlideOff] = motion.slice(12) as [
          number,
          number,
          number,
          number,
          number,
        ];
        const way =
          armHalf! * (armSlideOff + armTurnOff * lever) + steerHalf! * (steerSlideOff + steerTurnOff * lever);
        const told = way <= 0.5 * (rows[at + CELL_OF_POSES.slide]! + rows[at + CELL_OF_POSES.turn]! * lever);
        expect(found).toBe(told);
        seen[told ? "even" : "uneven"]++;
      },
    ),
    { ...RUN, numRuns: 400 },
  );
  expect(Math.min(seen.even, seen.uneven)).toBeGreaterThan(5);
});
