import { Matrix4, Vector3 } from "three";
import { type HitPointInfo, MeshBVH } from "three-mesh-bvh";
import { addScaled, length, scale, sub, type Vec3 } from "../../src/geometry/vec.ts";
import { type RingCase, type WheelCase } from "../reference/referenceRing.ts";
import { revolvedToWheel, ringGeometry, tessellationError } from "../reference/mesh/tessellatedRing.ts";
import type { PartStrata, Stratum } from "./partStrata.ts";

/** The ring cut into triangles in its own frame, with a tree of three-mesh-bvh on them. */
export interface TessellatedTire {
  readonly triangles: number;
  /** mm. How far the triangles are from the round surface, at most. */
  readonly error: number;
  /** What takes a point of the truck (left-hand frame) into the tire's frame at a pose. */
  readonly frameAt: (wheel: WheelCase) => Matrix4;
  /**
   * Gap to a part that is clear of the ring, mm, at most `SEARCH_TOLERANCE` above the least distance of the
   * triangles to the part. The library has no depth, so there is no answer where something touches.
   */
  readonly gapTo: (part: PartStrata, frame: Matrix4) => number;
}

/** mm. How far triangles may be from the round ring, and a gap found from the least over the triangles. */
export const TESSELLATION_TOLERANCE = 0.01;
export const SEARCH_TOLERANCE = 0.01;

const AT_ORIGIN: WheelCase = { center: [0, 0, 0], axis: [0, 1, 0] };

/** Cuts a ring into as many sides as its tolerance needs. */
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
    gapTo: (part, frame) => leastDistance(tree, part, frame),
  };
}

const point = new Vector3();
const hit: HitPointInfo = { point: new Vector3(), distance: 0, faceIndex: 0 };

/**
 * Branch and bound over the part's corners, edges and faces, each halved about its middle m. With d the
 * distance at m and h how far the piece reaches from m, a piece cannot hold a lesser distance than best when
 * d − h ≥ best (distance is 1-Lipschitz), and the tree need not look farther than best + h for that. A piece is
 * settled when h²/(2(d − h)) ≤ tolerance: if the least distance f of the corner, edge or face is inside the
 * piece, the line to the nearest place there is square to it, so d ≤ √(f² + h²) ≤ f + h²/(2f), f ≥ d − h.
 */
function leastDistance(tree: MeshBVH, { strata, radius }: PartStrata, frame: Matrix4): number {
  let best = Number.POSITIVE_INFINITY;
  /** Distance at the middle; +∞ when that is beyond best + reach. */
  const distanceAt = (middle: Vec3, reach: number): number => {
    point.set(...middle).applyMatrix4(frame);
    const near = tree.closestPointToPoint(point, hit, 0, best + reach);
    const d = near?.distance ?? Number.POSITIVE_INFINITY;
    if (d < best) best = d;
    return d;
  };
  const search = (piece: Piece, d: number): void => {
    const { reach } = piece;
    const least = d - reach;
    if (least >= best - SEARCH_TOLERANCE) return;
    if (least > 0 && reach * reach <= 2 * least * SEARCH_TOLERANCE) return;
    const halves = halvesOf(piece.stratum).map(pieceOf);
    const found = halves.map((half) => distanceAt(half.middle, half.reach));
    const nearer = found[0]! <= found[1]! ? 0 : 1;
    search(halves[nearer]!, found[nearer]!);
    search(halves[1 - nearer]!, found[1 - nearer]!);
  };
  const pieces = strata.map(pieceOf);
  const found = pieces.map((piece) => distanceAt(piece.middle, piece.reach));
  const order = [...pieces.keys()].sort((i, j) => found[i]! - pieces[i]!.reach - found[j]! + pieces[j]!.reach);
  for (const i of order) search(pieces[i]!, found[i]!);
  return best - radius;
}

interface Piece {
  readonly stratum: Stratum;
  readonly middle: Vec3;
  readonly reach: number;
}

function pieceOf(stratum: Stratum): Piece {
  const sum = stratum.reduce<Vec3>((total, corner) => addScaled(total, corner, 1), [0, 0, 0]);
  const middle = scale(sum, 1 / stratum.length);
  return { stratum, middle, reach: Math.max(...stratum.map((corner) => length(sub(corner, middle)))) };
}

/** The two halves across the longest side. A corner is settled at once and never gets here. */
function halvesOf(stratum: Stratum): readonly [Stratum, Stratum] {
  if (stratum.length === 1) throw new RangeError("halvesOf: a corner has no halves");
  if (stratum.length === 2) {
    const middle = halfway(stratum[0], stratum[1]);
    return [
      [stratum[0], middle],
      [middle, stratum[1]],
    ];
  }
  const [a, b, c] = stratum;
  const turns = [
    [a, b, c],
    [b, c, a],
    [c, a, b],
  ] as const;
  const [from, to, apex] = turns.reduce((longest, turn) =>
    length(sub(turn[1], turn[0])) > length(sub(longest[1], longest[0])) ? turn : longest,
  );
  const middle = halfway(from, to);
  return [
    [from, middle, apex],
    [middle, to, apex],
  ];
}

const halfway = (a: Vec3, b: Vec3): Vec3 => scale(addScaled(a, b, 1), 0.5);
