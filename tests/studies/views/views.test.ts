import { describe, expect, it } from "vitest";
import type { TriangleMesh } from "../../../src/geometry/triangleMesh.ts";
import { plateMesh } from "../../../src/studies/knuckleSolid/plateMesh.ts";
import { projectedView } from "../../../src/studies/views/hiddenLines.ts";
import { seenAt, slicedBodies, VIEWS } from "../../../src/studies/views/viewAxes.ts";

/** A block with its faces square to the axes. */
function block([x0, y0, z0]: readonly number[], [x1, y1, z1]: readonly number[]): TriangleMesh {
  return plateMesh(
    {
      name: "block",
      material: null,
      thickness: z1! - z0!,
      at: [0, 0, (z0! + z1!) / 2],
      across: [1, 0, 0],
      up: [0, 1, 0],
      outline: [
        [x0!, y0!],
        [x1!, y0!],
        [x1!, y1!],
        [x0!, y1!],
      ],
      holes: [],
    },
    12,
  );
}

function total(lines: readonly ArrayLike<number>[]): number {
  let sum = 0;
  for (const points of lines)
    for (let i = 2; i < points.length; i += 2)
      sum += Math.hypot(points[i]! - points[i - 2]!, points[i + 1]! - points[i - 1]!);
  return sum;
}

describe("a known point in each view", () => {
  it("from the front outboard lies right, from outboard forward lies left, from above forward lies down", () => {
    const point = [10, 20, 30] as const;
    expect(seenAt(VIEWS.front, point)).toEqual([20, 30]);
    expect(seenAt(VIEWS.side, point)).toEqual([-10, 30]);
    expect(seenAt(VIEWS.top, point)).toEqual([20, -10]);
  });

  it("no view is mirrored: right, up and toward the viewer are right-handed", () => {
    for (const { right, up, toward } of Object.values(VIEWS)) {
      const [a, b] = [right, up];
      expect(
        [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]].map((x) => x + 0),
      ).toEqual(toward.map((x) => x + 0));
    }
  });
});

describe("what is seen and what is hidden", () => {
  it("a block alone shows its outline once; its far edges lie under the near ones", () => {
    const { seen, hidden } = projectedView([block([0, 0, 0], [10, 20, 30])], VIEWS.front);
    expect(total(seen)).toBeCloseTo(2 * (20 + 30), 6);
    expect(total(hidden)).toBeCloseTo(2 * (20 + 30), 6);
    expect(seen.length).toBe(1);
  });

  it("a small block behind a large one is hidden from the front, and seen from above", () => {
    const large = block([50, -40, -40], [60, 40, 40]);
    const small = block([0, -10, -10], [20, 10, 10]);
    const front = projectedView([large, small], VIEWS.front);
    expect(total(front.seen)).toBeCloseTo(320, 6);
    expect(total(front.hidden)).toBeGreaterThan(80 - 1e-6);
    const above = projectedView([large, small], VIEWS.top);
    expect(total(above.seen)).toBeCloseTo(2 * (80 + 10) + 80, 6);
  });

  it("an edge is seen as far as it stands out", () => {
    const front = block([50, -40, 0], [60, 40, 40]);
    const post = block([0, -5, -30], [10, 5, 100]);
    const { seen } = projectedView([front, post], VIEWS.front);
    // The post: 30 below and 60 above on both sides, and its two ends.
    const sides = seen.flatMap((points) => {
      const lengths: number[] = [];
      for (let i = 2; i < points.length; i += 2)
        if (
          Math.abs(Math.abs(points[i]!) - 5) < 1e-6 &&
          Math.abs(Math.abs(points[i - 2]!) - 5) < 1e-6 &&
          points[i] === points[i - 2]
        )
          lengths.push(Math.abs(points[i + 1]! - points[i - 1]!));
      return lengths;
    });
    expect(sides.reduce((a, b) => a + b, 0)).toBeCloseTo(2 * 90, 0);
  });
});

describe("a cut", () => {
  it("has the outline of the block where the plane meets it, and none where it misses", () => {
    const [outlines] = slicedBodies([block([0, 0, 0], [10, 20, 30])], 5);
    expect(
      outlines!.map((points) => total([points, [points.at(-2)!, points.at(-1)!, points[0]!, points[1]!]])),
    ).toEqual([expect.closeTo(100, 6)]);
    expect(slicedBodies([block([0, 0, 0], [10, 20, 30])], 15)).toEqual([[]]);
  });
});
