import { describe, expect, it } from "vitest";
import {
  BOX_ROW,
  DEEPEST_NODE,
  TRIANGLE_ROW,
  type TriangleTree,
  triangleTree,
} from "../../../src/gaps/mesh/triangleTree.ts";
import { noise, sheet } from "./sheets.ts";

/** Walks the whole tree: every box holds what is below it, every triangle is in one leaf. @returns the depth. */
function expectSound(tree: TriangleTree): number {
  const seen = new Uint8Array(tree.count);
  let deepest = 0;
  const walk = (node: number, depth: number): number[] => {
    deepest = Math.max(deepest, depth);
    const first = tree.links[2 * node]!;
    const size = tree.links[2 * node + 1]!;
    const below: number[] = [];
    if (size > 0) {
      for (let i = first; i < first + size; i++) {
        seen[i]!++;
        below.push(i);
      }
    } else below.push(...walk(node + 1, depth + 1), ...walk(first, depth + 1));
    for (const triangle of below) {
      for (let k = 0; k < TRIANGLE_ROW; k++) {
        const off = Math.abs(
          tree.corners[triangle * TRIANGLE_ROW + k]! - tree.boxes[node * BOX_ROW + (k % 3)]!,
        );
        if (!(off <= tree.boxes[node * BOX_ROW + 3 + (k % 3)]!))
          expect.fail(`node ${node} leaves out triangle ${triangle} by ${off}`);
      }
    }
    return below;
  };
  expect(walk(0, 1)).toHaveLength(tree.count);
  expect(seen.every((times) => times === 1)).toBe(true);
  expect(deepest).toBeLessThanOrEqual(DEEPEST_NODE);
  return deepest;
}

/** The triangles of a mesh, each as text, in any order. */
function sorted(corners: ArrayLike<number>): string[] {
  const rows: string[] = [];
  for (let i = 0; i < corners.length; i += TRIANGLE_ROW)
    rows.push(Array.from({ length: TRIANGLE_ROW }, (_, k) => corners[i + k]!).join(" "));
  return rows.sort();
}

function cornersOf(positions: Float64Array, triangles: Uint32Array, ySign = 1): number[] {
  return [...triangles].flatMap((v) => [
    positions[3 * v]!,
    ySign * positions[3 * v + 1]!,
    positions[3 * v + 2]!,
  ]);
}

describe("the tree of a mesh", () => {
  it("holds every triangle once, within every box above it, as flat as a tree of its size can be expected", () => {
    const mesh = sheet([100, 700, 400], [1, 2, 3], 300, 60, 2, 60, 11);
    const tree = triangleTree(mesh.positions, mesh.triangles);
    expect(expectSound(tree)).toBeLessThan(2 * Math.log2(tree.count));
    expect(sorted(tree.corners)).toEqual(sorted(cornersOf(mesh.positions, mesh.triangles)));
  });

  it("mirrors its triangles for the other side", () => {
    const mesh = sheet([100, 700, 400], [1, 2, 3], 300, 60, 2, 12, 12);
    const tree = triangleTree(mesh.positions, mesh.triangles, -1);
    expectSound(tree);
    expect(sorted(tree.corners)).toEqual(sorted(cornersOf(mesh.positions, mesh.triangles, -1)));
  });

  it("is sound where many triangles are the same, are points, or stand one within the other", () => {
    const same = new Uint32Array(3 * 1000).map((_, i) => i % 3);
    expectSound(triangleTree(Float64Array.from([0, 0, 0, 10, 0, 0, 0, 10, 0]), same));
    const dots = new Uint32Array(3 * 100).map((_, i) => Math.floor(i / 3) % 5);
    expectSound(
      triangleTree(
        Float64Array.from({ length: 15 }, (_, i) => i),
        dots,
      ),
    );
    // Each a thousandth of the one before it: cutting by space alone would take off one at a time.
    const nested: number[] = [];
    for (let i = 0; i < 300; i++) {
      const size = 1000 * 0.9 ** i;
      nested.push(0, 0, 0, size, 0, 0, 0, size, size);
    }
    const all = new Uint32Array(nested.length / 3).map((_, i) => i);
    expectSound(triangleTree(Float64Array.from(nested), all));
  });

  it("is sound on triangles of all sizes thrown at random, 10 m from the origin", () => {
    const random = noise(5);
    const positions = Float64Array.from({ length: 9 * 3000 }, (_, i) => {
      const size = 10 ** (3 * Math.abs(Math.sin(Math.floor(i / 9))));
      return 10_000 + size * random();
    });
    expectSound(
      triangleTree(
        positions,
        new Uint32Array(9000).map((_, i) => i),
      ),
    );
  });

  it("refuses a mesh without triangles", () => {
    expect(() => triangleTree(new Float64Array(9), new Uint32Array(0))).toThrow(RangeError);
  });
});
