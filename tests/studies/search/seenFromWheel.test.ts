import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { boundCell, cellBound } from "../../../src/gaps/cells/cellBound.ts";
import { CELL_ROW, CellKind } from "../../../src/gaps/cells/cells.ts";
import { ringShapeOf } from "../../../src/gaps/ring/ringShape.ts";
import { MOTION, MOTION_ROW } from "../../../src/geometry/motionRow.ts";
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
} from "../../../src/geometry/vec.ts";
import type { SpringOrShockPair } from "../../../src/studies/model/pairs.ts";
import {
  type SpringOrShock,
  springOrShockOnArm,
  springOrShockOnKnuckle,
  springOrShockShape,
} from "../../../src/studies/model/springOrShock.ts";
import { boundFan, fanBound } from "../../../src/studies/search/rodFan.ts";
import { rodCellTo, rodMotionTo, scaledMotionTo } from "../../../src/studies/search/rodMotion.ts";
import {
  boundSpringOrShockPiece,
  lookAtSpringOrShock,
} from "../../../src/studies/search/springOrShockBound.ts";
import { POSE, POSE_ROW } from "../../../src/suspension/poseRow.ts";
import { SIDE } from "../../../src/suspension/sideRow.ts";
import { assembledModel, demoSetup } from "../../reference/demoModel.ts";
import { between, offsets } from "../../reference/gapCases.ts";

const RUN = { seed: 1964, numRuns: 300 } as const;

const near = (a: number, b: number, what = "") =>
  expect(Math.abs(a - b), `${what} ${a} for ${b}`).toBeLessThan(1e-9 * (1 + Math.abs(b)));
const samePoint = (a: Vec3, b: Vec3) => expect(length(sub(a, b))).toBeLessThan(1e-9 * (1 + length(b)));

/** What a motion row says of one input. */
interface Moved {
  readonly half: number;
  readonly turn: Vec3;
  readonly slide: Vec3;
  readonly turnOff: number;
  readonly slideOff: number;
  readonly turnMost: number;
}

const INPUTS = [
  { half: MOTION.armHalf, turn: MOTION.armTurn, off: MOTION.armTurnOff },
  { half: MOTION.steerHalf, turn: MOTION.steerTurn, off: MOTION.steerTurnOff },
] as const;

const read = (row: Float64Array): readonly [Moved, Moved] =>
  INPUTS.map(({ half, turn, off }) => ({
    half: row[half]!,
    turn: vecAt(row, turn),
    slide: vecAt(row, turn + 3),
    turnOff: row[off]!,
    slideOff: row[off + 1]!,
    turnMost: row[off + 2]!,
  })) as unknown as readonly [Moved, Moved];

const motions = (half: number): fc.Arbitrary<Float64Array> =>
  fc
    .tuple(
      fc.tuple(between(0, half), between(0, half)),
      fc.tuple(offsets(1), offsets(300), offsets(1), offsets(100)),
      fc.array(between(0, 0.3), { minLength: 6, maxLength: 6 }),
    )
    .map(([halves, [armTurn, armSlide, steerTurn, steerSlide], [a, b, c, d, e, f]]) =>
      Float64Array.from([
        ...halves,
        ...armTurn,
        ...armSlide,
        ...steerTurn,
        ...steerSlide,
        ...[a!, 30 * b!, length(armTurn) + a! + c!],
        ...[d!, 30 * e!, length(steerTurn) + d! + f!],
      ]),
    );

const poses = (): fc.Arbitrary<Float64Array> =>
  fc
    .array(between(-500, 500), { minLength: POSE_ROW, maxLength: POSE_ROW })
    .map((numbers) => Float64Array.from(numbers));

const inners = () =>
  fc.option(
    fc.record({
      velocity: offsets(80),
      spread: fc.record({ speedMost: between(0, 100), velocityOff: between(0, 20) }),
    }),
  );

