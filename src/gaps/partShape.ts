import { CELL, CELL_ROW, CellKind } from "./cells/cells.ts";
import { type MeshHint, meshHint } from "./mesh/meshGap.ts";
import { type TriangleTree, triangleTree } from "./mesh/triangleTree.ts";
import { boxSkeleton, pathSkeleton, type Skeleton, sheetSkeleton } from "./skeleton/skeleton.ts";

/** A body part as a study hands it over: vehicle axes, mm. Structurally a setup's body part. */
export type PartInput =
  | {
      readonly name: string;
      readonly kind: "path";
      readonly radius: number;
      readonly points: readonly (readonly [number, number, number])[];
    }
  | {
      readonly name: string;
      readonly kind: "box";
      readonly min: readonly [number, number, number];
      readonly max: readonly [number, number, number];
    }
  | {
      readonly name: string;
      readonly kind: "mesh";
      /** x, y, z of each vertex. */
      readonly positions: Float64Array;
      /** Three vertex numbers a triangle. */
      readonly triangles: Uint32Array;
    };

/** A part cut into cells, in the left-hand frame of one side, with a ball about each for a quick look. */
export interface PartShape {
  readonly name: string;
  readonly cells: Float64Array;
  readonly count: number;
  /** Center x, y, z and radius (part radius included) of a ball about each cell. */
  readonly balls: Float64Array;
  /** Corners, edges and faces, where the part has few enough to look at all of them; else null. */
  readonly skeleton: Skeleton | null;
  /** Of a mesh with more triangles than that: it then has no cells. */
  readonly tree?: TriangleTree;
  /** The triangle found last, where the next search begins; no answer depends on it. */
  readonly hint?: MeshHint;
}

/**
 * Prepares a part for one side. @param mirrored true for a part of the right side, or for the mirrored
 * copy of a part given for the left: its y changes sign, so that every search runs in the left-hand frame.
 */
export function partShapeOf(part: PartInput, mirrored: boolean): PartShape {
  const ySign = mirrored ? -1 : 1;
  const { name } = part;
  const skeleton = skeletonFor(part, ySign);
  if (part.kind === "mesh" && skeleton === null) {
    const none = new Float64Array(0);
    const tree = triangleTree(part.positions, part.triangles, ySign);
    return { name, cells: none, count: 0, balls: none, skeleton, tree, hint: meshHint() };
  }
  const rows =
    part.kind === "path"
      ? pathRows(part, ySign)
      : part.kind === "box"
        ? boxRows(part, ySign)
        : meshRows(part, ySign);
  const count = rows.length / CELL_ROW;
  return { name, cells: rows, count, balls: ballsOf(rows, count), skeleton };
}

/** Triangles above this many are left to a search that need not look at each. */
const MOST_FACES = 64;

function skeletonFor(part: PartInput, ySign: number): Skeleton | null {
  const onSide = ([x, y, z]: readonly [number, number, number]) => [x, ySign * y, z] as const;
  if (part.kind === "path") return pathSkeleton(part.points.map(onSide), part.radius);
  if (part.kind === "box") {
    const middle = onSide(
      [0, 1, 2].map((i) => 0.5 * (part.min[i]! + part.max[i]!)) as [number, number, number],
    );
    const half = [0, 1, 2].map((i) => 0.5 * (part.max[i]! - part.min[i]!)) as [number, number, number];
    return boxSkeleton(middle, half);
  }
  if (part.triangles.length > 3 * MOST_FACES) return null;
  return sheetSkeleton(
    part.positions.map((v, i) => (i % 3 === 1 ? ySign * v : v)),
    part.triangles,
  );
}

function pathRows(part: Extract<PartInput, { kind: "path" }>, ySign: number): Float64Array {
  const { points, radius } = part;
  // A single point is a ball: a segment of no length.
  const count = Math.max(1, points.length - 1);
  const rows = new Float64Array(count * CELL_ROW);
  for (let i = 0; i < count; i++) {
    const a = points[i]!;
    const b = points[Math.min(i + 1, points.length - 1)]!;
    rows.set([CellKind.Segment, a[0], ySign * a[1], a[2], b[0], ySign * b[1], b[2]], i * CELL_ROW);
    rows[i * CELL_ROW + CELL.radius] = radius;
  }
  return rows;
}

/** The six faces as boxes without thickness, then the solid: only a deep hit is found inside it. */
function boxRows(part: Extract<PartInput, { kind: "box" }>, ySign: number): Float64Array {
  const middle = [0, 1, 2].map((i) => 0.5 * (part.min[i]! + part.max[i]!) * (i === 1 ? ySign : 1));
  const half = [0, 1, 2].map((i) => 0.5 * (part.max[i]! - part.min[i]!));
  const cells: number[][] = [];
  for (let axis = 0; axis < 3; axis++) {
    for (const side of [-1, 1]) {
      const center = middle.map((m, i) => (i === axis ? m + side * half[i]! : m));
      const size = half.map((h, i) => (i === axis ? 0 : h));
      cells.push([CellKind.Box, ...center, ...size]);
    }
  }
  cells.push([CellKind.Solid, ...middle, ...half]);
  const rows = new Float64Array(cells.length * CELL_ROW);
  cells.forEach((cell, i) => {
    rows.set(cell, i * CELL_ROW);
  });
  return rows;
}

function meshRows(part: Extract<PartInput, { kind: "mesh" }>, ySign: number): Float64Array {
  const { positions, triangles } = part;
  const count = triangles.length / 3;
  const rows = new Float64Array(count * CELL_ROW);
  for (let i = 0; i < count; i++) {
    const row = i * CELL_ROW;
    rows[row] = CellKind.Triangle;
    for (let corner = 0; corner < 3; corner++) {
      const from = 3 * triangles[3 * i + corner]!;
      const to = row + 1 + 3 * corner;
      rows[to] = positions[from]!;
      rows[to + 1] = ySign * positions[from + 1]!;
      rows[to + 2] = positions[from + 2]!;
    }
  }
  return rows;
}

function ballsOf(cells: Float64Array, count: number): Float64Array {
  const balls = new Float64Array(4 * count);
  for (let i = 0; i < count; i++) {
    const at = i * CELL_ROW;
    const kind = cells[at];
    const corners = kind === CellKind.Segment ? 2 : kind === CellKind.Triangle ? 3 : 1;
    let reachSq = 0;
    for (let axis = 0; axis < 3; axis++) {
      let sum = 0;
      for (let c = 0; c < corners; c++) sum += cells[at + 1 + 3 * c + axis]!;
      balls[4 * i + axis] = sum / corners;
    }
    if (kind === CellKind.Box || kind === CellKind.Solid)
      reachSq = cells[at + 4]! ** 2 + cells[at + 5]! ** 2 + cells[at + 6]! ** 2;
    else {
      for (let c = 0; c < corners; c++) {
        let sq = 0;
        for (let axis = 0; axis < 3; axis++)
          sq += (cells[at + 1 + 3 * c + axis]! - balls[4 * i + axis]!) ** 2;
        reachSq = Math.max(reachSq, sq);
      }
    }
    balls[4 * i + 3] = Math.sqrt(reachSq) + cells[at + 10]!;
  }
  return balls;
}
