import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { MOTION, MOTION_ROW } from "../../src/geometry/motionRow.ts";
import {
  addScaled,
  cross,
  dot,
  length,
  normalize,
  scale,
  sub,
  type Vec3,
  vecAt,
} from "../../src/geometry/vec.ts";
import { AxisReach, axisCell, axisCellTo } from "../../src/suspension/axisCell.ts";
import { circleOf, type Linkage } from "../../src/suspension/centerLink.ts";
import { LinkReach, linkReachTo } from "../../src/suspension/linkReach.ts";
import { motionBoundTo } from "../../src/suspension/motionBound.ts";
import { Border, borderCell, borderCellTo } from "../../src/suspension/outOfReach.ts";
import { POSE, POSE_ROW, poseRowTo } from "../../src/suspension/poseRow.ts";
import { PoseStatus } from "../../src/suspension/poseStatus.ts";
import { SIDE } from "../../src/suspension/sideRow.ts";
import { MOTION_SLACK, ROUNDING_SHARE } from "../../src/suspension/tolerances.ts";
import { RATE_ROW, wheelRatesTo } from "../../src/suspension/wheelRates.ts";
import { between, offsets } from "../reference/gapCases.ts";
import { plausibleTrucks, SEED } from "./plausibleTrucks.ts";

/** The formulas of `certified-gaps.md`, "Border of reach", in vectors. */

/** Near the border an arc cosine takes half of the digits. */
const near = (a: number, b: number, what: string, digits = 1e-6) =>
  expect(Math.abs(a - b), `${what}: ${a} for ${b}`).toBeLessThan(digits * (1e-3 + Math.abs(b)));
const samePoint = (a: Vec3, b: Vec3, what: string) =>
  expect(length(sub(a, b)), what).toBeLessThan(1e-6 * (1 + length(b)));

const squares = (...lengths: readonly number[]) => lengths.reduce((sum, one) => sum + one * one, 0);

/** v turned about a unit axis (Rodrigues). */
const turnedBy = (v: Vec3, axis: Vec3, angle: number): Vec3 =>
  addScaled(
    addScaled(scale(v, Math.cos(angle)), cross(axis, v), Math.sin(angle)),
    axis,
    dot(axis, v) * (1 - Math.cos(angle)),
  );

interface Circle {
  readonly foot: Vec3;
  readonly radial: Vec3;
  readonly quarter: Vec3;
}

const onCircle = ({ foot, radial, quarter }: Circle, angle: number): Vec3 =>
  addScaled(addScaled(foot, radial, Math.cos(angle)), quarter, Math.sin(angle));

/** Bounds of the angle between two kept sides of a triangle, from its third side and the other kept one. */
function anglesOf(c: number, cOff: number, across: number, acrossOff: number, radius: number) {
  const quotients = (value: number) => [-1, 1].map((way) => value / (radius * (across + way * acrossOff)));
  const most = Math.max(...quotients(c + cOff));
  const least = Math.min(...quotients(c - cOff));
  const acos = (cosine: number) => Math.acos(Math.max(-1, Math.min(1, cosine)));
  return { most, least, low: acos(most), high: acos(least) };
}

/**
 * A joint on a circle that a kept length ties to an end which runs a way along an arc: where it can be. `from` is the
 * other end in the middle and `rate` how it moves per unit, `half` units either way, on a circle of radius `arc`.
 */
