import type { TriangleMesh } from "../../geometry/triangleMesh.ts";
import { joinPieces, type Piece } from "./joinPieces.ts";
import type { Outline } from "./outline.ts";
import { type SectionPlane, sheetAxes } from "./outline.ts";

/**
 * Cuts a mesh by a plane. A vertex exactly on the plane counts as above it (symbolic perturbation: the plane is
 * taken to lie a hair lower), so that every triangle is cut in one piece or not at all and no case is special;
 * the places of the cuts are still those of the plane itself. Where the mesh is closed, each edge that is cut
 * has a triangle on either side, and every outline closes. Counterclockwise on the sheet around the solid,
 * clockwise around a hole, where the mesh is counterclockwise seen from outside. Open meshes (scans) give open
 * outlines at their borders. Exact but for rounding; costs one pass over the triangles.
 *
 * Triangles belong together where they share vertex numbers; only if that leaves an outline open, also where
 * different vertices are in the same place: meshes typed by hand and scans repeat theirs, while a closed mesh may do so
 * on purpose, to keep apart sheets that touch.
 */
export function sliceMesh(mesh: TriangleMesh, plane: SectionPlane): Outline[] {
  const outlines = slicedBy(mesh, plane, false);
  return outlines.every(({ closed }) => closed) ? outlines : slicedBy(mesh, plane, true);
}

function slicedBy(mesh: TriangleMesh, plane: SectionPlane, weld: boolean): Outline[] {
  const { positions, triangles } = mesh;
  const { normal, facing } = sheetAxes(plane);
  const { at } = plane;
  const cut = new CutEdges(mesh, plane, weld);
  const pieces: Piece[] = [];
  for (let t = 0; t < triangles.length; t += 3) {
    const a = triangles[t]!;
    const b = triangles[t + 1]!;
    const c = triangles[t + 2]!;
    const aboveA = positions[3 * a + normal]! >= at;
    const aboveB = positions[3 * b + normal]! >= at;
    const aboveC = positions[3 * c + normal]! >= at;
    if (aboveA === aboveB && aboveB === aboveC) continue;
    // The vertex alone on its side, then the other two in the triangle's order.
    const [lone, next, last, loneAbove] =
      aboveB === aboveC ? [a, b, c, aboveA] : aboveC === aboveA ? [b, c, a, aboveB] : [c, a, b, aboveC];
    const first = cut.node(lone, next);
    const second = cut.node(last, lone);
    // Outside lies to the right of the way: from the edge that goes up through the plane to the one that comes down.
    const forward = loneAbove === facing > 0;
    pieces.push(forward ? { from: first, to: second } : { from: second, to: first });
  }
  return joinPieces(pieces, cut.points);
}

/** The cuts through edges, one point an edge, whichever triangle asks. */
class CutEdges {
  /** u, v of each cut. */
  readonly points: number[] = [];
  private readonly byEdge = new Map<number, number>();
  private readonly welded = new Map<string, number>();
  private readonly right: number;
  private readonly up: number;
  private readonly normal: number;

  constructor(
    private readonly mesh: TriangleMesh,
    private readonly plane: SectionPlane,
    private readonly weld: boolean,
  ) {
    ({ right: this.right, up: this.up, normal: this.normal } = sheetAxes(plane));
  }

  node(a: number, b: number): number {
    const p = this.vertex(a);
    const q = this.vertex(b);
    const low = Math.min(p, q);
    const high = Math.max(p, q);
    const key = low * (this.mesh.positions.length / 3) + high;
    const known = this.byEdge.get(key);
    if (known !== undefined) return known;
    const number = this.points.length / 2;
    const { positions } = this.mesh;
    const from = positions[3 * low + this.normal]!;
    // Both ends lie on different sides, the plane's own counted above: they differ, and no share is past 0 … 1.
    const share = (this.plane.at - from) / (positions[3 * high + this.normal]! - from);
    for (const axis of [this.right, this.up]) {
      const start = positions[3 * low + axis]!;
      const end = positions[3 * high + axis]!;
      this.points.push(share === 1 ? end : start + share * (end - start));
    }
    this.byEdge.set(key, number);
    return number;
  }

  /** The first vertex met at the same place, where vertices are welded. */
  private vertex(number: number): number {
    if (!this.weld) return number;
    const { positions } = this.mesh;
    const at = 3 * number;
    const key = `${positions[at]! + 0},${positions[at + 1]! + 0},${positions[at + 2]! + 0}`;
    const known = this.welded.get(key);
    if (known !== undefined) return known;
    this.welded.set(key, number);
    return number;
  }
}
