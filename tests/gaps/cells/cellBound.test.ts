import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { boundCell, type CellBound, cellBound } from "../../../src/gaps/cells/cellBound.ts";
import { CELL_ROW, CellKind } from "../../../src/gaps/cells/cells.ts";
import { type RingShape, ringShapeOf } from "../../../src/gaps/ring/ringShape.ts";
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
import { between, offsets, wheels } from "../../reference/gapCases.ts";
import { aboutAxis, type WheelCase, wheelRow } from "../../reference/referenceRing.ts";

const RUN = { seed: 1955, numRuns: 400 } as const;

/** A section that is one rectangle: half as wide, from the barrel to the tread. mm */
const WIDE = 110;
const BARREL = 190;
const TREAD = 360;
const RADIUS = 6;
const square = ringShapeOf([-WIDE, BARREL, -WIDE, TREAD, WIDE, TREAD, WIDE, BARREL], BARREL);

/** What is known of a point of the meridian plane outside that rectangle: its distance and the direction of it. */
function seenOf(x: number, r: number): { d: number; ux: number; ur: number } {
  const qx = x - Math.min(WIDE, Math.max(-WIDE, x));
  const qr = r - Math.min(TREAD, Math.max(BARREL, r));
  const d = Math.hypot(qx, qr);
  return { d, ux: qx / d, ur: qr / d };
}

interface Moved {
  readonly half: number;
  readonly turn: Vec3;
  readonly slide: Vec3;
  readonly turnOff: number;
  readonly slideOff: number;
  readonly turnMost: number;
}

const inputs = (half: number): fc.Arbitrary<Moved> =>
  fc
    .tuple(between(0, half), offsets(1), offsets(300), between(0, 0.2), between(0, 20), between(0, 0.1))
    .map(([h, turn, slide, turnOff, slideOff, more]) => ({
      half: h,
      turn,
      slide,
      turnOff,
      slideOff,
      turnMost: length(turn) + turnOff + more,
    }));

function motionRow([arm, steer]: readonly [Moved, Moved]): Float64Array {
  const row = new Float64Array(MOTION_ROW);
  row[MOTION.armHalf] = arm.half;
  row[MOTION.steerHalf] = steer.half;
  row.set([...arm.turn, ...arm.slide], MOTION.armTurn);
  row.set([...steer.turn, ...steer.slide], MOTION.steerTurn);
  row.set([arm.turnOff, arm.slideOff, arm.turnMost], MOTION.armTurnOff);
  row.set([steer.turnOff, steer.slideOff, steer.turnMost], MOTION.steerTurnOff);
  return row;
}

/** A cell about a place, its farthest point from there, and how far it descends along a slope. */
interface About {
  readonly row: Float64Array;
  readonly reach: number;
  readonly descent: (g: Vec3) => number;
}

const cellsAbout = (center: Vec3): fc.Arbitrary<About> =>
  fc.oneof(
    offsets(40).map(
      (way): About => ({
        row: rowOf(CellKind.Segment, addScaled(center, way, -1), addScaled(center, way, 1)),
        reach: length(way),
        descent: (g) => -Math.abs(dot(g, way)),
      }),
    ),
    fc.tuple(between(0, 30), between(0, 30), between(0, 30)).map(
      (half): About => ({
        row: rowOf(CellKind.Box, center, half),
        reach: length(half),
        descent: (g) => -(Math.abs(g[0]) * half[0] + Math.abs(g[1]) * half[1] + Math.abs(g[2]) * half[2]),
      }),
    ),
  );

function rowOf(kind: number, a: Vec3, b: Vec3): Float64Array {
  const row = new Float64Array(2 * CELL_ROW);
  row.set([kind, ...a, ...b, 0, 0, 0, RADIUS], CELL_ROW);
  return row;
}

interface Case {
  readonly wheel: WheelCase;
  readonly center: Vec3;
  readonly cell: About;
  readonly x: number;
  readonly r: number;
  /** Unit, in space: away from the axis at the center. */
  readonly out: Vec3;
}

const cases = (xs: fc.Arbitrary<number>, rs: fc.Arbitrary<number>): fc.Arbitrary<Case> =>
  fc.tuple(wheels(), xs, rs, between(0, 2 * Math.PI)).chain(([wheel, x, r, turn]) => {
    const center = aboutAxis(wheel, x, r, turn);
    const foot = addScaled(wheel.center, wheel.axis, x);
    return cellsAbout(center).map((cell) => ({
      wheel,
      center,
      cell,
      x,
      r,
      out: normalize(sub(center, foot)),
    }));
  });

function boundOf(ring: RingShape, { wheel, cell }: Case, motion: Float64Array | null): CellBound {
  const found = cellBound();
  const row = new Float64Array(9).fill(Number.NaN);
  row.set(wheelRow(wheel), 3);
  boundCell(found, ring, row, 3, cell.row, CELL_ROW, motion);
  return found;
}

/** By `certified-gaps.md`: Σ h·(|V₀| + δv + δω·|p − c| + |ω|·extent), the way of any point of the cell. */
const pathOf = (moved: Moved, p: Vec3, reach: number): number =>
  moved.half *
  (length(addScaled(moved.slide, cross(moved.turn, p), 1)) +
    moved.slideOff +
    moved.turnOff * length(p) +
    moved.turnMost * reach);

