import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CELL_ROW, CellKind } from "../../src/gaps/cells/cells.ts";
import { mayHoldCircle, ringInBox } from "../../src/gaps/partGap.ts";
import { addScaled, normalize, type Vec3 } from "../../src/geometry/vec.ts";
import { offsets } from "../reference/gapCases.ts";
import { shapeOf } from "../reference/kernelGap.ts";
import { ringCases } from "../reference/rings.ts";

const shape = shapeOf(ringCases[0]!);
const solid = (half: readonly number[]) => {
  const row = new Float64Array(CELL_ROW);
  row.set([CellKind.Solid, 0, 0, 0, ...half]);
  return row;
};

describe("a box that may hold a whole circle of the ring", () => {
  it("lying in a plane of the box it has to be as wide and as high as the circle, and may have no thickness", () => {
    const r = shape.leastRadius;
    expect(r).toBe(Math.min(...shape.outline.map(([, radius]) => radius)));
    expect(mayHoldCircle(solid([r, 0, r]), 0, shape)).toBe(true);
    expect(mayHoldCircle(solid([0.999 * r, 0, r]), 0, shape)).toBe(false);
    // A rail: long, but neither high nor wide enough.
    expect(mayHoldCircle(solid([10 * r, 0.6 * r, 0.6 * r]), 0, shape)).toBe(false);
  });

  it("is no box that leaves a point of each circle of it outside, whichever way the circle is turned", () => {
    const half = fc.tuple(...[0, 1, 2].map(() => fc.double({ min: 0.1, max: 1.5, noNaN: true })));
    const turn = fc.tuple(...[0, 1].map(() => fc.double({ min: 0, max: Math.PI, noNaN: true })));
    let held = 0;
    fc.assert(
      fc.property(half, turn, (halves, [lean, round]) => {
        const r = shape.leastRadius;
        const n = [Math.sin(lean!) * Math.cos(round!), Math.sin(lean!) * Math.sin(round!), Math.cos(lean!)];
        // How far the circle about the origin reaches along each axis.
        const holds = n.every((v, i) => r * Math.sqrt(Math.max(0, 1 - v * v)) <= halves[i]! * r);
        if (!holds) return;
        held++;
        expect(mayHoldCircle(solid(halves.map((h) => (1 + 1e-12) * h * r)), 0, shape)).toBe(true);
      }),
      { seed: 61, numRuns: 2000 },
    );
    expect(held).toBeGreaterThan(50);
  });
});

it("a box about the outline's first point, straight up in the wheel's plane, holds a point of the ring; beside it none", () => {
  const [x, r] = shape.outline[0]!;
  fc.assert(
    fc.property(offsets(400), offsets(1), offsets(1), (center, lean, off) => {
      const axis = normalize([lean[0], 1.2 + lean[1], lean[2]]);
      // Up less its part along the axis.
      const up = normalize(addScaled([0, 0, 1], axis, -axis[2]));
      const point = addScaled(addScaled(center, axis, x), up, r);
      const wheel = Float64Array.from([0, ...center, ...axis]);
      const box = (middle: Vec3, half: number) => {
        const row = new Float64Array(2 * CELL_ROW);
        row.set([CellKind.Solid, ...middle, half, half, half], CELL_ROW);
        return ringInBox(row, CELL_ROW, shape, wheel, 1);
      };
      expect(box(point, 1e-6)).toBe(true);
      expect(box(addScaled(point, off, 1), 1.0001)).toBe(true);
      for (const way of [-1, 1])
        for (const side of [0, 1, 2]) {
          const beside = point.map((v, i) => v + (i === side ? way : 0)) as unknown as Vec3;
          expect(box(beside, 0.999)).toBe(false);
          expect(box(beside, 1.001)).toBe(true);
        }
    }),
    { seed: 61, numRuns: 200 },
  );
});
