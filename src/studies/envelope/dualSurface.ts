import type { TriangleMesh } from "../../geometry/triangleMesh.ts";
import { TreeContour } from "./contourTree.ts";
import type { EnvelopeTree } from "./envelopeTree.ts";

/** Steps toward the surface a vertex takes; each leaves a small share of the error. */
const STEPS = 5;
/** mm. A vertex this near to where it should be stays. */
const CLOSE = 0.01;
/** Microseconds, about, of placing one. */
const VERTEX_WORK = 20;
/** How far outside its cube a vertex may go, as a share of the cube's side. */
const OVERHANG = 0.3;

/** The surface of a tree, with the leaf that each vertex stands for. */
export interface DualSurface extends TriangleMesh {
  readonly leaves: Int32Array;
}

/**
 * One vertex in each leaf that a polygon meets: the middle of the crossings on its edges, moved along the
 * gradient until its distance to what the ring sweeps is `offset`. Left-hand frame, mm.
 * @returns null when the tree's budget was spent first.
 */
export function dualSurface(tree: EnvelopeTree, offset: number): DualSurface | null {
  const { quads, count, crossings } = new TreeContour(tree, offset);
  const vertexOf = new Int32Array(tree.count).fill(-1);
  let vertices = 0;
  for (let i = 0; i < 4 * count; i++) {
    if (vertexOf[quads[i]!] === -1) vertexOf[quads[i]!] = vertices++;
  }
  const positions = new Float64Array(3 * vertices);
  const leaves = new Int32Array(vertices);
  for (let node = 0; node < tree.count; node++) {
    if (vertexOf[node] === -1) continue;
    if (tree.budget.isSpent(VERTEX_WORK)) return null;
    leaves[vertexOf[node]!] = node;
    placeVertex(tree, node, offset, crossings, positions, vertexOf[node]!);
  }
  const triangles = new Uint32Array(6 * count);
  let corners = 0;
  for (let q = 0; q < count; q++) {
    const a = vertexOf[quads[4 * q]!]!;
    const b = vertexOf[quads[4 * q + 1]!]!;
    const c = vertexOf[quads[4 * q + 2]!]!;
    const d = vertexOf[quads[4 * q + 3]!]!;
    // Across the shorter diagonal.
    const turned = c !== d && apartSq(positions, b, d) < apartSq(positions, a, c);
    corners = triangle(triangles, corners, turned ? b : a, turned ? c : b, turned ? d : c);
    if (c !== d) corners = triangle(triangles, corners, turned ? b : a, turned ? d : c, turned ? a : d);
  }
  return { positions, triangles: triangles.slice(0, corners), leaves };
}

function triangle(out: Uint32Array, at: number, a: number, b: number, c: number): number {
  out[at] = a;
  out[at + 1] = b;
  out[at + 2] = c;
  return at + 3;
}

function apartSq(positions: Float64Array, a: number, b: number): number {
  const x = positions[3 * a]! - positions[3 * b]!;
  const y = positions[3 * a + 1]! - positions[3 * b + 1]!;
  const z = positions[3 * a + 2]! - positions[3 * b + 2]!;
  return x * x + y * y + z * z;
}

function placeVertex(
  tree: EnvelopeTree,
  node: number,
  offset: number,
  crossings: Float64Array,
  positions: Float64Array,
  vertex: number,
): void {
  const { swept, poses: listed, poseFrom, poseTo, step, origin, corner, size } = tree;
  const share = 1 / crossings[4 * node + 3]!;
  const side = size[node]! * step;
  let x = crossings[4 * node]! * share;
  let y = crossings[4 * node + 1]! * share;
  let z = crossings[4 * node + 2]! * share;
  const x0 = origin[0] + corner[3 * node]! * step - OVERHANG * side;
  const y0 = origin[1] + corner[3 * node + 1]! * step - OVERHANG * side;
  const z0 = origin[2] + corner[3 * node + 2]! * step - OVERHANG * side;
  const width = side * (1 + 2 * OVERHANG);
  let bestX = x;
  let bestY = y;
  let bestZ = z;
  let least = Number.POSITIVE_INFINITY;
  // A leaf without poses is free of surface: only its neighbors' polygons meet it.
  for (let i = 0; i <= STEPS && poseTo[node]! > poseFrom[node]!; i++) {
    swept.look(x, y, z, listed, poseFrom[node]!, poseTo[node]!);
    const off = swept.found[0]! - offset;
    if (Math.abs(off) < least) {
      least = Math.abs(off);
      bestX = x;
      bestY = y;
      bestZ = z;
    }
    if (least < CLOSE) break;
    x = clamp(x - off * swept.found[3]!, x0, width);
    y = clamp(y - off * swept.found[4]!, y0, width);
    z = clamp(z - off * swept.found[5]!, z0, width);
  }
  positions[3 * vertex] = bestX;
  positions[3 * vertex + 1] = bestY;
  positions[3 * vertex + 2] = bestZ;
}

function clamp(value: number, low: number, width: number): number {
  return value < low ? low : value > low + width ? low + width : value;
}
