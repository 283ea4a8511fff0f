import { convexHull, convexPieces, doubleArea, EDGE_ROW, type Polygon } from "./convexPieces.ts";
import { deepestIn } from "./deepest.ts";
import { type HullProfile, hullProfileOf } from "./hullProfile.ts";

/**
 * Tire and rim as one solid of revolution, ready for distance queries: the closed outline of its half
 * section in the meridian plane (x along the wheel axis, + outboard; r from the axis), mm.
 */
export interface RingShape {
  /** Outline points, counterclockwise. */
  readonly outline: Polygon;
  /** Edge rows of the outline itself. */
  readonly boundary: Float64Array;
  /** Edge rows of convex pieces that cover the section exactly, one piece after the other… */
  readonly pieces: Float64Array;
  /** …where each begins, as an edge number, with the end last. */
  readonly pieceStarts: Int32Array;
  /** Edge rows of the convex hull of the section. */
  readonly hull: Float64Array;
  readonly hullProfile: HullProfile;
  /** Largest distance of an outline point from the wheel center: the ring lies inside that ball. */
  readonly ballRadius: number;
  readonly barrelRadius: number;
  readonly freeRadius: number;
  /** No point of the section is nearer to the axis, mm. */
  readonly leastRadius: number;
  /** No point lies deeper in the section than this: an upper bound, mm. */
  readonly deepest: number;
}

/**
 * Closes a profile as the setup file defines it: from the last point down to the barrel radius at the
 * same x, across, and up to the first. @param profile x0, r0, x1, r1, … inboard bead to outboard bead.
 * @throws RangeError for a profile the reader should have refused (too few points, no area).
 */
export function ringShapeOf(profile: ArrayLike<number>, barrelRadius: number): RingShape {
  const points: [number, number][] = [];
  const push = (x: number, r: number) => {
    const last = points.at(-1);
    if (last === undefined || last[0] !== x || last[1] !== r) points.push([x, r]);
  };
  for (let i = 0; i + 1 < profile.length; i += 2) push(profile[i]!, profile[i + 1]!);
  if (points.length < 3) throw new RangeError(`ringShapeOf: a profile needs 3 points, got ${points.length}`);
  const [firstX] = points[0]!;
  const [lastX] = points.at(-1)!;
  push(lastX, barrelRadius);
  push(firstX, barrelRadius);
  const [endX, endR] = points.at(-1)!;
  if (endX === points[0]![0] && endR === points[0]![1]) points.pop();
  const area = doubleArea(points);
  if (!(Math.abs(area) > 0)) throw new RangeError("ringShapeOf: the section has no area");
  if (area < 0) points.reverse();

  const pieces = convexPieces(points);
  const pieceStarts = new Int32Array(pieces.length + 1);
  pieces.forEach((piece, i) => {
    pieceStarts[i + 1] = pieceStarts[i]! + piece.length;
  });
  const rows = new Float64Array(pieceStarts.at(-1)! * EDGE_ROW);
  pieces.forEach((piece, i) => {
    rows.set(edgeRows(piece), pieceStarts[i]! * EDGE_ROW);
  });
  const boundary = edgeRows(points);
  const hull = edgeRows(convexHull(points));
  return {
    outline: points,
    boundary,
    pieces: rows,
    pieceStarts,
    hull,
    hullProfile: hullProfileOf(hull, boundary),
    ballRadius: Math.max(...points.map(([x, r]) => Math.sqrt(x * x + r * r))),
    barrelRadius,
    freeRadius: Math.max(...points.map(([, r]) => r)),
    leastRadius: Math.min(...points.map(([, r]) => r)),
    deepest: deepestIn(boundary),
  };
}

function edgeRows(polygon: Polygon): Float64Array {
  const rows = new Float64Array(polygon.length * EDGE_ROW);
  polygon.forEach(([x0, r0], i) => {
    const [x1, r1] = polygon[(i + 1) % polygon.length]!;
    const length = Math.sqrt((x1 - x0) ** 2 + (r1 - r0) ** 2);
    rows.set([x0, r0, (x1 - x0) / length, (r1 - r0) / length, length], i * EDGE_ROW);
  });
  return rows;
}
