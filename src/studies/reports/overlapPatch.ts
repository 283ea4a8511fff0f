import { CELL_ROW, CellKind } from "../../gaps/cells/cells.ts";
import type { TriangleTree } from "../../gaps/mesh/triangleTree.ts";
import type { PartShape } from "../../gaps/partShape.ts";
import { addScaled, dot, length, sub, type Vec3 } from "../../geometry/vec.ts";
import type { RingSight } from "./ringSight.ts";

/** Where a part is inside the ring: bits of surface that fill it, and the lines around them. mm. */
export interface OverlapPatch {
  /** Each of three or four corners. */
  readonly fill: (readonly Vec3[])[];
  readonly border: (readonly [Vec3, Vec3])[];
}

/** mm. A bit of a face that the ring's surface passes is cut straight when it is no larger than this. */
const FINE = 5;

/** Bits of faces looked at before the rest is cut as coarse as it is. */
const MOST_BITS = 20_000;

/** mm along a rod between two looks inside the ring, and outside it at least. */
const STEP = 3;

/** Cosine between two ways out of the ring beyond which they lead to different sides of it. */
const SAME_SIDE = 0.5;

/**
 * What of a part lies inside the ring. Of a face: the piece of it inside, cut where the distance to the ring is nil. Of a
 * rod: the ribbon from its surface, where it is deepest, the shortest way out to the ring's surface, along the rod; it is as
 * wide as the rod is deep.
 */
export function overlapPatch(part: PartShape, ring: RingSight): OverlapPatch {
  const patch: OverlapPatch = { fill: [], border: [] };
  const left = { bits: MOST_BITS };
  const { cells } = part;
  for (let at = 0; at < cells.length; at += CELL_ROW) {
    const kind = cells[at];
    if (kind === CellKind.Segment) addRod(patch, cells, at, ring);
    else if (kind === CellKind.Triangle)
      addFace(patch, [vecIn(cells, at + 1), vecIn(cells, at + 4), vecIn(cells, at + 7)], ring, left);
    else if (kind === CellKind.Box) addFlatBox(patch, cells, at, ring, left);
  }
  if (part.tree) addTree(patch, part.tree, ring, left);
  return patch;
}

type Face = readonly [Vec3, Vec3, Vec3];

function addFlatBox(
  patch: OverlapPatch,
  cells: Float64Array,
  at: number,
  ring: RingSight,
  left: { bits: number },
): void {
  const middle = vecIn(cells, at + 1);
  const half = vecIn(cells, at + 4);
  const flat = half.indexOf(Math.min(...half));
  const [u, v] = [0, 1, 2].filter((axis) => axis !== flat) as [number, number];
  const corner = (s: number, t: number): Vec3 => {
    const point: [number, number, number] = [...middle];
    point[u]! += s * half[u]!;
    point[v]! += t * half[v]!;
    return point;
  };
  const [a, b, c, d] = [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)];
  addFace(patch, [a, b, c], ring, left);
  addFace(patch, [a, c, d], ring, left);
}

function addTree(
  patch: OverlapPatch,
  { corners, boxes, links }: TriangleTree,
  ring: RingSight,
  left: { bits: number },
): void {
  const waiting = [0];
  while (waiting.length > 0) {
    const node = waiting.pop()!;
    const reach = length(vecIn(boxes, 6 * node + 3));
    if (ring.distance(vecIn(boxes, 6 * node)) > reach) continue;
    const [first, count] = [links[2 * node]!, links[2 * node + 1]!];
    if (count === 0) waiting.push(node + 1, first);
    for (let i = first; i < first + count; i++)
      addFace(
        patch,
        [vecIn(corners, 9 * i), vecIn(corners, 9 * i + 3), vecIn(corners, 9 * i + 6)],
        ring,
        left,
      );
  }
}

/** A distance changes by no more than the way gone, so a face whose middle is farther out or deeper in than it is large is settled. */
function addFace(patch: OverlapPatch, face: Face, ring: RingSight, left: { bits: number }): void {
  const waiting: Face[] = [face];
  while (waiting.length > 0) {
    const now = waiting.pop()!;
    const [a, b, c] = now;
    const middle: Vec3 = [(a[0] + b[0] + c[0]) / 3, (a[1] + b[1] + c[1]) / 3, (a[2] + b[2] + c[2]) / 3];
    const reach = Math.max(...now.map((corner) => length(sub(corner, middle))));
    const distance = ring.distance(middle);
    if (distance > reach) continue;
    if (distance < -reach) patch.fill.push(now);
    else if (reach <= FINE || left.bits <= 0) cutFace(patch, now, ring);
    else {
      left.bits -= 1;
      waiting.push(...halves(now));
    }
  }
}

