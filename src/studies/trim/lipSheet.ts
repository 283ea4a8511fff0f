import { addScaled, cross, dot, length, normalize, scale, sub, type Vec3 } from "../../geometry/vec.ts";
import { type FlatSheet, pieceDistance } from "./flatSheet.ts";

/** mm. How far beyond the ends of the path and above it the panel is looked at. */
const BEYOND = 200;
const ABOVE = 300;

/** A sheet bends no more steeply along u than this: a path that asks for more is laid into a plane. */
const MOST_BEND = 0.5;

/** mm. Two points nearer along u tell no bend. */
const SAME = 1e-6;

/** Share of the area of a square over a path's length below which it is as good as straight. */
const STRAIGHT = 1e-4;

const UP: Vec3 = [0, 0, 1];
const OUTBOARD: Vec3 = [0, 1, 0];

/**
 * The panel above a path, such as a fender above its lip. The plane that fits the path gives across and up; from it the sheet
 * bends along u so that it runs through every point of the path, and is laid flat by its own length. The panel is taken to go
 * straight on beyond the ends of the path, from the height of each end up. Null of a path that is but a point.
 * @param points left-hand frame
 */
export function lipSheet(points: readonly Vec3[], radius: number): FlatSheet | null {
  if (points.length < 2) return null;
  const normal = normalOf(points);
  const up = uprightIn(normal);
  const across = cross(up, normal);
  const middle = scale(
    points.reduce<Vec3>((sum, point) => addScaled(sum, point, 1), [0, 0, 0]),
    1 / points.length,
  );
  const flat = points.map((at) => {
    const from = sub(at, middle);
    return { at, u: dot(from, across), v: dot(from, up), n: dot(from, normal) };
  });
  const bend = bendOf(flat);
  const laid = flat.map(({ at, u, v }) => ({ at, u: bend === null ? u : bend.laidAt(u), v }));
  const isReversed = laid[0]!.u > laid.at(-1)!.u;
  const rising = isReversed ? laid.toReversed() : laid;
  const us = rising.map(({ u }) => u);
  const vs = rising.map(({ v }) => v);
  const low = [Math.min(...us) - BEYOND, Math.min(...vs)] as const;
  const high = [Math.max(...us) + BEYOND, Math.max(...vs) + ABOVE] as const;
  const line = rising.flatMap(({ u, v }) => [u, v]);
  const border = [low[0] - BEYOND, vs[0]!, ...line, high[0] + BEYOND, vs.at(-1)!];
  return {
    kind: "lip",
    placeTo(out, s, v) {
      const [u, n] = bend === null ? [s, 0] : bend.at(s);
      for (let i = 0; i < 3; i++) out[i] = middle[i]! + u * across[i]! + v * up[i]! + n * normal[i]!;
    },
    edgeDistance: (u, v) => borderDistance(border, u, v),
    edge: { points: Float64Array.from(line), closed: false },
    low,
    high,
    radius,
    off: bend === null ? Math.max(...flat.map(({ n }) => Math.abs(n))) : 0,
    border,
    corners: rising.map(({ at }) => at),
    isReversed,
  };
}

/** Square on the plane that fits, by the area the path encloses with the line between its ends; of a straight one level. */
function normalOf(points: readonly Vec3[]): Vec3 {
  let area: Vec3 = [0, 0, 0];
  let way = 0;
  for (const [i, point] of points.entries()) {
    const next = points[(i + 1) % points.length]!;
    area = addScaled(area, cross(sub(point, points[0]!), sub(next, points[0]!)), 0.5);
    way += length(sub(next, point));
  }
  const along = sub(points.at(-1)!, points[0]!);
  const isStraight = length(area) <= STRAIGHT * way * way;
  const level: Vec3 = isStraight ? cross(along, UP) : area;
  const normal = length(level) > SAME ? normalize(level) : OUTBOARD;
  return normal[1] < 0 ? scale(normal, -1) : normal;
}

/** Up in a plane; of a level one forward. */
function uprightIn(normal: Vec3): Vec3 {
  const as: Vec3 = Math.abs(normal[2]) < 0.9 ? UP : [1, 0, 0];
  return normalize(addScaled(as, normal, -dot(as, normal)));
}

interface Bend {
  /** How far along the sheet a place of the plane is. */
  readonly laidAt: (u: number) => number;
  /** The place of the plane, and how far off it the sheet is there. */
  readonly at: (s: number) => readonly [u: number, n: number];
}

/** Null where the path runs back along u, or the sheet would have to bend too steeply. */
function bendOf(points: readonly { readonly u: number; readonly n: number }[]): Bend | null {
  const rising = points[0]!.u <= points.at(-1)!.u ? points : points.toReversed();
  const us = [rising[0]!.u];
  const ns = [rising[0]!.n];
  const laid = [rising[0]!.u];
  for (const { u, n } of rising.slice(1)) {
    const by = u - us.at(-1)!;
    if (by < -SAME || Math.abs(n - ns.at(-1)!) > Math.max(SAME, MOST_BEND * by)) return null;
    if (by <= SAME) continue;
    laid.push(laid.at(-1)! + Math.hypot(by, n - ns.at(-1)!));
    us.push(u);
    ns.push(n);
  }
  const between = (from: readonly number[], to: readonly number[], value: number): number => {
    const last = from.length - 1;
    if (value <= from[0]!) return to[0]!;
    if (value >= from[last]!) return to[last]!;
    const i = from.findIndex((one) => one > value) - 1;
    return to[i]! + ((value - from[i]!) / (from[i + 1]! - from[i]!)) * (to[i + 1]! - to[i]!);
  };
  /** Beyond its ends the sheet goes straight on in the plane. */
  const over = (ends: readonly number[], value: number) =>
    value < ends[0]! ? value - ends[0]! : value > ends.at(-1)! ? value - ends.at(-1)! : 0;
  return {
    laidAt: (u) => between(us, laid, u) + over(us, u),
    at: (s) => [between(laid, us, s) + over(laid, s), between(laid, ns, s)],
  };
}

/** Negative above the border: straight up from there the number of times it is met is odd. */
function borderDistance(border: readonly number[], u: number, v: number): number {
  let least = Number.POSITIVE_INFINITY;
  let isAbove = false;
  for (let i = 2; i < border.length; i += 2) {
    const [u0, v0, u1, v1] = [border[i - 2]!, border[i - 1]!, border[i]!, border[i + 1]!];
    least = Math.min(least, pieceDistance(u, v, u0, v0, u1, v1).distance);
    if (u0 > u === u1 > u) continue;
    if (v0 + ((u - u0) / (u1 - u0)) * (v1 - v0) < v) isAbove = !isAbove;
  }
  return isAbove ? -least : least;
}