interface Told {
  readonly bound: number;
  readonly part: number;
  readonly arm: number;
  readonly steer: number;
}

/** The better of the 1-Lipschitz bound and the first-order one, with what each takes off for part, arm and steering. */
function toldBy(
  { d, ux, ur }: { readonly d: number; readonly ux: number; readonly ur: number },
  { center, cell, out, r, wheel }: Case,
  moves: readonly [Moved, Moved] | null,
): Told {
  const p = sub(center, wheel.center);
  const g = addScaled(scale(wheel.axis, ux), out, ur);
  const [arm, steer] = (moves ?? []).map((moved) => pathOf(moved, p, cell.reach));
  const path = { part: cell.reach, arm: arm ?? 0, steer: steer ?? 0 };
  const most = path.part + path.arm + path.steer;
  const farthest: Told = { bound: d - most, ...path };
  // Toward the axis r may fall below its tangent by D²/2(r − D).
  if (ur < 0 && !(most < r)) return farthest;
  const sag = ur < 0 ? (-ur * most * most) / (2 * (r - most)) : 0;
  const share = sag > 0 ? sag / most : 0;
  const spin = (moves ?? []).reduce((sum, { half, turnMost }) => sum + half * turnMost, 0);
  const first = (moved: Moved, way: number) =>
    share * way +
    moved.half *
      (Math.abs(dot(g, addScaled(moved.slide, cross(moved.turn, p), 1))) +
        moved.slideOff +
        moved.turnOff * length(p) +
        moved.turnMost * cell.reach +
        (spin * way) / (moved.half || 1));
  const level = {
    part: share * path.part - cell.descent(g),
    arm: moves === null ? 0 : first(moves[0], path.arm),
    steer: moves === null ? 0 : first(moves[1], path.steer),
  };
  const bound = d - level.part - level.arm - level.steer;
  return bound > farthest.bound ? { bound, ...level } : farthest;
}

function expectTold(found: CellBound, told: Told, d: number): void {
  const near = (a: number, b: number, what: string) =>
    expect(Math.abs(a - b), `${what}: ${a} for ${b}`).toBeLessThan(1e-8 * (1 + Math.abs(b)));
  near(found.distance, d, "distance");
  near(found.value, d - RADIUS, "value");
  near(found.bound, told.bound - RADIUS, "bound");
  near(found.partShare, told.part, "part");
  near(found.armShare, told.arm, "arm");
  near(found.steerShare, told.steer, "steer");
}

const anywhere = (): fc.Arbitrary<Case> =>
  fc.oneof(
    cases(between(-300, 300), between(TREAD + 1, 700)),
    cases(fc.oneof(between(WIDE + 1, 300), between(-300, -WIDE - 1)), between(1, 600)),
    cases(between(-WIDE, WIDE), between(30, BARREL - 1)),
  );

describe(`a cell outside a section that is one rectangle (seed ${RUN.seed})`, () => {
  const still = (c: Case) => {
    const seen = seenOf(c.x, c.r);
    const found = boundOf(square, c, null);
    const told = toldBy(seen, c, null);
    return { found, seen, told };
  };

  it("at one pose has the better of both bounds, to the digit", () => {
    fc.assert(
      fc.property(anywhere(), (c) => {
        const { found, seen, told } = still(c);
        // A cell that may enter the ring is bounded by its hull too, which here is the section.
        expectTold(found, told, seen.d);
        const away = addScaled(scale(c.wheel.axis, seen.ux), c.out, seen.ur);
        expect(length(sub(vecAt(found.away, 0), away))).toBeLessThan(1e-9);
        expect(length(sub(vecAt(found.center, 0), c.center))).toBeLessThan(1e-9);
      }),
      RUN,
    );
  });

  it("over poses that move as a row says, likewise", () => {
    fc.assert(
      fc.property(anywhere(), inputs(0.05), inputs(0.1), (c, arm, steer) => {
        const seen = seenOf(c.x, c.r);
        const found = boundOf(square, c, motionRow([arm, steer]));
        expectTold(found, toldBy(seen, c, [arm, steer]), seen.d);
      }),
      RUN,
    );
  });

  it("on the wheel's axis every direction across it is as good", () => {
    const center: Vec3 = [0, 0, 0];
    // No rounding: the middle of the cell is on the axis to the digit.
    for (const axis of [
      [0, 1, 0],
      [1, 0, 0],
      [0, 0, 1],
      [0, 0.6, 0.8],
    ] as const) {
      const at = addScaled(center, axis, WIDE + 40);
      const half: Vec3 = [3, 2, 1];
      const cell: About = { row: rowOf(CellKind.Box, at, half), reach: length(half), descent: () => 0 };
      const found = boundOf(
        square,
        { wheel: { center, axis }, center: at, cell, x: WIDE + 40, r: 0, out: [0, 0, 0] },
        null,
      );
      const d = Math.hypot(40, BARREL);
      expect(found.distance).toBeCloseTo(d, 9);
      expect(found.bound).toBeCloseTo(d - length(half) - RADIUS, 9);
      expect(length(vecAt(found.away, 0))).toBeCloseTo(1, 9);
      expect(dot(vecAt(found.away, 0), axis)).toBeCloseTo(40 / d, 9);
    }
  });
});