function tied(
  circle: Circle,
  root: number,
  tie: number,
  moved: { readonly from: Vec3; readonly rate: Vec3; readonly arc: number; readonly half: number },
) {
  const { from, rate, arc, half } = moved;
  const radius = length(circle.radial);
  const axis = normalize(cross(circle.radial, circle.quarter));
  const d = sub(from, circle.foot);
  const flat = addScaled(d, axis, -dot(d, axis));
  const across = length(flat);
  const way = arc * half * MOTION_SLACK;
  const bend = 0.5 * way * half;
  const acrossOff =
    (Math.abs(dot(flat, rate)) / across) * half * MOTION_SLACK + bend + way ** 2 / (2 * across);
  const c = 0.5 * (dot(d, d) + radius ** 2 - tie ** 2);
  const cOff =
    Math.abs(dot(d, rate)) * half * MOTION_SLACK +
    length(d) * bend +
    0.5 * way ** 2 +
    ROUNDING_SHARE * squares(length(d), radius, tie);
  if (!(acrossOff < 0.5 * across) || !(way < 0.5 * across)) return "unknown";
  const angles = anglesOf(c, cOff, across, acrossOff, radius);
  if (angles.least > 1 || angles.most < -1) return "empty";
  const out = scale(flat, 1 / across);
  const at = (theta: number): Vec3 => addScaled(circle.foot, turnedBy(out, axis, root * theta), radius);
  return { ...angles, at, way, across, radius, middle: c / (radius * across) };
}

/** How far the line of a kept length can be turned from its place in the middle, by its ends' ways; rad. */
function lineTurn(ways: number, stretch: number, tie: number): number | null {
  const chord = ((ways + Math.abs(stretch - tie)) / tie) * MOTION_SLACK;
  return chord < 1 ? 2 * Math.asin(0.5 * chord) : null;
}

const armCells = fc.record({
  end: fc.constantFrom("bump" as const, "droop" as const),
  size: between(-6, -0.5).map((power) => 10 ** power),
  off: between(-3, 3),
});

