import { CELL, CELL_ROW, CellKind } from "../../gaps/cells/cells.ts";
import { BOX_ROW, DEEPEST_NODE, TRIANGLE_ROW, type TriangleTree } from "../../gaps/mesh/triangleTree.ts";
import type { PartShape } from "../../gaps/partShape.ts";
import type { TriangleMesh } from "../../geometry/triangleMesh.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import type { Model } from "../model/model.ts";

const stack = new Int32Array(2 * DEEPEST_NODE);

/**
 * Distance from each vertex of a surface to the nearest body part of a side, mm: negative inside a box or
 * within a path's radius; a mesh has no inside. Infinite where the side has no part.
 * @param mesh vehicle axes, as `envelopeOf` gives it.
 */
export function bodyDistances(model: Model, side: Side, mesh: TriangleMesh): Float32Array {
  const { positions } = mesh;
  const count = positions.length / 3;
  const ySign = side === "left" ? 1 : -1;
  const out = new Float32Array(count).fill(Number.POSITIVE_INFINITY);
  for (const part of model.parts) {
    if (part.side !== side) continue;
    for (let i = 0; i < count; i++) {
      const d = partDistance(
        part.shape,
        positions[3 * i]!,
        ySign * positions[3 * i + 1]!,
        positions[3 * i + 2]!,
        out[i]!,
      );
      if (d < out[i]!) out[i] = d;
    }
  }
  return out;
}

/** Signed distance from a point to a part, both in the side's left-hand frame; no more than `most`. */
function partDistance(part: PartShape, x: number, y: number, z: number, most: number): number {
  if (part.tree) return treeDistance(part.tree, x, y, z, most);
  let least = most;
  const { cells, balls, count } = part;
  for (let i = 0; i < count; i++) {
    const dx = x - balls[4 * i]!;
    const dy = y - balls[4 * i + 1]!;
    const dz = z - balls[4 * i + 2]!;
    const far = least + balls[4 * i + 3]!;
    const at = i * CELL_ROW;
    if (cells[at] !== CellKind.Solid && far > 0 && dx * dx + dy * dy + dz * dz > far * far) continue;
    const d = cellDistance(cells, at, x, y, z);
    if (d < least) least = d;
  }
  return least;
}

function cellDistance(cells: Float64Array, at: number, x: number, y: number, z: number): number {
  const kind = cells[at];
  if (kind === CellKind.Box) return boxDistance(cells, at + 1, x, y, z);
  if (kind === CellKind.Solid) {
    // Inside, the depth under the nearest face; outside, the faces' own cells tell.
    const dx = Math.abs(x - cells[at + 1]!) - cells[at + 4]!;
    const dy = Math.abs(y - cells[at + 2]!) - cells[at + 5]!;
    const dz = Math.abs(z - cells[at + 3]!) - cells[at + 6]!;
    const d = Math.max(dx, dy, dz);
    return d < 0 ? d : Number.POSITIVE_INFINITY;
  }
  if (kind === CellKind.Triangle) return Math.sqrt(triangleSq(cells, at + 1, x, y, z));
  return Math.sqrt(segmentSq(cells, at + 1, at + 4, x, y, z)) - cells[at + CELL.radius]!;
}

/** Distance to a box from its center and half sizes; 0 inside. */
function boxDistance(rows: Float64Array, at: number, x: number, y: number, z: number): number {
  const dx = Math.max(0, Math.abs(x - rows[at]!) - rows[at + 3]!);
  const dy = Math.max(0, Math.abs(y - rows[at + 1]!) - rows[at + 4]!);
  const dz = Math.max(0, Math.abs(z - rows[at + 2]!) - rows[at + 5]!);
  return Math.sqrt(dx * dx + dy * dy + dz * dz);
}

function segmentSq(rows: Float64Array, a: number, b: number, x: number, y: number, z: number): number {
  const ex = rows[b]! - rows[a]!;
  const ey = rows[b + 1]! - rows[a + 1]!;
  const ez = rows[b + 2]! - rows[a + 2]!;
  const px = x - rows[a]!;
  const py = y - rows[a + 1]!;
  const pz = z - rows[a + 2]!;
  const sq = ex * ex + ey * ey + ez * ez;
  const share = sq > 0 ? Math.min(1, Math.max(0, (px * ex + py * ey + pz * ez) / sq)) : 0;
  const dx = px - share * ex;
  const dy = py - share * ey;
  const dz = pz - share * ez;
  return dx * dx + dy * dy + dz * dz;
}

/** Squared distance to a triangle: to its plane where the foot is inside it, else to the nearest edge. */
function triangleSq(rows: Float64Array, at: number, x: number, y: number, z: number): number {
  const a = at;
  const b = at + 3;
  const c = at + 6;
  const ux = rows[b]! - rows[a]!;
  const uy = rows[b + 1]! - rows[a + 1]!;
  const uz = rows[b + 2]! - rows[a + 2]!;
  const vx = rows[c]! - rows[a]!;
  const vy = rows[c + 1]! - rows[a + 1]!;
  const vz = rows[c + 2]! - rows[a + 2]!;
  const px = x - rows[a]!;
  const py = y - rows[a + 1]!;
  const pz = z - rows[a + 2]!;
  const nx = uy * vz - uz * vy;
  const ny = uz * vx - ux * vz;
  const nz = ux * vy - uy * vx;
  const nSq = nx * nx + ny * ny + nz * nz;
  if (nSq > 0) {
    // Shares of b and c in the foot, times n².
    const s = nx * (py * vz - pz * vy) + ny * (pz * vx - px * vz) + nz * (px * vy - py * vx);
    const t = nx * (uy * pz - uz * py) + ny * (uz * px - ux * pz) + nz * (ux * py - uy * px);
    if (s >= 0 && t >= 0 && s + t <= nSq) {
      const off = px * nx + py * ny + pz * nz;
      return (off * off) / nSq;
    }
  }
  return Math.min(
    segmentSq(rows, a, b, x, y, z),
    segmentSq(rows, b, c, x, y, z),
    segmentSq(rows, c, a, x, y, z),
  );
}

/** Distance to the nearest triangle of a tree, nearer child first; no more than `most`. */
function treeDistance(tree: TriangleTree, x: number, y: number, z: number, most: number): number {
  const { boxes, links, corners } = tree;
  let least = most;
  let open = 0;
  stack[open++] = 0;
  while (open > 0) {
    const node = stack[--open]!;
    if (boxDistance(boxes, node * BOX_ROW, x, y, z) >= least) continue;
    const first = links[2 * node]!;
    const size = links[2 * node + 1]!;
    for (let i = 0; i < size; i++) {
      const d = Math.sqrt(triangleSq(corners, (first + i) * TRIANGLE_ROW, x, y, z));
      if (d < least) least = d;
    }
    if (size > 0) continue;
    const near = boxDistance(boxes, (node + 1) * BOX_ROW, x, y, z);
    const far = boxDistance(boxes, first * BOX_ROW, x, y, z);
    stack[open++] = near <= far ? first : node + 1;
    stack[open++] = near <= far ? node + 1 : first;
  }
  return least;
}
