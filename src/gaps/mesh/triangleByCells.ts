import { searchCellTo } from "../cells/cellSearch.ts";
import { CELL_ROW, CellKind } from "../cells/cells.ts";
import type { RingShape } from "../ring/ringShape.ts";
import { TRIANGLE_ROW } from "./triangleTree.ts";

// Leaf scratch.
const cell = new Float64Array(CELL_ROW);
cell[0] = CellKind.Triangle;

/**
 * Gap of one triangle to the ring, if below `beat`, by bisection: for what convexity does not settle (a triangle
 * in the hole of the barrel, or in the ring). Fills `out` as `GAP` says. @returns the gap, or `beat`.
 */
export function triangleByCells(
  out: Float64Array,
  at: number,
  shape: RingShape,
  wheel: Float64Array,
  wheelAt: number,
  triangles: Float64Array,
  triangleAt: number,
  beat: number,
  coarse = 0,
): number {
  for (let i = 0; i < TRIANGLE_ROW; i++) cell[1 + i] = triangles[triangleAt + i]!;
  return searchCellTo(out, at, shape, wheel, wheelAt, cell, 0, beat, coarse);
}
