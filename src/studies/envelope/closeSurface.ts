import type { TriangleMesh } from "../../geometry/triangleMesh.ts";

/** A surface on which every edge belongs to two triangles, and which of the old vertices each one stands for. */
export interface ClosedSurface extends TriangleMesh {
  readonly source: Uint32Array;
}

/** Rounds of cutting edges that two sheets share at both ends; one does unless cuts get in each other's way. */
const MOST_ROUNDS = 16;

/**
 * Parts sheets that merely touch: where more than two triangles meet in an edge they are paired around it, and
 * a vertex where several fans of triangles meet is doubled. Where two sheets still share both ends of an edge,
 * one of them gets a vertex in its middle. Places do not change.
 * @throws RangeError when the surface is not closed to begin with.
 */
export function closeSurface(surface: TriangleMesh): ClosedSurface {
  let positions = surface.positions;
  let triangles = surface.triangles.slice();
  let source = Uint32Array.from({ length: positions.length / 3 }, (_, i) => i);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const twins = twinsOf(positions, triangles);
    const parted = partFans(triangles, twins, positions.length / 3);
    positions = withCopies(positions, parted, 3);
    source = withCopies(source, parted, 1);
    const cut = sharedEdges(triangles, twins, positions.length / 3);
    if (cut.length === 0) return { positions, triangles, source };
    const more: number[] = [];
    const middles: number[] = [];
    for (const h of cut) {
      const middle = positions.length / 3 + middles.length;
      middles.push(h);
      more.push(...cutTriangle(triangles, h, middle), ...cutTriangle(triangles, twins[h]!, middle));
    }
    const grown = new Float64Array(positions.length + 3 * middles.length);
    grown.set(positions);
    const grownSource = new Uint32Array(source.length + middles.length);
    grownSource.set(source);
    middles.forEach((h, i) => {
      // The first half of a cut triangle keeps its place and its first corner; the other end is at the twin's.
      const a = triangles[h]!;
      const b = triangles[twins[h]!]!;
      for (let axis = 0; axis < 3; axis++) {
        grown[positions.length + 3 * i + axis] = 0.5 * (positions[3 * a + axis]! + positions[3 * b + axis]!);
      }
      grownSource[source.length + i] = source[a]!;
    });
    const all = new Uint32Array(triangles.length + more.length);
    all.set(triangles);
    all.set(more, triangles.length);
    positions = grown;
    source = grownSource;
    triangles = all;
  }
  throw new RangeError("closeSurface: sheets could not be parted");
}

function nextOf(h: number): number {
  return h % 3 === 2 ? h - 2 : h + 1;
}

/** Cuts the triangle of half-edge h at its middle: the first half stays, the second is returned. */
function cutTriangle(triangles: Uint32Array, h: number, middle: number): [number, number, number] {
  const next = nextOf(h);
  const far = triangles[nextOf(next)]!;
  const end = triangles[next]!;
  triangles[next] = middle;
  return [middle, end, far];
}

/** For each half-edge (corner of a triangle to the next corner) the one that runs back along it. */
function twinsOf(positions: Float64Array, triangles: Uint32Array): Int32Array {
  const twins = new Int32Array(triangles.length).fill(-1);
  const { starts, halves } = byLowEnd(triangles, positions.length / 3);
  for (let v = 0; v + 1 < starts.length; v++) {
    for (let i = starts[v]!; i < starts[v + 1]!; i++) {
      const h = halves[i]!;
      if (twins[h] !== -1) continue;
      const other = highEnd(triangles, h);
      const same: number[] = [];
      for (let j = starts[v]!; j < starts[v + 1]!; j++) {
        if (highEnd(triangles, halves[j]!) === other) same.push(halves[j]!);
      }
      pairUp(positions, triangles, v, other, same, twins);
    }
  }
  return twins;
}

function highEnd(triangles: Uint32Array, h: number): number {
  return Math.max(triangles[h]!, triangles[nextOf(h)]!);
}

/** Half-edges sorted by the lower of their two vertex numbers. */
function byLowEnd(triangles: Uint32Array, vertices: number): { starts: Int32Array; halves: Int32Array } {
  const starts = new Int32Array(vertices + 1);
  for (let h = 0; h < triangles.length; h++) starts[Math.min(triangles[h]!, triangles[nextOf(h)]!) + 1]!++;
  for (let v = 0; v < vertices; v++) starts[v + 1]! += starts[v]!;
  const at = starts.slice();
  const halves = new Int32Array(triangles.length);
  for (let h = 0; h < triangles.length; h++) {
    halves[at[Math.min(triangles[h]!, triangles[nextOf(h)]!)]!++] = h;
  }
  return { starts, halves };
}

/**
 * Pairs the half-edges of one edge. Around it, seen along low → high, a triangle that runs that way has the
 * inside before it, one that runs back has it after it: each of the latter goes with the next of the former.
 */
