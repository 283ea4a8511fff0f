import type { Manifold, ManifoldToplevel } from "manifold-3d";
import { beforeAll, describe, expect, it } from "vitest";
import type { TriangleMesh } from "../../../src/geometry/triangleMesh.ts";
import { addScaled, cross, normalize, type Vec3 } from "../../../src/geometry/vec.ts";
import { memberMesh } from "../../../src/studies/knuckleSolid/knuckleSolid.ts";
import {
  type Cutter,
  cutAt,
  cutThroughWall,
  type RoundEnd,
  squareCut,
} from "../../../src/studies/knuckleSolid/notch.ts";
import type { RoundMember } from "../../../src/studies/knuckleSolid/roundMember.ts";
import { meshVolume } from "../../../src/studies/section/outline.ts";
import { solidModeler } from "../../reference/mesh/solids.ts";

const DEGREE = Math.PI / 180;

/** A member that leaves the origin along +z. */
const END: RoundEnd = { at: [0, 0, 0], along: [0, 0, 1], mark: [1, 0, 0], side: [0, 1, 0] };

/** A round through (offset on y) at an angle to the member, in the plane of its mark line. */
function roundAt(radius: number, angle: number, offset = 0): Cutter & { kind: "cylinder" } {
  return { kind: "cylinder", point: [0, offset, 0], axis: [Math.sin(angle), 0, Math.cos(angle)], radius };
}

describe("where a tube meets a round", () => {
  it("equal tubes at a right angle: the depth is R times the cosine of the wrap angle, without its sign", () => {
    const R = 25.4;
    for (let degrees = 0; degrees <= 360; degrees++) {
      const { from, meets } = cutAt(END, roundAt(R, 90 * DEGREE), R, degrees * DEGREE);
      expect(from).toBeCloseTo(R * Math.abs(Math.cos(degrees * DEGREE)), 6);
      if (degrees % 90 !== 0) expect(meets).toBe(true);
    }
  });

  it("a smaller tube at an angle: the closed form of two oblique cylinders", () => {
    // Source: analytic geometry; x cos φ along the other's axis, so (z sin φ − x cos φ)² + y² = R².
    const [R, r, phi] = [30, 20, 55 * DEGREE];
    for (let degrees = 0; degrees < 360; degrees += 5) {
      const [x, y] = [r * Math.cos(degrees * DEGREE), r * Math.sin(degrees * DEGREE)];
      const expected = (x * Math.cos(phi) + Math.sqrt(R * R - y * y)) / Math.sin(phi);
      expect(cutAt(END, roundAt(R, phi), r, degrees * DEGREE).from).toBeCloseTo(expected, 9);
    }
  });

  it("offset axes: the saddle stands deeper on the side toward the other axis", () => {
    const [R, r, offset] = [30, 15, 10];
    const at = (degrees: number) => cutAt(END, roundAt(R, 90 * DEGREE, offset), r, degrees * DEGREE).from;
    expect(at(90)).toBeCloseTo(Math.sqrt(R * R - (r - offset) ** 2), 9);
    expect(at(270)).toBeCloseTo(Math.sqrt(R * R - (r + offset) ** 2), 9);
  });

  it("a tube wider than what it meets: lines that pass beside it say so, and the cut stays in one piece", () => {
    const cutter = roundAt(20, 70 * DEGREE);
    const cuts = Array.from({ length: 3601 }, (_, i) => cutAt(END, cutter, 25, (i / 10) * DEGREE));
    expect(cuts.filter(({ meets }) => !meets).length).toBeGreaterThan(500);
    const steps = cuts.slice(1).map(({ from }, i) => Math.abs(from - cuts[i]!.from));
    expect(Math.max(...steps)).toBeLessThan(1);
  });

  it("a flat face cuts a plane", () => {
    const face: Cutter = { kind: "plane", point: [0, 0, 5], normal: normalize([1, 0, 1]) };
    expect(cutAt(END, face, 10, 0).from).toBeCloseTo(-5, 9);
    expect(cutAt(END, face, 10, Math.PI).from).toBeCloseTo(15, 9);
    expect(cutAt(END, squareCut(END, 4), 10, 1).from).toBeCloseTo(-4, 9);
  });

  it("refuses a member along the axis or the face it is cut to", () => {
    expect(() => cutAt(END, { ...roundAt(10, 0), axis: [0, 0, 1] }, 5, 0)).toThrow(RangeError);
    expect(() => cutAt(END, { kind: "plane", point: [0, 0, 0], normal: [1, 0, 0] }, 5, 0)).toThrow(
      RangeError,
    );
  });

  it("through the wall: no part of the wall is deeper, and some part is as deep", () => {
    const cutter = roundAt(30, 60 * DEGREE, 4);
    for (let degrees = 0; degrees < 360; degrees += 7) {
      const wrap = degrees * DEGREE;
      const through = cutThroughWall(END, cutter, 14, 20, wrap);
      const wall = Array.from({ length: 601 }, (_, i) => cutAt(END, cutter, 14 + i / 100, wrap).from);
      expect(through).toBeGreaterThanOrEqual(Math.max(...wall) - 1e-9);
      expect(through - Math.max(...wall)).toBeLessThan(1e-4);
    }
  });
});

