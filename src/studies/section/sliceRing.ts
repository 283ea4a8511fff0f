import type { RingShape } from "../../gaps/ring/ringShape.ts";
import { addScaled, cross, dot, length, scale, type Vec3 } from "../../geometry/vec.ts";

/** A ring cut by a plane: closed loops in vehicle axes, the first point not repeated. */
export interface RingSlice {
  /** All of it. */
  readonly loops: readonly (readonly Vec3[])[];
  /** The half on the side of plane normal × axle (cut from the front: the outboard wheel's upper one), and the other. */
  readonly halves: readonly [readonly (readonly Vec3[])[], readonly (readonly Vec3[])[]];
}

/** A point of the half section: x along the axis, r from it; whether the edge to the next one lies on the axle's own line. */
interface SectionPoint {
  readonly x: number;
  readonly r: number;
}

/** mm. Longest piece of a section's edge: where the plane cuts, its points lie on the surface and the rest within a hair. */
const STEP = 4;
/** mm. Nearer to the cut's own edge than this is on it. */
const ON_EDGE = 1e-6;

/**
 * Cuts tire and rim by a plane that does not lie across the axle alone (the truck's own x and z planes do not). A point of
 * the section at x, r lies in the plane where r sin θ = d(x), with d the plane's distance along the direction square to the
 * axle in which it tilts; so the cut is the section above r = |d| laid out by √(r² − d²) to both sides.
 * @param normal unit @param at dot of normal and a point of the plane, mm
 * @throws RangeError where the plane lies square to the axle
 */
export function sliceRing(
  { outline }: Pick<RingShape, "outline">,
  center: Vec3,
  axis: Vec3,
  normal: Vec3,
  at: number,
): RingSlice {
  const across = addScaled(normal, axis, -dot(normal, axis));
  const tilt = length(across);
  if (!(tilt > 1e-6)) throw new RangeError("sliceRing: the plane must not lie square to the axle");
  const f = scale(across, 1 / tilt);
  const e = cross(f, axis);
  const distance = (x: number) => (at - dot(normal, center) - x * dot(normal, axis)) / tilt;
  const kept = aboveCut(fine(outline), (x) => Math.abs(distance(x)));
  const place = (way: 1 | -1, { x, r }: SectionPoint): Vec3 => {
    const d = distance(x);
    const out = Math.sqrt(Math.max(0, r * r - d * d));
    return addScaled(addScaled(addScaled(center, axis, x), f, d), e, way * out);
  };
  const isEdge = ({ x, r }: SectionPoint) => r - Math.abs(distance(x)) < ON_EDGE;
  const half = (way: 1 | -1) => (kept.length < 3 ? [] : [kept.map((point) => place(way, point))]);
  const chains = kept.length < 3 ? [] : freeChains(kept, isEdge);
  const loops =
    chains === null
      ? [...half(1), ...half(-1)]
      : chains.map((chain) => [
          ...chain.map((point) => place(1, point)),
          ...[...chain].reverse().map((point) => place(-1, point)),
        ]);
  return { loops, halves: [half(1), half(-1)] };
}

/** The outline with points between its corners. */
function fine(outline: RingShape["outline"]): SectionPoint[] {
  return outline.flatMap(([x, r], i) => {
    const [nextX, nextR] = outline[(i + 1) % outline.length]!;
    const count = Math.max(1, Math.ceil(Math.hypot(nextX - x, nextR - r) / STEP));
    return Array.from({ length: count }, (_, k) => ({
      x: x + ((nextX - x) * k) / count,
      r: r + ((nextR - r) * k) / count,
    }));
  });
}

/** The part of a polygon above r = low(x), which is straight but where it turns at 0 (Sutherland and Hodgman, 1974). */
function aboveCut(polygon: readonly SectionPoint[], low: (x: number) => number): SectionPoint[] {
  const kept: SectionPoint[] = [];
  polygon.forEach((one, i) => {
    const next = polygon[(i + 1) % polygon.length]!;
    const [a, b] = [one.r - low(one.x), next.r - low(next.x)];
    if (a >= 0) kept.push(one);
    if (a >= 0 === b >= 0) return;
    const share = a / (a - b);
    const x = one.x + share * (next.x - one.x);
    kept.push({ x, r: low(x) });
  });
  return kept;
}

/** What of a cut polygon's edge is the ring's own, in runs; null = all of it is. */
function freeChains(
  polygon: readonly SectionPoint[],
  isEdge: (point: SectionPoint) => boolean,
): SectionPoint[][] | null {
  const count = polygon.length;
  const isCut = polygon.map((one, i) => isEdge(one) && isEdge(polygon[(i + 1) % count]!));
  const start = isCut.indexOf(true);
  if (start < 0) return null;
  const chains: SectionPoint[][] = [];
  let chain: SectionPoint[] = [];
  for (let k = 1; k <= count; k++) {
    const i = (start + k) % count;
    chain.push(polygon[i]!);
    if (!isCut[i]) continue;
    if (chain.length > 1) chains.push(chain);
    chain = [];
  }
  return chains;
}
