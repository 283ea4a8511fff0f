import type { PartInput } from "../../src/gaps/partShape.ts";
import { addScaled, dot, length, sub, type Vec3, vecAt } from "../../src/geometry/vec.ts";

/** Distance from a point to a segment, mm. */
function toSegment(p: Vec3, a: Vec3, b: Vec3): number {
  const along = sub(b, a);
  const sq = dot(along, along);
  const share = sq > 0 ? Math.min(1, Math.max(0, dot(sub(p, a), along) / sq)) : 0;
  return length(sub(p, addScaled(a, along, share)));
}

/** Distance from a point to a triangle, mm: the foot on its plane where that lies inside, else its edges. */
function toTriangle(p: Vec3, a: Vec3, b: Vec3, c: Vec3): number {
  const edges = Math.min(toSegment(p, a, b), toSegment(p, b, c), toSegment(p, c, a));
  const u = sub(b, a);
  const v = sub(c, a);
  const w = sub(p, a);
  const [uu, uv, vv, wu, wv] = [dot(u, u), dot(u, v), dot(v, v), dot(w, u), dot(w, v)];
  const det = uu * vv - uv * uv;
  const s = (wu * vv - wv * uv) / det;
  const t = (wv * uu - wu * uv) / det;
  if (!(det > 0 && s >= 0 && t >= 0 && s + t <= 1)) return edges;
  return Math.min(edges, length(sub(w, addScaled([u[0] * s, u[1] * s, u[2] * s], v, t))));
}

/** Distance from a point to a part, 0 on it: a path with its radius and a box are solid, a mesh is a surface; mm. */
export function distanceToPart(part: PartInput, p: Vec3): number {
  if (part.kind === "box") {
    return Math.hypot(...p.map((x, i) => Math.max(part.min[i]! - x, 0, x - part.max[i]!)));
  }
  if (part.kind === "path") {
    const legs = part.points.map((from, i) => toSegment(p, from, part.points[i + 1] ?? from));
    return Math.max(0, Math.min(...legs) - part.radius);
  }
  const { positions, triangles } = part;
  const corner = (i: number) => vecAt(positions, 3 * triangles[i]!);
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < triangles.length; i += 3)
    least = Math.min(least, toTriangle(p, corner(i), corner(i + 1), corner(i + 2)));
  return least;
}
