import { describe, expect, it } from "vitest";
import { ringShapeOf } from "../../../src/gaps/ring/ringShape.ts";
import { cross, dot, normalize, type Vec3 } from "../../../src/geometry/vec.ts";
import type { SectionPlane } from "../../../src/studies/section/outline.ts";
import { outlineArea } from "../../../src/studies/section/outline.ts";
import { ringMesh } from "../../../src/studies/section/placedBody.ts";
import { sliceMesh } from "../../../src/studies/section/sliceMesh.ts";
import { sliceRing } from "../../../src/studies/section/sliceRing.ts";

// A tire's section with a sidewall that bulges, on a barrel: 0.7 m across.
const ring = ringShapeOf([-95, 190, -110, 260, -85, 345, 85, 345, 110, 260, 95, 190], 175);
const CENTER: Vec3 = [12, 780, 340];
const AXES = [
  normalize([0, 1, 0]),
  normalize([0.3, 1, -0.05]),
  normalize([-0.6, 0.8, 0.04]),
] as const satisfies readonly Vec3[];
const NORMALS: Readonly<Record<"x" | "z", Vec3>> = { x: [1, 0, 0], z: [0, 0, 1] };

/** Area inside loops that run either way and do not overlap, in the plane, mm². */
function area(loops: readonly (readonly Vec3[])[], normal: Vec3): number {
  return loops.reduce((sum, loop) => {
    const twice = loop.reduce(
      (all, point, i) => all + dot(normal, cross(point, loop[(i + 1) % loop.length]!)),
      0,
    );
    return sum + Math.abs(twice) / 2;
  }, 0);
}

describe.each(["x", "z"] as const)("tire and rim cut by a plane of %s", (name) => {
  const normal = NORMALS[name];
  const middle = dot(CENTER, normal);
  it.each([0, 40, -120, 170, 181, 240, -300, 342])(
    "%i mm off the middle, is what its mesh is there",
    (off) => {
      for (const axis of AXES) {
        const plane: SectionPlane = { axis: name, at: middle + off };
        const mesh = sliceMesh(ringMesh(ring, CENTER, axis), plane);
        const meshArea = mesh.reduce((sum, outline) => sum + outlineArea(outline), 0);
        const { loops, halves } = sliceRing(ring, CENTER, axis, normal, plane.at);
        const found = area(loops, normal);
        // The mesh has flat sides inside the round; both are a hair too small.
        expect(Math.abs(found - meshArea), `${off} ${axis}`).toBeLessThan(0.01 * meshArea + 8);
        expect(area(halves[0], normal) + area(halves[1], normal)).toBeCloseTo(found, 3);
        for (const point of loops.flat()) expect(dot(point, normal)).toBeCloseTo(plane.at, 6);
      }
    },
  );

  it("is nothing where the plane misses it", () => {
    expect(sliceRing(ring, CENTER, [0, 1, 0], normal, middle + 346).loops).toEqual([]);
  });
});

it("cut from the front, the first half is the upper one of an outboard wheel", () => {
  const [upper, lower] = sliceRing(ring, CENTER, [0, 1, 0], [1, 0, 0], CENTER[0] + 30).halves;
  expect(Math.min(...upper.flat().map(([, , z]) => z))).toBeGreaterThan(CENTER[2]);
  expect(Math.max(...lower.flat().map(([, , z]) => z))).toBeLessThan(CENTER[2]);
});

it("a plane square to the axle has no such cut", () => {
  expect(() => sliceRing(ring, CENTER, [0, 1, 0], [0, 1, 0], 780)).toThrow(RangeError);
});
