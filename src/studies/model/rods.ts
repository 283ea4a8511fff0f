import { CELL_ROW } from "../../gaps/cells/cells.ts";
import { type PartShape, partShapeOf } from "../../gaps/partShape.ts";
import type { Vec3 } from "../../geometry/vec.ts";
import { POSE } from "../../suspension/poseRow.ts";

/**
 * Rods of one radius from each inner point to one outer point, as a part that `placeRods` can move.
 * @param inners where the rods begin; with `outer` they fix each rod's length, which never changes.
 */
export function rodsOf(name: string, inners: readonly Vec3[], outer: Vec3, radius: number): PartShape {
  // Each rod runs from its inner to the outer point: for two, a line there and back.
  const points = inners.length === 1 ? [inners[0]!, outer] : [inners[0]!, outer, inners[1]!];
  return partShapeOf({ name, kind: "path", radius, points }, false);
}

/**
 * Moves rods to a pose: the first cell runs inner → outer, the second outer → inner; the balls about them
 * keep their radii. @param pivots inner points, or null = the inner tie rod end of the pose.
 */
export function placeRods(
  shape: PartShape,
  outerAt: number,
  pivots: Float64Array | null,
  pose: Float64Array,
  poseAt: number,
): void {
  const { cells, balls } = shape;
  // Corners stand in the line's order, and so do the cells.
  const corners = shape.skeleton?.corners;
  for (let i = 0; i < 3; i++) {
    const outer = pose[poseAt + outerAt + i]!;
    const inner = pivots === null ? pose[poseAt + POSE.tieRodInner + i]! : pivots[i]!;
    cells[1 + i] = inner;
    cells[4 + i] = outer;
    balls[i] = 0.5 * (inner + outer);
    if (corners !== undefined) {
      corners[i] = inner;
      corners[3 + i] = outer;
    }
    if (pivots === null || pivots.length < 6) continue;
    const second = pivots[3 + i]!;
    cells[CELL_ROW + 1 + i] = outer;
    cells[CELL_ROW + 4 + i] = second;
    balls[4 + i] = 0.5 * (outer + second);
    if (corners !== undefined) corners[6 + i] = second;
  }
}
