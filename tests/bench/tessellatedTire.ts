import { type BufferGeometry, type Matrix4, Vector3 } from "three";
import { type HitPointInfo, MeshBVH } from "three-mesh-bvh";
import type { PartInput } from "../../src/gaps/partShape.ts";
import { addScaled, length, scale, sub, type Vec3 } from "../../src/geometry/vec.ts";
import { partGeometry } from "../reference/mesh/surfaceDistance.ts";
import { revolvedToWheel, ringGeometry, tessellationError } from "../reference/mesh/tessellatedRing.ts";
import type { RingCase, WheelCase } from "../reference/referenceRing.ts";

/** A part as the library is asked about it: a path leg by leg, a surface with a tree of its own. */
export type PartQuery =
  | { readonly kind: "path"; readonly points: readonly Vec3[]; readonly radius: number }
  | { readonly kind: "surface"; readonly geometry: BufferGeometry };

/** The ring cut into triangles in its own frame, with a tree of three-mesh-bvh on them. */
export interface TessellatedTire {
  readonly triangles: number;
  /** mm. How far the triangles are from the round surface, at most. */
  readonly error: number;
  /** What takes a point of the truck (left-hand frame) into the tire's frame at a pose. */
  readonly frameAt: (wheel: WheelCase) => Matrix4;
  /**
   * Gap to a part that is clear of the ring, mm: at most `SEARCH_TOLERANCE` above the least distance of the
   * triangles to the part. The library has no depth, so there is no answer where something touches.
   */
  readonly gapTo: (part: PartQuery, frame: Matrix4) => number;
}

/** mm. How far triangles may be from the round ring, and a gap found from the least over the triangles. */
const TESSELLATION_TOLERANCE = 0.01;
export const SEARCH_TOLERANCE = 0.01;

const AT_ORIGIN: WheelCase = { center: [0, 0, 0], axis: [0, 1, 0] };

/** Prepares a part, with the tree on it that makes the library quick. */
export function partQuery(part: PartInput): PartQuery {
  if (part.kind === "path") return { kind: "path", points: part.points, radius: part.radius };
  const geometry = partGeometry(part);
  geometry.boundsTree = new MeshBVH(geometry);
  return { kind: "surface", geometry };
}

/**
 * Cuts a ring into as few sides as keep it within the tolerance. The tree is built as the library builds it
 * unasked: other splits and smaller leaves were tried and are slower here.
 */
export function tessellatedTire(ring: RingCase): TessellatedTire {
  const radius = Math.max(...ring.profile.map(([, r]) => r));
  const sides = Math.ceil(Math.PI / Math.acos(1 - TESSELLATION_TOLERANCE / radius));
  const geometry = ringGeometry(ring, AT_ORIGIN, sides);
  const triangles = geometry.getIndex()!.count / 3;
  const tree = new MeshBVH(geometry);
  const standing = revolvedToWheel(AT_ORIGIN);
  return {
    triangles,
    error: tessellationError(ring, sides),
    frameAt: (wheel) => standing.clone().multiply(revolvedToWheel(wheel).invert()),
    gapTo: (part, frame) =>
      part.kind === "path"
        ? leastAlongPath(tree, part.points, frame) - part.radius
        : tree.closestPointToGeometry(part.geometry, frame, hit)!.distance,
  };
}

const hit: HitPointInfo = { point: new Vector3(), distance: 0, faceIndex: 0 };
const point = new Vector3();

/**
 * Branch and bound over the legs of a path: each is halved about its middle m until settled. With d the
 * distance at m and h half the length, a piece cannot hold a lesser distance than best when d − h ≥ best
 * (distance is 1-Lipschitz), and the tree need not look farther than best + h for that. A piece is settled when
 * h²/(2(d − h)) ≤ tolerance: if the least distance f of the leg is inside the piece, the line to the nearest
 * place is square to the leg there, so d ≤ √(f² + h²) ≤ f + h²/(2f), and f ≥ d − h. A least distance at a
 * corner is found at the corner.
 */
function leastAlongPath(tree: MeshBVH, points: readonly Vec3[], frame: Matrix4): number {
  let best = Number.POSITIVE_INFINITY;
  /** Distance at a place; +∞ when that is beyond best + reach. */
  const distanceAt = (place: Vec3, reach: number): number => {
    point.set(...place).applyMatrix4(frame);
    const near = tree.closestPointToPoint(point, hit, 0, best + reach);
    const d = near?.distance ?? Number.POSITIVE_INFINITY;
    if (d < best) best = d;
    return d;
  };
  const search = (from: Vec3, to: Vec3): void => {
    const middle = scale(addScaled(from, to, 1), 0.5);
    const reach = 0.5 * length(sub(to, from));
    const d = distanceAt(middle, reach);
    const least = d - reach;
    if (least >= best - SEARCH_TOLERANCE) return;
    if (least > 0 && reach * reach <= 2 * least * SEARCH_TOLERANCE) return;
    search(from, middle);
    search(middle, to);
  };
  for (const corner of points) distanceAt(corner, 0);
  for (let i = 1; i < points.length; i++) search(points[i - 1]!, points[i]!);
  return best;
}
