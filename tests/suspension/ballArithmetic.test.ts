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
import { circleOf, type Linkage, linkAt } from "../../src/suspension/centerLink.ts";
import { linkSpreadTo } from "../../src/suspension/linkSpread.ts";
import { type InnerEndSpread, motionBoundTo } from "../../src/suspension/motionBound.ts";
import { POSE, POSE_ROW, poseRowTo } from "../../src/suspension/poseRow.ts";
import { PoseStatus } from "../../src/suspension/poseStatus.ts";
import { SIDE } from "../../src/suspension/sideRow.ts";
import { INNER_ENDS_ROW } from "../../src/suspension/steering.ts";
import { RATE_ROW, wheelRatesTo } from "../../src/suspension/wheelRates.ts";
import { between } from "../reference/gapCases.ts";
import { plausibleTrucks, SEED } from "./plausibleTrucks.ts";

/** A number or a vector known to within `off`; nowhere larger than `most`, `least` where it divides. */
interface Ball {
  readonly size: number;
  readonly off: number;
  readonly most: number;
}

const ball = (size: number, off: number, most = size + off): Ball => ({ size, off, most });
/** A sum or difference of two whose middle is `size` long. */
const sum = (size: number, ...parts: readonly Ball[]): Ball =>
  ball(
    size,
    parts.reduce((off, part) => off + part.off, 0),
  );
/** A product of any kind whose middle is `size` long: |a·b − a₀·b₀| ≤ |a|·r_b + |b₀|·r_a. */
const product = (size: number, a: Ball, b: Ball): Ball => ball(size, a.most * b.off + b.size * a.off);
const quotient = (a: Ball, by: Ball): Ball | null => {
  const least = by.size - by.off;
  const size = a.size / by.size;
  return least > 0 ? ball(size, (a.off + size * by.off) / least) : null;
};

const kept = (size: number, off: number): Ball => ball(size, off, size);

/** A ball guessed a quarter larger than the way at the middle's speed, widened until the way proven inside stays in it. */
function guessed<T extends { readonly path: number }>(
  first: number,
  inside: (off: number) => T | null,
): T | null {
  let off = 1.25 * first;
  for (let tries = 0; tries < 8; tries++) {
    const found = inside(off);
    if (found === null || found.path <= off) return found;
    off = 1.25 * found.path;
  }
  return null;
}

const near = (a: number, b: number, what: string) =>
  expect(Math.abs(a - b), `${what}: ${a} for ${b}`).toBeLessThan(1e-7 * (1e-9 + Math.abs(b)));

const halves = fc.oneof(between(0, 0.15), fc.constant(0), between(0, 0.004));

describe.each(["rack", "pitman"] as const)(`motion over a cell of poses, %s (seed ${SEED.seed})`, (kind) => {
  it("is off by what ball arithmetic over the linkage's kept lengths makes of it, and no more", () => {
    let proven = 0;
    let refused = 0;
    fc.assert(
      fc.property(
        plausibleTrucks(kind),
        fc.constantFrom("left" as const, "right" as const),
        fc.tuple(between(-0.35, 0.35), between(-0.9, 0.9), halves, halves),
        ({ frontEnd }, which, [arm, steer, armHalf, steerHalf]) => {
          const { row } = frontEnd[which];
          const ends = new Float64Array(INNER_ENDS_ROW);
          const spread: InnerEndSpread = { speedMost: 0, velocityOff: 0 };
          const pose = new Float64Array(POSE_ROW);
          if (frontEnd.steering.innerEndsTo(ends, steer) !== PoseStatus.Ok) return;
          if (!frontEnd.steering.innerEndSpreadTo(spread, steer, steerHalf)) return;
          const at = which === "left" ? 0 : 3;
          const [cos, sin] = [Math.cos(arm), Math.sin(arm)];
          if (poseRowTo(pose, 0, row, cos, sin, ...vecAt(ends, at)) !== PoseStatus.Ok) return;
          const velocity = vecAt(ends, at + 6);
          const rates = new Float64Array(RATE_ROW);
          wheelRatesTo(rates, 0, row, pose, 0, cos, sin, ...velocity);
          const out = new Float64Array(MOTION_ROW);
          const found = motionBoundTo(out, row, pose, rates, cos, sin, armHalf, steerHalf, spread, velocity);
          const told = motionOff(row, pose, { arm, armHalf, steerHalf, spread, velocity });
          expect(found).toBe(told !== null);
          if (told === null) {
            refused++;
            return;
          }
          proven++;
          expect([out[MOTION.armHalf], out[MOTION.steerHalf]]).toEqual([armHalf, steerHalf]);
          expect([...out.subarray(MOTION.armTurn, MOTION.armTurnOff)]).toEqual([...rates]);
          near(out[MOTION.armTurnOff]!, told.arm.off, "arm turn");
          near(out[MOTION.steerTurnOff]!, told.steer.off, "steer turn");
          near(out[MOTION.armTurnMost]!, told.arm.most, "arm turn at most");
          near(out[MOTION.steerTurnMost]!, told.steer.most, "steer turn at most");
          near(out[MOTION.armSlideOff]!, told.armSlide.off, "arm slide");
          near(out[MOTION.steerSlideOff]!, told.steerSlide.off, "steer slide");
          // Rounding is allowed for.
          for (const i of [MOTION.armTurnOff, MOTION.armSlideOff, MOTION.steerTurnOff, MOTION.steerSlideOff])
            expect(out[i]).toBeGreaterThanOrEqual(0);
          expect(out[MOTION.armTurnMost]).toBeGreaterThan(length(vecAt(rates, 0)));
          expect(out[MOTION.steerTurnMost]).toBeGreaterThan(length(vecAt(rates, 6)));
        },
      ),
      SEED,
    );
    expect(proven).toBeGreaterThan(0.3 * SEED.numRuns);
    expect(refused).toBeGreaterThan(5);
  });
});

