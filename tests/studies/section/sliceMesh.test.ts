import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { TriangleMesh } from "../../../src/geometry/triangleMesh.ts";
import type { SectionPlane } from "../../../src/studies/section/outline.ts";
import { type Outline, outlineArea } from "../../../src/studies/section/outline.ts";
import { sliceMesh } from "../../../src/studies/section/sliceMesh.ts";
import { solidModeler } from "../../reference/mesh/solids.ts";
import { runs } from "../../runs.ts";
import { ball, boxMesh, meshOf, meshVolume, torus } from "./solidMeshes.ts";

const area = (outlines: readonly Outline[]) => outlines.reduce((sum, one) => sum + outlineArea(one), 0);
const AXES = ["x", "y", "z"] as const;

function expectClosed(outlines: readonly Outline[]): void {
  for (const { closed, points } of outlines) {
    expect(closed).toBe(true);
    expect(points.every(Number.isFinite)).toBe(true);
  }
}

/** Area of a regular polygon with its corners on a circle. */
const polygonArea = (radius: number, sides: number) =>
  (sides / 2) * radius ** 2 * Math.sin((2 * Math.PI) / sides);

describe("known sections", () => {
  it("a box gives its rectangle at every plane through it, in the truck's own coordinates", () => {
    const box = boxMesh([1, 2, 3], [11, 22, 43]);
    expect(meshVolume(box)).toBeCloseTo(8000, 9);
    const seen = { x: [2, 3, 22, 43], y: [1, 3, 11, 43], z: [1, 2, 11, 22] };
    for (const axis of AXES) {
      const [outline, ...more] = sliceMesh(box, { axis, at: 7 });
      expect(more).toEqual([]);
      const us = [...outline!.points].filter((_, i) => i % 2 === 0);
      const vs = [...outline!.points].filter((_, i) => i % 2 === 1);
      const bounds = [Math.min(...us), Math.min(...vs), Math.max(...us), Math.max(...vs)];
      expect(bounds).toEqual(seen[axis]);
      const [u0, v0, u1, v1] = seen[axis] as [number, number, number, number];
      // Counterclockwise on each of the three sheets.
      expect(outlineArea(outline!)).toBeCloseTo((u1 - u0) * (v1 - v0), 9);
    }
  });

  it("a ball gives circles, less what its flat sides leave out", () => {
    const mesh = ball(100, 5);
    // Longest edge of the mesh from the middle of a halved octant: the chords stand off by less than this.
    const offChord = 100 * (1 - Math.cos(Math.PI / 4 / 2 ** 4));
    for (const axis of AXES) {
      for (const at of [-99, -60.3, 0, 0.1, 25, 70.71, 98]) {
        const outlines = sliceMesh(mesh, { axis, at });
        expectClosed(outlines);
        expect(outlines).toHaveLength(1);
        const round = Math.PI * (100 ** 2 - at ** 2);
        const inner = Math.max(0, (100 - offChord) ** 2 - at ** 2);
        expect(area(outlines)).toBeLessThanOrEqual(round);
        expect(area(outlines)).toBeGreaterThanOrEqual(Math.PI * inner * 0.99);
      }
    }
  });

  it("a torus gives two circles lengthwise, and a circle with a hole across", () => {
    const [major, minor, sides] = [100, 30, 256];
    const mesh = torus(major, minor, sides);
    expect(meshVolume(mesh)).toBeGreaterThan(0);
    const lengthwise = sliceMesh(mesh, { axis: "y", at: 0 });
    expectClosed(lengthwise);
    expect(lengthwise).toHaveLength(2);
    for (const one of lengthwise) expect(outlineArea(one)).toBeCloseTo(polygonArea(minor, sides), 6);

    const across = sliceMesh(mesh, { axis: "z", at: 0 });
    expectClosed(across);
    expect(across.map(outlineArea).sort((a, b) => b - a)).toEqual([
      expect.closeTo(polygonArea(major + minor, sides), 6),
      expect.closeTo(-polygonArea(major - minor, sides), 6),
    ]);
  });

  it("a plane that misses gives nothing, one that touches a corner or lies in a face gives no open line", () => {
    const box = boxMesh([0, 0, 0], [10, 20, 30]);
    expect(sliceMesh(box, { axis: "z", at: 30.001 })).toEqual([]);
    expect(sliceMesh(box, { axis: "z", at: -0.001 })).toEqual([]);
    // The upper face is above the plane, the lower one too: only the first is cut off from the rest.
    expect(area(sliceMesh(box, { axis: "z", at: 30 }))).toBeCloseTo(200, 9);
    expect(sliceMesh(box, { axis: "z", at: 0 })).toEqual([]);
    const tip = ball(100, 0);
    expect(sliceMesh(tip, { axis: "z", at: 100 })).toEqual([]);
    expect(sliceMesh(tip, { axis: "z", at: -100 })).toEqual([]);
  });
});