function pairUp(
  positions: Float64Array,
  triangles: Uint32Array,
  low: number,
  high: number,
  same: number[],
  twins: Int32Array,
): void {
  const forth = same.filter((h) => triangles[h] === low);
  if (2 * forth.length !== same.length) throw new RangeError(`closeSurface: open edge at vertex ${low}`);
  if (same.length === 2) {
    twins[same[0]!] = same[1]!;
    twins[same[1]!] = same[0]!;
    return;
  }
  const angles = new Map(
    same.map((h) => [h, angleAbout(positions, low, high, triangles[nextOf(nextOf(h))]!)]),
  );
  const free = new Set(forth);
  const back = same.filter((h) => triangles[h] !== low).sort((a, b) => angles.get(a)! - angles.get(b)!);
  for (const h of back) {
    let best = -1;
    let least = Number.POSITIVE_INFINITY;
    for (const f of free) {
      const turn = (angles.get(f)! - angles.get(h)! + 4 * Math.PI) % (2 * Math.PI);
      if (turn < least) {
        least = turn;
        best = f;
      }
    }
    free.delete(best);
    twins[h] = best;
    twins[best] = h;
  }
}

/** Angle of a point about the line from one vertex to another. */
function angleAbout(positions: Float64Array, low: number, high: number, point: number): number {
  const e = [0, 1, 2].map((i) => positions[3 * high + i]! - positions[3 * low + i]!) as [
    number,
    number,
    number,
  ];
  const d = [0, 1, 2].map((i) => positions[3 * point + i]! - positions[3 * low + i]!) as [
    number,
    number,
    number,
  ];
  // A frame across the line, from the axis it leans on least.
  const axis =
    Math.abs(e[0]) <= Math.abs(e[1]) && Math.abs(e[0]) <= Math.abs(e[2])
      ? 0
      : Math.abs(e[1]) <= Math.abs(e[2])
        ? 1
        : 2;
  const s: [number, number, number] = [axis === 0 ? 1 : 0, axis === 1 ? 1 : 0, axis === 2 ? 1 : 0];
  const u = crossOf(e, s);
  const v = crossOf(e, u);
  const length = Math.hypot(...e);
  const dot = (a: readonly number[], b: readonly number[]) => a[0]! * b[0]! + a[1]! * b[1]! + a[2]! * b[2]!;
  return Math.atan2(dot(d, v) / (length || 1), dot(d, u));
}

function crossOf(a: readonly number[], b: readonly number[]): [number, number, number] {
  return [a[1]! * b[2]! - a[2]! * b[1]!, a[2]! * b[0]! - a[0]! * b[2]!, a[0]! * b[1]! - a[1]! * b[0]!];
}

/** Gives each fan of triangles about a vertex a vertex of its own. @returns which vertices were doubled. */
function partFans(triangles: Uint32Array, twins: Int32Array, vertices: number): number[] {
  const seen = new Uint8Array(triangles.length);
  const used = new Uint8Array(vertices);
  const copies: number[] = [];
  for (let start = 0; start < triangles.length; start++) {
    if (seen[start] === 1) continue;
    const v = triangles[start]!;
    const isFirst = used[v] === 0;
    used[v] = 1;
    const own = isFirst ? v : vertices + copies.length;
    if (!isFirst) copies.push(v);
    let h = start;
    do {
      seen[h] = 1;
      triangles[h] = own;
      h = twins[nextOf(nextOf(h))]!;
    } while (h !== start);
  }
  return copies;
}

function withCopies<T extends Float64Array | Uint32Array>(
  from: T,
  copies: readonly number[],
  per: number,
): T {
  if (copies.length === 0) return from;
  const out = new (from.constructor as new (length: number) => T)(from.length + per * copies.length);
  out.set(from);
  copies.forEach((v, i) => {
    for (let k = 0; k < per; k++) out[from.length + per * i + k] = from[per * v + k]!;
  });
  return out;
}

/** One half-edge of each pair whose two vertices another pair shares, no two of them on one triangle. */
function sharedEdges(triangles: Uint32Array, twins: Int32Array, vertices: number): number[] {
  const { starts, halves } = byLowEnd(triangles, vertices);
  const touched = new Set<number>();
  const found: number[] = [];
  for (let v = 0; v < vertices; v++) {
    for (let i = starts[v]!; i < starts[v + 1]!; i++) {
      const h = halves[i]!;
      if (triangles[h] !== v) continue;
      const other = highEnd(triangles, h);
      let first = h;
      for (let j = starts[v]!; j < i; j++) {
        if (triangles[halves[j]!] === v && highEnd(triangles, halves[j]!) === other) first = halves[j]!;
      }
      if (first === h) continue;
      const mine = [Math.floor(h / 3), Math.floor(twins[h]! / 3)];
      if (mine.some((t) => touched.has(t))) continue;
      for (const t of mine) touched.add(t);
      found.push(h);
    }
  }
  return found;
}
