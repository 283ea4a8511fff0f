import type { TriangleMesh } from "../../geometry/triangleMesh.ts";
import { addScaled, dot, sub, type Vec3, vecAt } from "../../geometry/vec.ts";
import { featureEdges } from "./featureEdges.ts";
import { seenAt, type ViewAxes } from "./viewAxes.ts";

/** Lines of a view, each u0, v0, u1, v1, … in mm of the knuckle. */
export interface ProjectedView {
  readonly seen: readonly Float64Array[];
  readonly hidden: readonly Float64Array[];
}

/** mm. Edges are judged in pieces no longer than this, at their middle. */
const PIECE = 1;
/** mm. What covers an edge lies at least this much nearer: flat sides of rounds that touch stand off by less. */
const NEARER = 0.4;
/** mm. Side of the squares that faces are sorted into. */
const SQUARE = 6;
/** mm. Pieces shorter than this on the view are points. */
const POINT = 1e-6;

/**
 * What is seen of closed bodies from one side, and what they hide. Edges are cut into pieces of at most 1 mm, each seen or hidden
 * as its middle is; pieces are joined to lines again. Costs about a millisecond for a thousand triangles.
 */
export function projectedView(meshes: readonly TriangleMesh[], axes: ViewAxes): ProjectedView {
  const faces = new FaceGrid(meshes, axes);
  const seen: Chains = new Chains();
  const hidden: Chains = new Chains();
  for (const mesh of meshes) {
    for (const [from, to] of featureEdges(mesh, axes.toward)) {
      const [a, b] = [seenAt(axes, from), seenAt(axes, to)];
      const size = Math.hypot(b[0] - a[0], b[1] - a[1]);
      if (size < POINT) continue;
      const count = Math.ceil(size / PIECE);
      const along = sub(to, from);
      for (let i = 0; i < count; i++) {
        const middle = addScaled(from, along, (i + 0.5) / count);
        const ends = [i / count, (i + 1) / count].map((share) => seenAt(axes, addScaled(from, along, share)));
        (faces.covers(middle) ? hidden : seen).add(ends[0]!, ends[1]!);
      }
    }
  }
  return { seen: seen.lines(), hidden: hidden.lines() };
}

/** Faces turned to the viewer, by the squares of the view they reach into. */
class FaceGrid {
  private readonly squares = new Map<string, number[]>();
  /** u, v, depth of three corners a face. */
  private readonly corners: number[] = [];

  constructor(
    meshes: readonly TriangleMesh[],
    private readonly axes: ViewAxes,
  ) {
    for (const { positions, triangles } of meshes) {
      for (let t = 0; t < triangles.length; t += 3) {
        const [a, b, c] = [0, 1, 2].map((k) => this.placed(vecAt(positions, 3 * triangles[t + k]!)));
        const area = (b![0] - a![0]) * (c![1] - a![1]) - (b![1] - a![1]) * (c![0] - a![0]);
        if (area > POINT) this.keep(a!, b!, c!);
      }
    }
  }

  /** Whether some face lies before a point. */
  covers(point: Vec3): boolean {
    const [u, v, depth] = this.placed(point);
    const met = this.squares.get(squareOf(u, v));
    return met?.some((face) => this.depthAt(face, u, v) > depth + NEARER) ?? false;
  }

  /** −Infinity = the face does not reach there. */
  private depthAt(face: number, u: number, v: number): number {
    const c = this.corners;
    const [au, av, ad] = [c[face]!, c[face + 1]!, c[face + 2]!];
    const [bu, bv, bd] = [c[face + 3]!, c[face + 4]!, c[face + 5]!];
    const [cu, cv, cd] = [c[face + 6]!, c[face + 7]!, c[face + 8]!];
    const area = (bu - au) * (cv - av) - (bv - av) * (cu - au);
    const b = ((u - au) * (cv - av) - (v - av) * (cu - au)) / area;
    const k = ((bu - au) * (v - av) - (bv - av) * (u - au)) / area;
    if (b < 0 || k < 0 || b + k > 1) return Number.NEGATIVE_INFINITY;
    return ad + b * (bd - ad) + k * (cd - ad);
  }

  private placed(point: Vec3): readonly [number, number, number] {
    return [...seenAt(this.axes, point), dot(point, this.axes.toward)];
  }

  private keep(...corners: readonly (readonly [number, number, number])[]): void {
    const face = this.corners.length;
    for (const corner of corners) this.corners.push(...corner);
    const span = (axis: 0 | 1) => {
      const values = corners.map((corner) => corner[axis]);
      return [Math.floor(Math.min(...values) / SQUARE), Math.floor(Math.max(...values) / SQUARE)] as const;
    };
    const [[u0, u1], [v0, v1]] = [span(0), span(1)];
    for (let u = u0; u <= u1; u++) {
      for (let v = v0; v <= v1; v++) {
        const key = `${u} ${v}`;
        const met = this.squares.get(key);
        if (met === undefined) this.squares.set(key, [face]);
        else met.push(face);
      }
    }
  }
}

function squareOf(u: number, v: number): string {
  return `${Math.floor(u / SQUARE)} ${Math.floor(v / SQUARE)}`;
}

/** Puts pieces that follow on each other together. */
class Chains {
  private readonly pieces = new Map<string, readonly [Place, Place]>();

  /** A piece that is there already, either way round, is not added. */
  add(a: Place, b: Place): void {
    const [from, to] = [keyOf(a), keyOf(b)];
    if (from !== to) this.pieces.set(from < to ? `${from};${to}` : `${to};${from}`, [a, b]);
  }

  lines(): Float64Array[] {
    const at = new Map<string, (readonly [Place, Place])[]>();
    const left = new Set(this.pieces.values());
    for (const piece of left) {
      for (const end of piece) {
        const met = at.get(keyOf(end));
        if (met === undefined) at.set(keyOf(end), [piece]);
        else met.push(piece);
      }
    }
    const next = (place: Place): Place | null => {
      const piece = at.get(keyOf(place))!.find((one) => left.has(one));
      if (piece === undefined) return null;
      left.delete(piece);
      return keyOf(piece[0]) === keyOf(place) ? piece[1] : piece[0];
    };
    const lines: Float64Array[] = [];
    for (const piece of this.pieces.values()) {
      if (!left.delete(piece)) continue;
      const [from, to] = piece;
      const chain: Place[] = [from, to];
      for (let place = next(to); place !== null; place = next(place)) chain.push(place);
      for (let place = next(from); place !== null; place = next(place)) chain.unshift(place);
      lines.push(Float64Array.from(straightened(chain).flat()));
    }
    return lines;
  }
}

type Place = readonly [number, number];

/** Places nearer than a hundredth of this are one. */
function keyOf([u, v]: Place): string {
  return `${Math.round(u * 100)},${Math.round(v * 100)}`;
}

/** Without the places inside straight stretches. */
function straightened(chain: readonly Place[]): Place[] {
  const kept: Place[] = [chain[0]!];
  for (let i = 1; i < chain.length; i++) {
    const [a, b, c] = [kept.at(-1)!, chain[i]!, chain[i + 1]];
    if (c === undefined || !isBetween(a, b, c)) kept.push(b);
  }
  return kept;
}

function isBetween(a: Place, b: Place, c: Place): boolean {
  const [du, dv] = [c[0] - a[0], c[1] - a[1]];
  const size = Math.hypot(du, dv);
  if (size < POINT) return false;
  const off = Math.abs((b[0] - a[0]) * dv - (b[1] - a[1]) * du) / size;
  return off < 0.01 && (b[0] - a[0]) * du + (b[1] - a[1]) * dv > 0;
}