interface Cell {
  readonly arm: number;
  readonly armHalf: number;
  readonly steerHalf: number;
  readonly spread: InnerEndSpread;
  readonly velocity: Vec3;
}

/** The wheel's turn and slide by either input, and how far they can be from the middle's; null = nothing is proven. */
function motionOff(
  side: Float64Array,
  pose: Float64Array,
  { arm, armHalf, steerHalf, spread, velocity }: Cell,
) {
  const joint = vecAt(pose, POSE.lowerBallJoint);
  const along = vecAt(pose, POSE.knuckleZ);
  const span = side[SIDE.span]!;
  // Lower ball joint: a known circle.
  const vl = addScaled(
    scale(vecAt(side, SIDE.lowerRadial), -Math.sin(arm)),
    vecAt(side, SIDE.lowerQuarter),
    Math.cos(arm),
  );
  const lower = kept(length(vl), length(vl) * armHalf);
  // Upper ball joint: per radian of its own arm it goes along its circle's tangent.
  const upperAxis = normalize(cross(vecAt(side, SIDE.upperRadial), vecAt(side, SIDE.upperQuarter)));
  const tangent = cross(upperAxis, sub(vecAt(pose, POSE.upperBallJoint), vecAt(side, SIDE.upperFoot)));
  const radius = length(tangent);
  const lift = dot(along, vl);
  const grip = dot(along, tangent);
  const rate0 = lift / grip;
  const upper = guessed(radius * Math.abs(rate0) * armHalf, (off) => {
    const axis = kept(1, (off + lower.off) / span);
    const t = kept(radius, off);
    const rate = quotient(product(Math.abs(lift), axis, lower), product(Math.abs(grip), axis, t));
    return rate && { axis, t, rate, path: radius * rate.most * armHalf };
  });
  if (upper === null) return null;
  const { axis, t, rate } = upper;
  const vu = product(Math.abs(rate0) * radius, t, rate);
  const apart0 = sub(scale(tangent, rate0), vl);
  const apart = sum(length(apart0), vu, lower);
  const across0 = scale(cross(along, apart0), 1 / span);
  const turn = product(length(cross(along, apart0)), axis, apart);
  const across = ball(turn.size / span, turn.off / span);

  // Outer tie rod end: the knuckle's turn about its axis keeps the rod's length.
  const o = sub(vecAt(pose, POSE.tieRodOuter), joint);
  const rod0 = sub(vecAt(pose, POSE.tieRodOuter), vecAt(pose, POSE.tieRodInner));
  const swing0 = cross(along, o);
  const lever0 = dot(rod0, swing0);
  const vo0 = addScaled(vl, cross(across0, o), 1);
  const pulls = { arm: Math.abs(dot(rod0, vo0)), steer: Math.abs(dot(rod0, velocity)) };
  const spins = { arm: pulls.arm / Math.abs(lever0), steer: pulls.steer / Math.abs(lever0) };
  const first =
    armHalf * (length(vo0) + spins.arm * length(swing0)) + steerHalf * spins.steer * length(swing0);
  const outer = guessed(first, (off) => {
    const own = kept(length(o), off + lower.off);
    const rod = kept(length(rod0), off + spread.speedMost * steerHalf);
    const swing = product(length(swing0), own, axis);
    // |k × o − k₀ × o₀| ≤ |o|·r_k + |k₀|·r_o.
    const lever = product(Math.abs(lever0), rod, swing);
    const vo = sum(length(vo0), lower, product(length(cross(across0, o)), own, across));
    const armPull = product(pulls.arm, rod, vo);
    const steerPull = product(pulls.steer, rod, ball(length(velocity), spread.velocityOff));
    const arm = quotient(armPull, lever);
    const steer = quotient(steerPull, lever);
    if (arm === null || steer === null) return null;
    const swingMost = Math.min(length(o), length(swing0) + swing.off);
    const path =
      armHalf * (length(vl) + across.most * length(o) + arm.most * swingMost) +
      steerHalf * steer.most * swingMost;
    return { arm, steer, path };
  });
  if (outer === null) return null;
  const total = (spin: Ball, across: Ball | null, turn0: Vec3) => {
    const about = product(spin.size, kept(1, axis.off), spin);
    return sum(length(turn0), about, ...(across === null ? [] : [across]));
  };
  const armSpin0 = -dot(rod0, vo0) / lever0;
  const armTurn = total(outer.arm, across, addScaled(across0, along, armSpin0));
  const steerTurn = total(outer.steer, null, scale(along, dot(rod0, velocity) / lever0));
  // Of the body point that passes the middle wheel center: vl + ω × (center − joint).
  const toCenter = length(sub(vecAt(pose, POSE.wheelCenter), joint));
  const lever = (turning: Ball) => ball(0, toCenter * turning.off + turning.most * lower.off);
  return {
    arm: armTurn,
    steer: steerTurn,
    armSlide: sum(0, lower, lever(armTurn)),
    steerSlide: lever(steerTurn),
  };
}