describe("planes through corners and edges", () => {
  it("the octahedron through four of its corners closes, and has the square's area", () => {
    for (const axis of AXES) {
      const outlines = sliceMesh(ball(100, 0), { axis, at: 0 });
      expectClosed(outlines);
      expect(outlines).toHaveLength(1);
      expect(area(outlines)).toBeCloseTo(2 * 100 ** 2, 9);
    }
  });

  it("meshes on whole coordinates stay closed at every whole plane", () => {
    // Corners moved onto a coarse lattice: every plane runs through many, and some triangles lose their area.
    const lattice = ({ positions, triangles }: TriangleMesh): TriangleMesh => ({
      positions: positions.map((value) => 8 * Math.round(value / 8)),
      triangles,
    });
    for (const mesh of [lattice(ball(60, 4)), lattice(torus(50, 20, 40))]) {
      for (const axis of AXES)
        for (let at = -72; at <= 72; at += 4) expectClosed(sliceMesh(mesh, { axis, at }));
    }
  });

  it("a hair above and below a plane through corners the area hardly differs", () => {
    const mesh = torus(100, 30, 64);
    for (const at of [0, 30 * Math.sin((2 * Math.PI * 5) / 64), -30 * Math.sin((2 * Math.PI * 9) / 64)]) {
      const on = area(sliceMesh(mesh, { axis: "z", at }));
      expect(area(sliceMesh(mesh, { axis: "z", at: at + 1e-7 }))).toBeCloseTo(on, 3);
      expect(area(sliceMesh(mesh, { axis: "z", at: at - 1e-7 }))).toBeCloseTo(on, 3);
    }
  });

  it("10 m from the origin too", () => {
    const { positions, triangles } = torus(100, 30, 64);
    const far = { positions: positions.map((value) => value + 10_000), triangles };
    const outlines = sliceMesh(far, { axis: "y", at: 10_000 });
    expectClosed(outlines);
    expect(area(outlines)).toBeCloseTo(2 * polygonArea(30, 64), 4);
  });
});

describe("open and badly wound meshes", () => {
  it("an open sheet gives open lines from border to border, counted once", () => {
    const sheet = {
      positions: Float64Array.of(0, 0, 0, 10, 0, 0, 10, 10, 0, 0, 10, 0),
      triangles: Uint32Array.of(0, 1, 2, 0, 2, 3),
    };
    const [line, ...more] = sliceMesh(sheet, { axis: "x", at: 4 });
    expect(more).toEqual([]);
    expect(line!.closed).toBe(false);
    const ends = [line!.points[0], line!.points.at(-2)].sort();
    expect(ends).toEqual([0, 10]);
    expect(line!.points).toHaveLength(6);
  });

  it("a ball with a hole gives one open line where the plane meets the hole, closed ones elsewhere", () => {
    const { positions, triangles } = ball(100, 4);
    const kept: number[] = [];
    for (let t = 0; t < triangles.length; t += 3) {
      const [a, b, c] = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!];
      if (positions[3 * a]! < 80) kept.push(a, b, c);
    }
    const holed = { positions, triangles: Uint32Array.from(kept) };
    const through = sliceMesh(holed, { axis: "y", at: 0.5 });
    expect(through.map((one) => one.closed)).toEqual([false]);
    expectClosed(sliceMesh(holed, { axis: "x", at: 40 }));
  });

  it("triangles that repeat their vertices and turn both ways still close", () => {
    const { positions, triangles } = torus(100, 30, 24);
    const loose = Float64Array.from([...triangles].flatMap((v) => [...positions.subarray(3 * v, 3 * v + 3)]));
    const order = triangles.map((_, i) =>
      Math.floor(i / 3) % 2 === 0 ? i : i % 3 === 0 ? i : i % 3 === 1 ? i + 1 : i - 1,
    );
    const outlines = sliceMesh({ positions: loose, triangles: order }, { axis: "x", at: 3 });
    expectClosed(outlines);
    expect(outlines).toHaveLength(2);
    for (const one of outlines) expect(Math.abs(outlineArea(one))).toBeGreaterThan(2700);
  });
});

