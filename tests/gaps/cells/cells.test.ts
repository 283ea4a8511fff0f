import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  CELL,
  CELL_ROW,
  CellKind,
  cellCenterTo,
  cellDescent,
  cellReach,
  splitCell,
  swapCells,
} from "../../../src/gaps/cells/cells.ts";
import { addScaled, cross, dot, length, scale, sub, type Vec3, vecAt } from "../../../src/geometry/vec.ts";
import { between, offsets } from "../../reference/gapCases.ts";

const RUN = { seed: 1955, numRuns: 300 } as const;

/** Rows before the cell's, so that nothing is read or written where it does not belong. */
const AT = 2 * CELL_ROW;
const RADIUS = 7;

const { Box, Segment, Solid, Triangle } = CellKind;

function rowOf(kind: number, data: readonly number[]): Float64Array {
  const rows = new Float64Array(5 * CELL_ROW).fill(Number.NaN);
  rows.set([kind, ...data, ...new Array<number>(9 - data.length).fill(0), RADIUS], AT);
  return rows;
}

const halves = fc.tuple(between(1, 300), between(1, 300), between(1, 300));

const cells = (): fc.Arbitrary<Float64Array> =>
  fc.oneof(
    fc.tuple(offsets(400), offsets(400)).map(([a, b]) => rowOf(Segment, [...a, ...b])),
    fc
      .tuple(offsets(400), offsets(400), offsets(400))
      .map(([a, b, c]) => rowOf(Triangle, [...a, ...b, ...c])),
    fc
      .tuple(fc.constantFrom(Box, Solid), offsets(400), halves)
      .map(([kind, c, h]) => rowOf(kind, [...c, ...h])),
  );

/** Corners of the convex hull that a cell is. */
function cornersOf(rows: Float64Array, at: number): Vec3[] {
  const kind = rows[at];
  const points = [1, 4, 7].map((i) => vecAt(rows, at + i));
  if (kind === Segment) return points.slice(0, 2);
  if (kind === Triangle) return points;
  const [center, half] = points as [Vec3, Vec3];
  return [-1, 1].flatMap((x) =>
    [-1, 1].flatMap((y) =>
      [-1, 1].map((z): Vec3 => [center[0] + x * half[0], center[1] + y * half[1], center[2] + z * half[2]]),
    ),
  );
}

const meanOf = (points: readonly Vec3[]): Vec3 =>
  scale(
    points.reduce((sum, p) => addScaled(sum, p, 1)),
    1 / points.length,
  );

/** Length, area or volume, by its corners. */
function sizeOf(rows: Float64Array, at: number): number {
  const corners = cornersOf(rows, at);
  if (corners.length === 2) return length(sub(corners[1]!, corners[0]!));
  const [x, y] = [sub(corners[1]!, corners[0]!), sub(corners[2]!, corners[0]!)];
  return corners.length === 3
    ? 0.5 * length(cross(x, y))
    : Math.abs(dot(cross(x, y), sub(corners[4]!, corners[0]!)));
}

/** Sides from corner to corner along which a cell may be cut. */
function sidesOf(rows: Float64Array, at: number): number[] {
  const corners = cornersOf(rows, at);
  const apart = (i: number, j: number) => length(sub(corners[i]!, corners[j]!));
  if (corners.length === 2) return [apart(0, 1)];
  return corners.length === 3
    ? [apart(0, 1), apart(1, 2), apart(2, 0)]
    : [apart(0, 1), apart(0, 2), apart(0, 4)];
}

const near = (a: number, b: number) => expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-9 * (1 + Math.abs(b)));
const samePoint = (a: Vec3, b: Vec3) => expect(length(sub(a, b))).toBeLessThan(1e-9);