describe(`how a rod's inner end moves as seen from the wheel (seed ${RUN.seed})`, () => {
  it("is v + ω × (B − c) − Ḃ of each input, off by δv + δω·|B − c| + |ω|·its own way + δḂ + Ω·V", () => {
    fc.assert(
      fc.property(motions(0.3), poses(), offsets(400), inners(), (wheel, pose, b, inner) => {
        const out = new Float64Array(MOTION_ROW).fill(Number.NaN);
        rodMotionTo(out, wheel, pose, ...b, inner);
        const p = sub(b, vecAt(pose, POSE.wheelCenter));
        const moved = read(wheel);
        const spin = moved[0].half * moved[0].turnMost + moved[1].half * moved[1].turnMost;
        read(out).forEach((told, i) => {
          const own = i === 1 ? inner : null;
          const one = moved[i]!;
          const velocity = sub(addScaled(one.slide, cross(one.turn, p), 1), own?.velocity ?? [0, 0, 0]);
          const gone = inner === null ? 0 : inner.spread.speedMost * moved[1].half;
          const off =
            one.slideOff + one.turnOff * length(p) + one.turnMost * gone + (own?.spread.velocityOff ?? 0);
          samePoint(told.slide, velocity);
          near(told.slideOff, off + spin * (length(velocity) + off));
          expect([told.half, ...told.turn, told.turnOff, told.turnMost]).toEqual([one.half, 0, 0, 0, 0, 0]);
        });
        // In place too.
        const place = wheel.slice();
        rodMotionTo(place, place, pose, ...b, inner);
        expect([...place]).toEqual([...out]);
      }),
      RUN,
    );
  });

  it("is scaled with the fraction of the rod, the inputs' ranges staying", () => {
    fc.assert(
      fc.property(motions(0.3), between(0, 1), (row, far) => {
        const out = new Float64Array(MOTION_ROW);
        scaledMotionTo(out, row, far);
        expect([...out]).toEqual([...row].map((v, i) => (i < MOTION.armTurn ? v : far * v)));
      }),
      RUN,
    );
  });
});

/** A section that is one rectangle, mm. */
const WIDE = 110;
const BARREL = 190;
const TREAD = 360;
const square = ringShapeOf([-WIDE, BARREL, -WIDE, TREAD, WIDE, TREAD, WIDE, BARREL], BARREL);
const RADIUS = 9;

function seenOf(x: number, r: number): { d: number; ux: number; ur: number } {
  const qx = x - Math.min(WIDE, Math.max(-WIDE, x));
  const qr = r - Math.min(TREAD, Math.max(BARREL, r));
  const d = Math.hypot(qx, qr);
  return { d, ux: qx / d, ur: qr / d };
}