describe(`the center link's ends over a range of steer (seed ${SEED.seed})`, () => {
  it("are as fast, and as far from their velocity in the middle, as ball arithmetic makes them", () => {
    let proven = 0;
    let refused = 0;
    fc.assert(
      fc.property(
        plausibleTrucks("pitman"),
        between(1, 3),
        between(-1, 1),
        fc.oneof(between(0.0001, 0.01), between(0.01, 0.6)),
        ({ input }, wider, steer, half) => {
          const { steering } = input;
          if (steering.type !== "pitman") throw new TypeError("asked for those");
          const line = sub(steering.idler.end, steering.pitman.end);
          const idler = circleOf(steering.idler);
          const root = -Math.sign(dot(idler.quarter, sub(steering.pitman.end, idler.foot)));
          const linkage: Linkage = {
            pitman: circleOf(steering.pitman),
            idler,
            swing: wider * steering.swing,
            root,
            linkLength: length(line),
          };
          const reach = length(sub(steering.innerEnd, steering.pitman.end));
          const out: InnerEndSpread = { speedMost: -1, velocityOff: -1 };
          const found = linkSpreadTo(out, linkage, steer, half, normalize(line), reach);
          const told = linkOff(linkage, steer, half, normalize(line), reach);
          expect(found).toBe(told !== null);
          if (told === null) {
            refused++;
            return;
          }
          proven++;
          near(out.speedMost, told.most, "speed");
          near(out.velocityOff, told.off, "velocity");
        },
      ),
      SEED,
    );
    expect(proven).toBeGreaterThan(0.3 * SEED.numRuns);
    expect(refused).toBeGreaterThan(5);
  });
});

/** Both ends of a factor at its greatest. */
const times = (a: Ball, b: Ball): Ball => ball(0, a.most * b.off + b.most * a.off, a.most * b.most);
const over = (a: Ball, least: number, off: number): Ball =>
  ball(0, (a.off + (a.most / least) * off) / least, a.most / least);
const plus = (...parts: readonly Ball[]): Ball =>
  ball(
    0,
    parts.reduce((off, part) => off + part.off, 0),
    parts.reduce((most, part) => most + part.most, 0),
  );

/** The velocity per steer of a vector of `reach` on the link, from the pitman end; null = nothing is proven. */
function linkOff(linkage: Linkage, steer: number, half: number, restLine: Vec3, reach: number): Ball | null {
  const link = linkAt(linkage, steer);
  if (link === null) return null;
  const turned = Math.abs(linkage.swing);
  const speed = length(linkage.pitman.radial) * turned;
  const end = kept(speed, speed * turned * half);
  const radius = length(linkage.idler.radial);
  const pull0 = dot(link.line, link.endRate);
  const grip0 = dot(link.line, link.tangent);
  const idler = guessed(radius * Math.abs(link.idlerTurn) * half, (off) => {
    const line = kept(1, (off + speed * half) / linkage.linkLength);
    const t = kept(radius, off);
    const rate = quotient(product(Math.abs(pull0), line, end), product(Math.abs(grip0), line, t));
    return rate && { line, t, rate, path: radius * rate.most * half };
  });
  if (idler === null) return null;
  const { line, t, rate } = idler;
  const idlerRate = product(0, t, rate);
  const lineRate = ball(length(link.lineRate), (idlerRate.off + end.off) / linkage.linkLength);
  // The least turn from the line at rest: R v = c v + w × v + w (w·v)/(1 + c).
  const room = 1 + dot(restLine, link.line) - line.off;
  if (!(room > 0)) return null;
  const v = kept(reach, 0);
  const w = kept(1, line.off);
  const share = over(times(w, v), room, line.off);
  const shareRate = over(plus(times(lineRate, v), times(share, lineRate)), room, line.off);
  const turn = plus(times(lineRate, v), times(lineRate, v), times(lineRate, share), times(w, shareRate));
  return plus(ball(0, end.off, speed), turn);
}