describe(`a cell inside that section (seed ${RUN.seed})`, () => {
  /** Planes over the meridian plane: the distances to the lines of the four sides, with their directions. */
  const sides = (x: number, r: number) =>
    [
      { d: x - WIDE, ux: 1, ur: 0, along: r, from: BARREL, to: TREAD },
      { d: -WIDE - x, ux: -1, ur: 0, along: r, from: BARREL, to: TREAD },
      { d: r - TREAD, ux: 0, ur: 1, along: x, from: -WIDE, to: WIDE },
      { d: BARREL - r, ux: 0, ur: -1, along: x, from: -WIDE, to: WIDE },
    ] as const;

  it("is bounded by its nearest side, or level by the mean of two opposite ones", () => {
    const inside = cases(between(-WIDE + 1, WIDE - 1), between(BARREL + 1, TREAD - 1));
    let level = 0;
    fc.assert(
      fc.property(inside, fc.option(fc.tuple(inputs(0.003), inputs(0.003))), (c, moves) => {
        const planes = sides(c.x, c.r);
        const nearest = planes.reduce((a, b) => (b.d > a.d ? b : a));
        const found = boundOf(square, c, moves === null ? null : motionRow(moves));
        expect(found.distance).toBeCloseTo(nearest.d, 9);
        const one = toldBy(nearest, c, moves);
        let best = one;
        // Feet stay on both sides over all of the cell, and all of it lies inside.
        const p = sub(c.center, c.wheel.center);
        const most =
          c.cell.reach + (moves ?? []).reduce((sum, moved) => sum + pathOf(moved, p, c.cell.reach), 0);
        const feet = planes.filter(
          ({ d, along, from, to }) => d <= -most && along - from >= most && to - along >= most,
        );
        const first = feet.reduce<(typeof feet)[number] | null>(
          (a, b) => (a === null || b.d > a.d ? b : a),
          null,
        );
        const score = (plane: (typeof feet)[number]) =>
          plane.d + most * (1 - (first!.ux * plane.ux + first!.ur * plane.ur));
        const second =
          first === null
            ? null
            : feet
                .filter((plane) => plane !== first)
                .reduce<(typeof feet)[number] | null>(
                  (a, b) => (a === null || score(b) > score(a) ? b : a),
                  null,
                );
        if (first !== null && nearest.d + most < 0) {
          const told = toldBy(first, c, moves);
          if (told.bound > best.bound) best = told;
        }
        if (first !== null && second !== null && nearest.d + most < 0) {
          // The mean that is as level as can be: two opposite sides half and half, two square ones likewise.
          const mean = {
            d: 0.5 * (first.d + second.d),
            ux: 0.5 * (first.ux + second.ux),
            ur: 0.5 * (first.ur + second.ur),
          };
          const told = toldMean(mean, [first.ur, second.ur], c, moves);
          if (told.bound > best.bound) {
            best = told;
            level++;
          }
        }
        expect(found.bound).toBeGreaterThan(best.bound - RADIUS - 1e-8);
        expect(found.bound).toBeLessThan(best.bound - RADIUS + 1e-8);
      }),
      RUN,
    );
    expect(level).toBeGreaterThan(20);
  });

  /** As `toldBy`; what each of two planes has of a direction toward the axis counts by its half. */
  function toldMean(
    mean: { readonly d: number; readonly ux: number; readonly ur: number },
    urs: readonly number[],
    c: Case,
    moves: readonly [Moved, Moved] | null,
  ): Told {
    const down = urs.reduce((sum, ur) => sum + 0.5 * Math.min(0, ur), 0);
    const plain = toldBy({ ...mean, ur: 0 }, c, moves);
    if (down === 0 && mean.ur === 0) return plain;
    const p = sub(c.center, c.wheel.center);
    const g = addScaled(scale(c.wheel.axis, mean.ux), c.out, mean.ur);
    const ways = (moves ?? []).map((moved) => pathOf(moved, p, c.cell.reach));
    const most = c.cell.reach + ways.reduce((sum, way) => sum + way, 0);
    if (down < 0 && !(most < c.r)) return { bound: mean.d - most, part: 0, arm: 0, steer: 0 };
    const sag = (-down * most * most) / (2 * (c.r - most));
    const spin = (moves ?? []).reduce((sum, { half, turnMost }) => sum + half * turnMost, 0);
    const moved = (moves ?? []).reduce(
      (sum, one, i) =>
        sum +
        one.half *
          (Math.abs(dot(g, addScaled(one.slide, cross(one.turn, p), 1))) +
            one.slideOff +
            one.turnOff * length(p) +
            one.turnMost * c.cell.reach) +
        spin * ways[i]!,
      0,
    );
    return { bound: mean.d + c.cell.descent(g) - sag - moved, part: 0, arm: 0, steer: 0 };
  }
});