describe(`a fan of rods from their outer end, outside a rectangle (seed ${RUN.seed})`, () => {
  const wheels = fc.tuple(
    offsets(50),
    offsets(0.3).map((o): Vec3 => normalize([o[0], 1, o[2]])),
  );
  const rods = fc.tuple(
    wheels,
    between(-350, 350),
    between(30, 600),
    offsets(300),
    between(0, 1),
    between(0, 1),
  );

  it("is bounded at its piece's ends: slope, paths and the sag of r", () => {
    let sagged = 0;
    let above = 0;
    fc.assert(
      fc.property(rods, motions(0.08), ([[center, axis], x, r, run, one, other], motion) => {
        const up = normalize(cross(axis, [1, 0, 0]));
        const [at, to] = [Math.min(one, other), Math.max(one, other)];
        // The piece's nearer end stands at x, r.
        const q = addScaled(addScaled(center, axis, x), up, r);
        const outer = addScaled(q, run, -at);
        const inner = addScaled(outer, run, 1);
        const seen = seenOf(x, r);
        fc.pre(seen.d > 1e-6);
        const fan = fanBound();
        const wheel = Float64Array.from([Number.NaN, ...center, ...axis]);
        const ends = Float64Array.from([...outer, ...inner]);
        boundFan(fan, square, wheel, 1, ends, 0, ends, 3, at, to, RADIUS, motion);
        const g = addScaled(scale(axis, seen.ux), up, seen.ur);
        const moved = read(motion);
        const along = moved.map((m) => m.half * (Math.abs(dot(g, m.slide)) + m.slideOff));
        const paths = moved.map((m) => m.half * (length(m.slide) + m.slideOff));
        const path = paths[0]! + paths[1]!;
        const most = (to - at) * length(run) + to * path;
        const sag = (way: number) =>
          seen.ur >= 0 ? 0 : way < r ? (-seen.ur * way * way) / (2 * (r - way)) : Number.POSITIVE_INFINITY;
        const atNear = -at * (along[0]! + along[1]!) - sag(at * path);
        const atFar = (to - at) * dot(g, run) - to * (along[0]! + along[1]!) - sag(most);
        const bound = seen.d + Math.max(Math.min(atNear, atFar), -most);
        near(fan.value, seen.d - RADIUS, "value");
        if (bound > 0) near(fan.bound, bound - RADIUS, "bound");
        else expect(fan.bound).toBe(Number.NEGATIVE_INFINITY);
        const where = atNear < atFar ? at : to;
        near(fan.partShare, Math.max(0, -(where - at) * dot(g, run)), "part");
        near(fan.armShare, where * along[0]!, "arm");
        near(fan.steerShare, where * along[1]!, "steer");
        near(fan.length, (to - at) * length(run), "length");
        near(fan.armPath, to * paths[0]!, "arm path");
        near(fan.steerPath, to * paths[1]!, "steer path");
        if (bound > 0) above++;
        if (bound > 0 && seen.ur < 0) sagged++;
      }),
      RUN,
    );
    expect(above).toBeGreaterThan(0.3 * RUN.numRuns);
    expect(sagged).toBeGreaterThan(5);
  });

  it("of two convex pieces counts the one that comes nearer, and on the axis only the way along it", () => {
    // An L: a tread over a barrel that is half as wide.
    const ell = ringShapeOf([-100, 200, -100, 360, 100, 360, 100, 280, 0, 280, 0, 200], 200);
    expect(ell.pieceStarts.length).toBe(3);
    const still = new Float64Array(MOTION_ROW);
    const fan = fanBound();
    const wheel = Float64Array.of(0, 0, 0, 1, 0, 0);
    const bound = (outer: Vec3, inner: Vec3) => {
      const ends = Float64Array.from([...outer, ...inner]);
      boundFan(fan, ell, wheel, 0, ends, 0, ends, 3, 0, 1, 0, still);
      return fan.bound;
    };
    // In the corner of the L, along the axis: away from the barrel, under the tread, toward which r may fall off.
    const sag = (run: number) => (run * run) / (2 * (240 - run));
    near(bound([40, 0, 240], [60, 0, 240]), 40 - sag(20));
    near(bound([60, 0, 240], [40, 0, 240]), 40 - sag(20));
    near(bound([20, 0, 240], [90, 0, 240]), 20);
    near(bound([20, 0, 240], [90, 0, 250]), 30 - sag(Math.hypot(70, 10)));
    // On the axis the barrel's corner is nearest, and nothing is told by its direction.
    near(bound([200, 0, 0], [260, 0, 0]), Math.hypot(200, 200) - 60);
    near(bound([200, 0, 0], [200, 0, 0]), Math.hypot(200, 200));
    near(bound([200, 0, 0], [140, 0, 0]), Math.hypot(200, 200) - 60);
    expect(bound([200, 0, 0], [200, 0, 40])).toBeCloseTo(Math.hypot(200, 200) - 40, 9);
    // Half a millimeter off the axis there is a direction: toward the tread's edge, and r may fall off to the axis.
    const drum = ringShapeOf([-100, 200, -100, 360, 100, 360, 100, 200], 200);
    const ends = Float64Array.of(130, 0, 0.5, 180, 0, 0.5);
    const disc = ringShapeOf([-100, 0.1, -100, 360, 100, 360, 100, 0.1], 0.1);
    for (const [shape, told] of [
      [disc, 30],
      [drum, Math.hypot(30, 199.5) - 50],
    ] as const) {
      boundFan(fan, shape, wheel, 0, ends, 0, ends, 3, 0, 1, 0, still);
      expect(fan.bound).toBeCloseTo(told, 9);
    }
  });
});

it(`a piece of a rod is the segment between two fractions from its outer end (seed ${RUN.seed})`, () => {
  fc.assert(
    fc.property(offsets(400), offsets(400), between(0, 1), between(0, 1), (outer, inner, from, to) => {
      const row = new Float64Array(CELL_ROW).fill(Number.NaN);
      rodCellTo(row, [0, ...outer], 1, [0, 0, ...inner], 2, from, to, RADIUS);
      expect([row[0], row[7], row[8], row[9], row[10]]).toEqual([CellKind.Segment, 0, 0, 0, RADIUS]);
      samePoint(vecAt(row, 1), addScaled(outer, sub(inner, outer), from));
      samePoint(vecAt(row, 4), addScaled(outer, sub(inner, outer), to));
    }),
    RUN,
  );
});