describe.each(["rack", "pitman"] as const)(`the border of reach, %s (seed ${SEED.seed})`, (kind) => {
  const seen = { triangle: 0, moved: 0, unknown: 0, empty: 0, border: 0, gone: 0, wide: 0 };

  it("bounds the steering axis by upper arm and span, and the knuckle's turn by arm and tie rod", () => {
    fc.assert(
      fc.property(
        plausibleTrucks(kind),
        fc.constantFrom("left" as const, "right" as const),
        armCells,
        fc.tuple(offsets(60), between(0, 2)),
        ({ frontEnd }, which, { end, size, off }, [shift, innerOff]) => {
          const side = frontEnd[which];
          const { row } = side;
          const arm = side.reach[end].armAngle + off * size;
          const cell = axisCell();
          const found = axisCellTo(cell, side, arm, size);
          const pose = new Float64Array(POSE_ROW);
          const motion = new Float64Array(MOTION_ROW);
          const [cos, sin] = [Math.cos(arm), Math.sin(arm)];
          const stands = poseRowTo(pose, 0, row, cos, sin, ...side.innerAtRest) === PoseStatus.Ok;
          const rates = new Float64Array(RATE_ROW);
          if (stands) wheelRatesTo(rates, 0, row, pose, 0, cos, sin, 0, 0, 0);
          const still = { speedMost: 0, velocityOff: 0 };
          const lower = circleAt(row, SIDE.lowerFoot);
          const joint = onCircle(lower, arm);
          if (stands && motionBoundTo(motion, row, pose, rates, cos, sin, size, 0, still, [0, 0, 0])) {
            seen.moved++;
            expect(found).toBe(AxisReach.Bounded);
            near(cell.slide, length(lower.radial) * size * MOTION_SLACK, "slide");
            near(cell.turn, motion[MOTION.armTurnMost]! * size, "turn");
            samePoint(vecAt(cell.axis, 0), vecAt(pose, POSE.knuckleZ), "axis");
          } else {
            const told = tied(circleAt(row, SIDE.upperFoot), row[SIDE.upperRoot]!, row[SIDE.span]!, {
              from: joint,
              rate: sub(onCircle({ ...lower, foot: [0, 0, 0] }, arm + 0.5 * Math.PI), [0, 0, 0]),
              arc: length(lower.radial),
              half: size,
            });
            if (told === "unknown" || told === "empty") {
              seen[told]++;
              expect(found).toBe(told === "empty" ? AxisReach.Empty : AxisReach.Unknown);
              return;
            }
            const theta = Math.abs(told.middle) <= 1 ? Math.acos(told.middle) : 0.5 * (told.low + told.high);
            const thetaOff = Math.max(told.high - theta, theta - told.low);
            const upperOff =
              told.radius * (thetaOff + 0.5 * Math.PI * (told.way / told.across)) * MOTION_SLACK;
            const line = sub(told.at(theta), joint);
            const turn = lineTurn(upperOff + told.way, length(line), row[SIDE.span]!);
            expect(found).toBe(turn === null ? AxisReach.Unknown : AxisReach.Bounded);
            if (turn === null) return;
            seen.triangle++;
            near(cell.slide, told.way, "slide");
            near(cell.turn, turn, "turn");
            samePoint(vecAt(cell.axis, 0), normalize(line), "axis");
          }
          samePoint(vecAt(cell.lowerBallJoint, 0), joint, "joint");
          const inner = addScaled(side.innerAtRest, shift, 1);
          expectKnuckle(row, cell, { inner, innerOff, side, arm, size });
        },
      ),
      SEED,
    );
    const { moved, unknown, ...others } = seen;
    for (const [name, count] of Object.entries(others)) expect(count, name).toBeGreaterThan(4);
    expect(moved + unknown).toBeGreaterThan(20);
  });

  function expectKnuckle(
    row: Float64Array,
    axis: ReturnType<typeof axisCell>,
    asked: {
      readonly inner: Vec3;
      readonly innerOff: number;
      readonly side: Parameters<typeof borderCellTo>[1];
      readonly arm: number;
      readonly size: number;
    },
  ): void {
    const { inner, innerOff, side, arm, size } = asked;
    const out = borderCell();
    const found = borderCellTo(out, side, arm, size, inner, innerOff);
    const k = vecAt(axis.axis, 0);
    const joint = vecAt(axis.lowerBallJoint, 0);
    const [armX, armY, armZ] = vecAt(row, SIDE.steeringArm);
    const rod = row[SIDE.tieRodLength]!;
    const radius = Math.hypot(armX, armY);
    const d = sub(inner, addScaled(joint, k, armZ));
    const flat = addScaled(d, k, -dot(d, k));
    const across = length(flat);
    // The outer end's circle from its nearest to its farthest place.
    const reaches = [across - radius, across + radius].map((x) => Math.hypot(x, dot(d, k)));
    const slack = innerOff + axis.slide + (Math.abs(armZ) + radius) * axis.turn;
    if (reaches[0]! - slack > rod || reaches[1]! + slack < rod) {
      seen.gone++;
      expect(found).toBe(Border.Empty);
      return;
    }
    const lineOff = innerOff + axis.slide + Math.abs(armZ) * axis.turn;
    const acrossOff = lineOff + length(d) * axis.turn;
    if (!(acrossOff < 0.5 * across) || !(axis.turn < 0.5)) {
      seen.wide++;
      expect(found).toBe(Border.Unknown);
      return;
    }
    seen.border++;
    expect(found).toBe(Border.Bounded);
    const c = 0.5 * (radius ** 2 + dot(d, d) - rod ** 2);
    const cOff = lineOff * (length(d) + 0.5 * lineOff) + ROUNDING_SHARE * squares(radius, length(d), rod);
    const { low, high } = anglesOf(c, cOff, across, acrossOff, radius);
    const line = (0.5 * Math.PI * acrossOff) / (across - acrossOff);
    near(out.spin, 0.5 * (high - low), "spin");
    near(out.turn, 0.5 * (high - low) + line + Math.PI * axis.turn, "turn");
    near(out.steerTurn, (0.5 * (high - low) + line) * (innerOff / acrossOff), "steer turn");
    expect(out.slide).toBe(axis.slide);
    // The steering arm, turned off the line to the inner end by the middle of both angles.
    const turn = row[SIDE.tieRodRoot]! * 0.5 * (low + high);
    const outward = turnedBy(scale(flat, 1 / across), k, turn);
    const [x, y, z] = [0, 3, 6].map((at) => vecAt(out.knuckle, at)) as [Vec3, Vec3, Vec3];
    samePoint(z, k, "axis");
    samePoint(cross(z, x), y, "frame");
    near(length(x), 1, "frame");
    samePoint(addScaled(scale(x, armX), y, armY), scale(outward, radius), "steering arm");
    samePoint(vecAt(out.lowerBallJoint, 0), joint, "joint");
    const [wx, wy, wz] = vecAt(row, SIDE.wheelCenter);
    const center = addScaled(addScaled(addScaled(joint, x, wx), y, wy), z, wz);
    samePoint(vecAt(out.wheel, 0), center, "wheel");
    const pin = addScaled(scale(y, row[SIDE.pinCos]!), z, -row[SIDE.pinSin]!);
    samePoint(vecAt(out.wheel, 3), pin, "wheel axis");
  }
});

