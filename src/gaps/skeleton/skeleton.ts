/**
 * A part as corners, edges and faces, for the search of the nearest place by convexity (`skeletonGap.ts`).
 * Left-hand frame, mm.
 */
export interface Skeleton {
  /** x, y, z of each corner. */
  readonly corners: Float64Array;
  /** Two corner numbers an edge; an edge of two triangles is there once. */
  readonly edges: Int32Array;
  /** Rows of `FACE_ROW`, see `FACE`. */
  readonly faces: Float64Array;
  /** A solid is the hull of its corners, its faces look outward; else faces are sheets seen from both sides. */
  readonly solid: boolean;
  /** Of a path, about its edges. */
  readonly radius: number;
}

/**
 * A face: unit normal, its offset, then up to four planes (normal, offset) that the face lies below; of a sheet also
 * which of the part's cells it is, and its three corners' numbers.
 */
export const FACE = { normal: 0, offset: 3, sides: 4, cell: 20, corners: 21 } as const;
export const FACE_ROW = 24;

type Corner = readonly [number, number, number];

export function pathSkeleton(points: readonly Corner[], radius: number): Skeleton {
  const edges = Array.from({ length: Math.max(0, points.length - 1) }, (_, i) => [i, i + 1]);
  return skeletonOf(points, edges, [], false, radius);
}

/** A box from its middle and half sizes. */
export function boxSkeleton(middle: Corner, half: Corner): Skeleton {
  const corners = Array.from(
    { length: 8 },
    (_, k): Corner => [
      middle[0] + (k & 1 ? half[0] : -half[0]),
      middle[1] + (k & 2 ? half[1] : -half[1]),
      middle[2] + (k & 4 ? half[2] : -half[2]),
    ],
  );
  const edges: number[][] = [];
  for (let k = 0; k < 8; k++) for (const bit of [1, 2, 4]) if (!(k & bit)) edges.push([k, k | bit]);
  const faces: number[][] = [];
  for (let axis = 0; axis < 3; axis++) {
    for (const side of [-1, 1]) {
      const row = new Array<number>(FACE_ROW).fill(0);
      row[axis] = side;
      row[FACE.offset] = side * middle[axis]! + half[axis]!;
      let plane = FACE.sides;
      for (let other = 0; other < 3; other++) {
        if (other === axis) continue;
        for (const way of [-1, 1]) {
          row[plane + other] = way;
          row[plane + 3] = way * middle[other]! + half[other]!;
          plane += 4;
        }
      }
      faces.push(row);
    }
  }
  return skeletonOf(corners, edges, faces, true, 0);
}

/** A sheet of triangles (three corner numbers each). Triangles without area have edges but no face. */
export function sheetSkeleton(positions: Float64Array, triangles: Uint32Array): Skeleton {
  const corners = Array.from(
    { length: positions.length / 3 },
    (_, i): Corner => [positions[3 * i]!, positions[3 * i + 1]!, positions[3 * i + 2]!],
  );
  const edges = new Map<string, number[]>();
  const faces: number[][] = [];
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [triangles[i]!, triangles[i + 1]!, triangles[i + 2]!];
    for (const [from, to] of [
      [a, b],
      [b, c],
      [c, a],
    ] as const) {
      edges.set(from < to ? `${from} ${to}` : `${to} ${from}`, [from, to]);
    }
    const face = triangleFace(corners[a]!, corners[b]!, corners[c]!);
    if (face === null) continue;
    faces.push([...face, i / 3, a, b, c]);
  }
  return skeletonOf(corners, [...edges.values()], faces, false, 0);
}

/** The face's row up to `FACE.cell`. */
function triangleFace(a: Corner, b: Corner, c: Corner): number[] | null {
  const normal = cross(minus(b, a), minus(c, a));
  const area = Math.sqrt(along(normal, normal));
  if (!(area > 0)) return null;
  const n = normal.map((v) => v / area) as unknown as Corner;
  const row = new Array<number>(FACE.cell).fill(0);
  for (let i = 0; i < 3; i++) row[i] = n[i]!;
  row[FACE.offset] = along(n, a);
  let plane = FACE.sides;
  for (const [from, to] of [
    [a, b],
    [b, c],
    [c, a],
  ] as const) {
    const out = cross(minus(to, from), n);
    for (let i = 0; i < 3; i++) row[plane + i] = out[i]!;
    row[plane + 3] = along(out, from);
    plane += 4;
  }
  return row;
}

function skeletonOf(
  corners: readonly Corner[],
  edges: readonly number[][],
  faces: readonly number[][],
  solid: boolean,
  radius: number,
): Skeleton {
  return {
    corners: Float64Array.from(corners.flat()),
    edges: Int32Array.from(edges.flat()),
    faces: Float64Array.from(faces.flat()),
    solid,
    radius,
  };
}

function minus(a: Corner, b: Corner): Corner {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

function along(a: Corner, b: Corner): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

function cross(a: Corner, b: Corner): Corner {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}