/** Two faces, cut through the middle of the longest side. */
function halves(face: Face): [Face, Face] {
  const sides = [0, 1, 2].map((i) => length(sub(face[i]!, face[(i + 1) % 3]!)));
  const from = sides.indexOf(Math.max(...sides));
  const [a, b, c] = [face[from]!, face[(from + 1) % 3]!, face[(from + 2) % 3]!];
  const middle = between(a, b, 0.5);
  return [
    [a, middle, c],
    [middle, b, c],
  ];
}

/** Keeps what of a small face is inside, cut straight between the places where its sides pass the ring's surface. */
function cutFace(patch: OverlapPatch, face: Face, ring: RingSight): void {
  const distances = face.map((corner) => ring.distance(corner));
  const kept: Vec3[] = [];
  const cut: Vec3[] = [];
  for (let i = 0; i < 3; i++) {
    const [corner, next] = [face[i]!, face[(i + 1) % 3]!];
    const isIn = distances[i]! < 0;
    if (isIn) kept.push(corner);
    if (isIn !== distances[(i + 1) % 3]! < 0) {
      const depthAt = (share: number) => -ring.distance(between(corner, next, share));
      const at = between(corner, next, isIn ? crossing(depthAt, 1, 0) : crossing(depthAt, 0, 1));
      kept.push(at);
      cut.push(at);
    }
  }
  if (kept.length >= 3) patch.fill.push(kept);
  if (cut.length === 2) patch.border.push([cut[0]!, cut[1]!]);
}

/** A place along a rod: on its surface where it is deepest, and out from there on the ring's. */
interface Rung {
  readonly onPart: Vec3;
  readonly onRing: Vec3;
  readonly away: Vec3;
}

function addRod(patch: OverlapPatch, cells: Float64Array, at: number, ring: RingSight): void {
  const [a, b, radius] = [vecIn(cells, at + 1), vecIn(cells, at + 4), cells[at + 10]!];
  const whole = length(sub(b, a));
  const depthAt = (s: number) => radius - ring.distance(between(a, b, whole > 0 ? s / whole : 0));
  const rungAt = (s: number): Rung => {
    const point = between(a, b, whole > 0 ? s / whole : 0);
    const { distance, away } = ring.look(point);
    return { onPart: addScaled(point, away, -radius), onRing: addScaled(point, away, -distance), away };
  };
  let before: Rung | null = null;
  let s = 0;
  while (true) {
    const depth = depthAt(s);
    if (depth > 0) {
      if (before === null && s > 0) before = rungAt(crossing(depthAt, Math.max(0, s - STEP), s));
      const rung = rungAt(s);
      addRung(patch, before, rung);
      before = rung;
    } else if (before !== null) {
      addRung(patch, before, rungAt(crossing(depthAt, s, Math.max(0, s - STEP))));
      before = null;
    }
    if (s >= whole) break;
    // Outside, nothing is nearer than the distance there.
    s = Math.min(whole, s + Math.max(STEP, -depth));
  }
}

function addRung({ fill, border }: OverlapPatch, from: Rung | null, to: Rung): void {
  if (from === null || dot(from.away, to.away) < SAME_SIDE) return;
  fill.push([from.onPart, to.onPart, to.onRing, from.onRing]);
  border.push([from.onPart, to.onPart], [from.onRing, to.onRing]);
}

/** Where the depth passes nil between a place outside and one inside: the last place found inside. */
function crossing(depthAt: (s: number) => number, outside: number, inside: number): number {
  let [out, within] = [outside, inside];
  for (let i = 0; i < 12; i++) {
    const middle = 0.5 * (out + within);
    if (depthAt(middle) > 0) within = middle;
    else out = middle;
  }
  return within;
}

function between(a: Vec3, b: Vec3, share: number): Vec3 {
  return addScaled(a, sub(b, a), share);
}

function vecIn(row: Float64Array, at: number): Vec3 {
  return [row[at]!, row[at + 1]!, row[at + 2]!];
}
