import { BufferAttribute, BufferGeometry, Matrix4 } from "three";
import { type HitPointInfo, MeshBVH } from "three-mesh-bvh";
import type { PartInput } from "../../../src/gaps/partShape.ts";

const BOX_FACES = [
  [0, 1, 3],
  [0, 3, 2],
  [4, 7, 5],
  [4, 6, 7],
  [0, 5, 1],
  [0, 4, 5],
  [2, 3, 7],
  [2, 7, 6],
  [0, 2, 6],
  [0, 6, 4],
  [1, 5, 7],
  [1, 7, 3],
] as const;

/** The surface of a box or a mesh as a geometry of three.js. */
export function partGeometry(part: Exclude<PartInput, { kind: "path" }>): BufferGeometry {
  const geometry = new BufferGeometry();
  const isBox = part.kind === "box";
  const ends = isBox ? [part.min, part.max] : [];
  const vertices = isBox
    ? Array.from({ length: 8 }, (_, i) => [ends[(i >> 2) & 1]![0], ends[(i >> 1) & 1]![1], ends[i & 1]![2]])
    : [];
  const positions = isBox ? Float64Array.from(vertices.flat()) : part.positions;
  const triangles = isBox ? Uint32Array.from(BOX_FACES.flat()) : part.triangles.slice();
  geometry.setAttribute("position", new BufferAttribute(positions, 3));
  geometry.setIndex(new BufferAttribute(triangles, 1)); // the tree sorts it in place
  return geometry;
}

/**
 * Least distance between two surfaces, mm, by the bounding volume trees of three-mesh-bvh, one on each
 * (with one alone it can take minutes). Unsigned: 0 or near it once triangles cross.
 */
export function surfaceDistance(a: BufferGeometry, b: BufferGeometry): number {
  const tree = new MeshBVH(a);
  b.boundsTree = new MeshBVH(b);
  const here: HitPointInfo = { point: undefined as never, distance: 0, faceIndex: 0 };
  const hit = tree.closestPointToGeometry(b, new Matrix4(), here);
  if (hit === null) throw new RangeError("surfaceDistance: the tree found no nearest point");
  return hit.distance;
}