it("sheets that touch along doubled vertices stay two outlines", () => {
  // Two boxes edge to edge: each vertex of the shared edge is there twice.
  const [a, b] = [boxMesh([0, 0, 0], [10, 10, 10]), boxMesh([10, 10, 0], [20, 20, 10])];
  const both = {
    positions: Float64Array.of(...a.positions, ...b.positions),
    triangles: Uint32Array.of(...a.triangles, ...b.triangles.map((v) => v + 8)),
  };
  const outlines = sliceMesh(both, { axis: "z", at: 4 });
  expectClosed(outlines);
  expect(outlines.map(outlineArea)).toEqual([expect.closeTo(100, 9), expect.closeTo(100, 9)]);
});

describe("the solid modeler manifold-3d slices the same meshes to the same area", () => {
  it("balls and tori cut from each other, turned at random", async () => {
    const top = await solidModeler();
    const turn = fc.integer({ min: -180, max: 180 });
    const cases = fc.record({
      turn: fc.tuple(turn, turn, turn),
      share: fc.double({ min: 0.02, max: 0.98, noNaN: true }),
    });
    fc.assert(
      fc.property(cases, ({ turn, share }) => {
        const tube = top.CrossSection.circle(22, 24).translate([60, 0]);
        const raw = top.Manifold.revolve(tube, 32);
        const drill = top.Manifold.cylinder(200, 13, 17, 20, true).translate([50, 8, 0]);
        const holed = raw.subtract(drill);
        const solid = holed.rotate(turn);
        const { min, max } = solid.boundingBox();
        const height = min[2] + share * (max[2] - min[2]);
        const cut = solid.slice(height);
        const wanted = cut.area();
        const found = sliceMesh(meshOf(solid), { axis: "z", at: height });
        for (const done of [tube, raw, drill, holed, solid, cut]) done.delete();
        expectClosed(found);
        // Ours are cut from its vertices as it hands them out, in 32 bits.
        expect(area(found)).toBeCloseTo(wanted, 1);
      }),
      { seed: 1955, numRuns: runs(80, 200) },
    );
  });

  it("other axes by turning the solid, not the plane", async () => {
    const top = await solidModeler();
    const tube = top.CrossSection.circle(22, 24).translate([60, 0]);
    const solid = top.Manifold.revolve(tube, 32).rotate([20, 30, 40]);
    const mesh = meshOf(solid);
    // Turned so that x (then y) points up.
    const turned = { x: [0, -90, 0], y: [90, 0, 0] } as const;
    for (const axis of ["x", "y"] as const) {
      for (const at of [-31.5, 0, 12.25]) {
        const upright = solid.rotate([...turned[axis]]);
        const cut = upright.slice(at);
        const plane: SectionPlane = { axis, at };
        expect(area(sliceMesh(mesh, plane))).toBeCloseTo(cut.area(), 1);
        for (const done of [upright, cut]) done.delete();
      }
    }
    for (const done of [tube, solid]) done.delete();
  });
});