function circleAt(row: Float64Array, foot: number): Circle {
  return { foot: vecAt(row, foot), radial: vecAt(row, foot + 3), quarter: vecAt(row, foot + 6) };
}

it(`bounds the center link by idler and link likewise, and turns what is on it the least way (seed ${SEED.seed})`, () => {
  const seen = { empty: 0, bounded: 0, unknown: 0 };
  fc.assert(
    fc.property(
      plausibleTrucks("pitman"),
      between(1, 6),
      between(-1, 1),
      between(-4, 0).map((power) => 10 ** power),
      offsets(200),
      ({ input }, wider, steer, half, v) => {
        const { steering } = input;
        if (steering.type !== "pitman") throw new TypeError("asked for those");
        const { pitman, idler } = { pitman: circleOf(steering.pitman), idler: circleOf(steering.idler) };
        const link = sub(steering.idler.end, steering.pitman.end);
        const rest = normalize(link);
        const root = -Math.sign(dot(idler.quarter, sub(steering.pitman.end, idler.foot)));
        const swing = wider * steering.swing;
        const linkage: Linkage = { pitman, idler, swing, root, linkLength: length(link) };
        const reach = 250;
        const out = { end: [0, 0, 0] as Vec3, turned: (one: Vec3) => one, off: 0 };
        const found = linkReachTo(out, linkage, steer, half, rest, reach);
        const end = onCircle(pitman, swing * steer);
        const told = tied(idler, root, length(link), {
          from: end,
          rate: onCircle({ ...pitman, foot: [0, 0, 0] }, swing * steer + 0.5 * Math.PI),
          arc: length(pitman.radial),
          half: Math.abs(swing) * half,
        });
        if (told === "empty") {
          seen.empty++;
          expect(found).toBe(LinkReach.Empty);
          return;
        }
        if (told === "unknown") {
          seen.unknown++;
          expect(found).toBe(LinkReach.Unknown);
          return;
        }
        const idlerOff =
          told.radius *
          (0.5 * (told.high - told.low) + 0.5 * Math.PI * (told.way / told.across)) *
          MOTION_SLACK;
        const line = sub(told.at(0.5 * (told.low + told.high)), end);
        const lineOff = lineTurn(idlerOff + told.way, length(line), length(link));
        const to = normalize(line);
        const between = Math.atan2(length(cross(rest, to)), dot(rest, to));
        if (lineOff === null || !(between + lineOff < 2.5)) {
          seen.unknown++;
          expect(found).toBe(LinkReach.Unknown);
          return;
        }
        seen.bounded++;
        expect(found).toBe(LinkReach.Bounded);
        samePoint(out.end, end, "end");
        const off = (told.way + reach * (lineOff / Math.cos(0.5 * (between + lineOff)))) * MOTION_SLACK;
        near(out.off, off, "off");
        samePoint(out.turned(v), turnedBy(v, normalize(cross(rest, to)), between), "turned");
      },
    ),
    { ...SEED, numRuns: 600 },
  );
  expect(seen.bounded).toBeGreaterThan(150);
  expect(Math.min(seen.empty, seen.unknown)).toBeGreaterThan(15);
});
