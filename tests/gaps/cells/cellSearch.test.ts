import { expect, it } from "vitest";
import { GAP_ROW, searchCellTo } from "../../../src/gaps/cells/cellSearch.ts";
import { CELL, CELL_ROW, CellKind } from "../../../src/gaps/cells/cells.ts";
import { GAP_TOLERANCE } from "../../../src/gaps/cells/tolerances.ts";
import { ringShapeOf } from "../../../src/gaps/ring/ringShape.ts";

it("bisecting finds a gap to its tolerance, wherever the cell begins", () => {
  // A drum of radius 400 about the x axis, and bars that cross above it at 450, from x = 3 as well: the number of a kind.
  const drum = ringShapeOf([-500, 200, -500, 400, 500, 400, 500, 200], 200);
  const wheel = Float64Array.of(0, 0, 0, 1, 0, 0);
  for (const x of Object.values(CellKind))
    for (const from of [-370, -210, -333]) {
      const bar = new Float64Array(CELL_ROW);
      bar.set([CellKind.Segment, x, from, 450, x + 90, from + 700, 450], 0);
      bar[CELL.radius] = 10;
      const gap = searchCellTo(new Float64Array(GAP_ROW), 0, drum, wheel, 0, bar, 0, 1e9);
      expect(gap - 40).toBeGreaterThan(-1e-9);
      expect(gap - 40).toBeLessThan(GAP_TOLERANCE + 1e-9);
    }
});