describe(`a piece of a spring or shock (seed ${RUN.seed})`, () => {
  const { frontEnd, ring } = assembledModel(demoSetup());
  const { row: side } = frontEnd.left;
  const SPRING_RADIUS = 70;

  it("on the lower arm is a cell that slides as the wheel less s·L̇ at its middle", () => {
    const foot = vecAt(side, SIDE.lowerFoot);
    const radial = vecAt(side, SIDE.lowerRadial);
    const axis = normalize(cross(radial, vecAt(side, SIDE.lowerQuarter)));
    fc.assert(
      fc.property(
        motions(0.05),
        offsets(40),
        between(-0.3, 0.3),
        fc.tuple(between(0, 1), between(0, 1)),
        offsets(60),
        (motion, off, angle, shares, high) => {
          const [from, to] = [Math.min(...shares), Math.max(...shares)];
          const measured = addScaled(addScaled(foot, radial, 0.7), off, 1);
          const bodyMount = addScaled(addScaled(measured, [0, 0, 1], 250), high, 1);
          const pair = pairOf(springOrShockOnArm(side, bodyMount, measured));
          // Rodrigues: the arm turned about its pivot line carries the mount.
          const turned = (v: Vec3): Vec3 =>
            addScaled(
              addScaled(scale(v, Math.cos(angle)), cross(axis, v), Math.sin(angle)),
              axis,
              dot(axis, v) * (1 - Math.cos(angle)),
            );
          const arm = turned(sub(measured, foot));
          const mount = addScaled(foot, arm, 1);
          const pose = new Float64Array(POSE_ROW);
          pose.set(addScaled(foot, turned(radial), 1), POSE.lowerBallJoint);
          const center: Vec3 = [mount[0], mount[1] + 180, mount[2] + 100];
          pose.set([...center, 0, 1, 0], POSE.wheelCenter);
          const tangent = cross(axis, arm);
          const radius = length(tangent);
          const [one, two] = read(motion);
          const gone = to * radius * one.half;
          const piece = motion.slice();
          piece.set(addScaled(one.slide, tangent, -0.5 * (from + to)), MOTION.armSlide);
          piece[MOTION.armSlideOff] =
            one.slideOff + 0.5 * (to - from) * radius + to * radius * one.half + one.turnMost * gone;
          piece[MOTION.steerSlideOff] = two.slideOff + two.turnMost * gone;
          const row = new Float64Array(CELL_ROW);
          rodCellTo(row, bodyMount, 0, mount, 0, from, to, SPRING_RADIUS);
          expectBound(pair, pose, motion, [from, to], row, piece);
        },
      ),
      RUN,
    );
  });

  it("on the knuckle is a rod whose outer end is there", () => {
    fc.assert(
      fc.property(
        motions(0.05),
        poses(),
        offsets(90),
        fc.tuple(between(0, 1), between(0, 1)),
        (motion, pose, point, shares) => {
          const [from, to] = [Math.min(...shares), Math.max(...shares)];
          pose.set([0, 1, 0, 0, 0, 1, 1, 0, 0], POSE.knuckleX);
          pose.set([0, 1, 0], POSE.wheelAxis);
          const mount = addScaled(vecAt(pose, POSE.lowerBallJoint), [point[2], point[0], point[1]], 1);
          const bodyMount: Vec3 = [40, 300, 500];
          const pair = pairOf(springOrShockOnKnuckle(bodyMount, point));
          const piece = new Float64Array(MOTION_ROW);
          rodMotionTo(piece, motion, pose, ...bodyMount, null);
          const row = new Float64Array(CELL_ROW);
          rodCellTo(row, mount, 0, bodyMount, 0, from, to, SPRING_RADIUS);
          const scaled = new Float64Array(MOTION_ROW);
          scaledMotionTo(scaled, piece, to);
          expectBound(pair, pose, motion, [from, to], row, scaled);
        },
      ),
      RUN,
    );
  });

  function pairOf(springOrShock: SpringOrShock): SpringOrShockPair {
    const part = springOrShockShape("spring", springOrShock, SPRING_RADIUS);
    const name = "air spring";
    return {
      kind: "springOrShock",
      name,
      partName: name,
      solid: "ring",
      side: "left",
      ring,
      springOrShock,
      part,
    };
  }

  function expectBound(
    pair: SpringOrShockPair,
    pose: Float64Array,
    motion: Float64Array,
    [from, to]: readonly [number, number],
    row: Float64Array,
    piece: Float64Array,
  ): void {
    const [found, told] = [cellBound(), cellBound()];
    lookAtSpringOrShock(pair, pose, motion);
    boundSpringOrShockPiece(found, pair, pose, motion, from, to);
    boundCell(told, pair.ring, pose, POSE.wheelCenter, row, 0, piece);
    near(found.value, told.value, "value");
    near(found.bound, told.bound, "bound");
    near(found.partShare, told.partShare, "part");
    near(found.armShare, told.armShare, "arm");
    near(found.steerShare, told.steerShare, "steer");
  }
});
