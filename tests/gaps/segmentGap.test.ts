import fc from "fast-check";
import { expect, it } from "vitest";
import { GAP_ROW } from "../../src/gaps/cells/cellSearch.ts";
import { CELL_ROW, CellKind } from "../../src/gaps/cells/cells.ts";
import { GAP_TOLERANCE } from "../../src/gaps/cells/tolerances.ts";
import { ringShapeOf } from "../../src/gaps/ring/ringShape.ts";
import { segmentGapTo } from "../../src/gaps/segmentGap.ts";
import { between } from "../reference/gapCases.ts";

/** A roof of two cones at 45°: x + r = 500 outboard of its ridge. */
const ROOF = ringShapeOf([-300, 200, 0, 500, 300, 200], 200);
const WHEEL = Float64Array.of(0, 0, 0, 1, 0, 0);

it("a segment that passes a cone askew comes nearest where its distance from the axis grows as it leaves along it", () => {
  fc.assert(
    fc.property(between(20, 120), between(20, 60), between(0.15, 0.85), (half, off, share) => {
      // Across the axis r = √(height² + s²), along it x falls by `slope`: x + r is least where s / r = slope.
      const slope = (0.6 * half) / 400;
      const height = 420;
      const lowest = (slope * height) / Math.sqrt(1 - slope * slope);
      const start = lowest - share * 2 * half;
      const middle = 80 + off;
      const x = (s: number) => middle - slope * (s - lowest);
      const cell = new Float64Array(CELL_ROW);
      const ends = [start, start + 2 * half] as const;
      cell.set([CellKind.Segment, x(ends[0]), ends[0], height, x(ends[1]), ends[1], height]);
      const least = (x(lowest) + Math.hypot(height, lowest) - 500) / Math.SQRT2;
      const gap = segmentGapTo(new Float64Array(GAP_ROW), 0, ROOF, WHEEL, 0, cell, 0, 1e9);
      expect(gap - least).toBeGreaterThan(-1e-9);
      expect(gap - least).toBeLessThan(GAP_TOLERANCE + 1e-9);
    }),
    { seed: 1955, numRuns: 200 },
  );
});