describe(`cells (seed ${RUN.seed})`, () => {
  it("have their center in the middle of their corners, and reach as far as the farthest of them", () => {
    fc.assert(
      fc.property(cells(), (rows) => {
        const center = new Float64Array(3);
        cellCenterTo(center, rows, AT);
        const corners = cornersOf(rows, AT);
        samePoint(vecAt(center, 0), meanOf(corners));
        const [x, y, z] = vecAt(center, 0);
        near(cellReach(rows, AT, x, y, z), Math.max(...corners.map((p) => length(sub(p, [x, y, z])))));
      }),
      RUN,
    );
  });

  it("descend along a slope as far as their lowest corner", () => {
    fc.assert(
      fc.property(cells(), offsets(2), (rows, g) => {
        const center = new Float64Array(3);
        cellCenterTo(center, rows, AT);
        const middle = vecAt(center, 0);
        const lowest = Math.min(...cornersOf(rows, AT).map((p) => dot(g, sub(p, middle))));
        near(cellDescent(rows, AT, ...middle, ...g), lowest);
      }),
      RUN,
    );
  });

  it("are cut across their longest side into two of half the size that make up the whole, in place or elsewhere", () => {
    fc.assert(
      fc.property(
        cells(),
        fc.constantFrom([0, CELL_ROW], [AT, 3 * CELL_ROW], [4 * CELL_ROW, AT]),
        (rows, to) => {
          const whole = rows.slice();
          const out = rows.slice();
          splitCell(out, AT, out, to[0]!, to[1]!);
          const longest = Math.max(...sidesOf(whole, AT));
          const cut = sidesOf(whole, AT).indexOf(longest);
          for (const at of to) {
            expect(out[at]).toBe(whole[AT]);
            expect(out[at + CELL.radius]).toBe(RADIUS);
            near(sizeOf(out, at), 0.5 * sizeOf(whole, AT));
            // Every corner is one of the whole's, or the middle of a side along which it was cut.
            const own = cornersOf(whole, AT);
            const allowed = [...own, ...own.flatMap((p) => own.map((q) => scale(addScaled(p, q, 1), 0.5)))];
            for (const p of cornersOf(out, at))
              expect(Math.min(...allowed.map((q) => length(sub(p, q))))).toBeLessThan(1e-9);
            if (whole[AT] !== Triangle) near(sidesOf(out, at)[cut]!, 0.5 * longest);
          }
          // The middles of both halves stand half the cut side apart, about the middle of the whole.
          const middles = to.map((at) => meanOf(cornersOf(out, at)));
          samePoint(meanOf(middles), meanOf(cornersOf(whole, AT)));
          near(length(sub(middles[1]!, middles[0]!)), (whole[AT] === Triangle ? 1 / 3 : 0.5) * longest);
        },
      ),
      RUN,
    );
  });

  it("of three sides as long the first is cut, and a box that is no longer one way than another along x", () => {
    const out = new Float64Array(2 * CELL_ROW);
    const equal = rowOf(Triangle, [1, 0, 0, 0, 1, 0, 0, 0, 1]);
    splitCell(equal, AT, out, 0, CELL_ROW);
    expect([...out.subarray(1, 10)]).toEqual([1, 0, 0, 0.5, 0.5, 0, 0, 0, 1]);
    expect([...out.subarray(CELL_ROW + 1, CELL_ROW + 10)]).toEqual([0.5, 0.5, 0, 0, 1, 0, 0, 0, 1]);
    splitCell(rowOf(Box, [0, 0, 0, 4, 4, 4]), AT, out, 0, CELL_ROW);
    expect([...out.subarray(1, 7)]).toEqual([-2, 0, 0, 2, 4, 4]);
    expect([...out.subarray(CELL_ROW + 1, CELL_ROW + 7)]).toEqual([2, 0, 0, 2, 4, 4]);
  });

  it("change places as a whole", () => {
    const rows = Float64Array.from({ length: 4 * CELL_ROW }, (_, i) => i);
    swapCells(rows, CELL_ROW, 3 * CELL_ROW);
    const row = (n: number) => Array.from({ length: CELL_ROW }, (_, i) => n * CELL_ROW + i);
    expect([...rows]).toEqual([...row(0), ...row(3), ...row(2), ...row(1)]);
  });
});