describe("a notched member against the solid modeler manifold-3d", () => {
  let top: ManifoldToplevel;
  beforeAll(async () => {
    top = await solidModeler();
  });
  const FACETS = 360;
  const LENGTH = 160;

  /** A round along a line, long past both ends. The caller deletes it. */
  function rod(point: Vec3, axis: Vec3, radius: number, length: number): Manifold {
    const raw = top.Manifold.cylinder(length, radius, radius, FACETS, true);
    const u = normalize(Math.abs(axis[0]) < 0.9 ? cross(axis, [1, 0, 0]) : cross(axis, [0, 1, 0]));
    const v = cross(axis, u);
    const placed = raw.transform([...u, 0, ...v, 0, ...axis, 0, ...point, 1] as never);
    raw.delete();
    return placed;
  }

  function solidOf({ positions, triangles }: TriangleMesh): Manifold {
    const mesh = new top.Mesh({
      numProp: 3,
      vertProperties: Float32Array.from(positions),
      triVerts: triangles,
    });
    return new top.Manifold(mesh);
  }

  it.each([
    ["equal tubes at a right angle", 20, 16, 20, 90, 0],
    ["a smaller tube at 50 degrees", 15, 12, 25, 50, 0],
    ["offset axes at 70 degrees", 15, 11, 30, 70, 8],
    ["a solid bar at 65 degrees", 18, 0, 22, 65, 0],
  ] as const)("%s: the same volume, and the same solid", (_, outer, inner, radius, degrees, offset) => {
    const cutter = roundAt(radius, degrees * DEGREE, offset);
    const far: RoundEnd = {
      at: addScaled(END.at, END.along, LENGTH),
      along: [0, 0, -1],
      mark: END.mark,
      side: [0, -1, 0],
    };
    const member: RoundMember = {
      name: "brace",
      kind: inner > 0 ? "tube" : "bar",
      material: "steel",
      outer,
      inner,
      length: LENGTH,
      ends: [
        {
          joint: "a",
          end: END,
          fits: [{ to: "post", cutter, reach: null, angle: degrees * DEGREE }],
          past: 0,
        },
        { joint: "b", end: far, fits: [], past: 0 },
      ],
    };
    const mesh = memberMesh(member, FACETS);
    const made: Manifold[] = [];
    const keep = (one: Manifold) => {
      made.push(one);
      return one;
    };
    const long = keep(rod([0, 0, 0], END.along, outer, 2 * LENGTH));
    const bored = inner > 0 ? keep(long.subtract(keep(rod([0, 0, 0], END.along, inner, 3 * LENGTH)))) : long;
    const cut = keep(bored.subtract(keep(rod(cutter.point, cutter.axis, radius, 6 * LENGTH))));
    // What lies on the far side of the round falls off.
    const reachOf = (one: Manifold) => one.boundingBox().max[2]!;
    const beyond = cut
      .decompose()
      .map(keep)
      .reduce((a, b) => (reachOf(b) > reachOf(a) ? b : a));
    expect(meshVolume(mesh) / beyond.volume()).toBeCloseTo(1, 3);
    const own = keep(solidOf(mesh));
    expect(own.status()).toBe("NoError");
    const apart = keep(own.subtract(beyond)).volume() + keep(beyond.subtract(own)).volume();
    expect(apart / beyond.volume()).toBeLessThan(2e-3);
    for (const one of new Set(made)) one.delete();
  });
});
