import { describe, expect, it } from "vitest";
import type { LoadedMesh } from "../../src/setup/blockReading.ts";
import { formatIssue } from "../../src/setup/formatIssue.ts";
import { resolveSetup } from "../../src/setup/resolveSetup.ts";
import type { Point } from "../../src/setup/types.ts";
import { exampleDocument } from "./fixtures.ts";

const TRIANGLE: LoadedMesh = {
  vertices: [
    [1, 2, 3],
    [4, 0, 0],
    [0, 5, 0],
  ],
  triangles: [[0, 1, 2]],
};

function resolvedWith(part: object, mesh: LoadedMesh = TRIANGLE) {
  const document = exampleDocument();
  document.truck.body = [{ name: "arch", kind: "mesh", file: "arch.stl", ...part }];
  return resolveSetup(document, "truck.json", null, new Map([["arch.stl", mesh]]));
}

function vertices(part: object): readonly Point[] {
  const setup = resolvedWith(part);
  const mesh = setup.ok ? setup.value.truck.body[0] : undefined;
  if (mesh?.kind !== "mesh") throw new Error("no mesh");
  return mesh.vertices;
}

describe("a mesh from a file", () => {
  it("is in the setup's units unless it says otherwise", () => {
    expect(vertices({})[1]).toEqual([expect.closeTo(101.6, 9), 0, 0]);
    expect(vertices({ unit: "mm" })[0]).toEqual([1, 2, 3]);
    expect(vertices({ unit: "cm" })[0]).toEqual([10, 20, 30]);
    expect(vertices({ unit: "m" })[0]).toEqual([1000, 2000, 3000]);
  });

  it("is turned about X, then Y, then Z, right-handed and exact for quarter turns, then moved", () => {
    expect(vertices({ unit: "mm", place: { turn: [90, 0, 0] } })[0]).toEqual([1, -3, 2]);
    expect(vertices({ unit: "mm", place: { turn: [0, 90, 0] } })[0]).toEqual([3, 2, -1]);
    expect(vertices({ unit: "mm", place: { turn: [0, 0, -90] } })[0]).toEqual([2, -1, 3]);
    expect(vertices({ unit: "mm", place: { turn: [90, 0, 90], move: ["1 mm", "10 mm", 0] } })[0]).toEqual([
      4, 11, 2,
    ]);
    const turned = vertices({ unit: "mm", place: { turn: [20, -35, 130] } })[0]!;
    expect(Math.hypot(...turned)).toBeCloseTo(Math.hypot(1, 2, 3), 12);
  });

  it.each<[object, LoadedMesh, string]>([
    [{ vertices: [] }, TRIANGLE, "vertices"],
    [{ unit: "ft" }, TRIANGLE, "unit"],
    [{ place: { turn: [0, 0, "x"] } }, TRIANGLE, "place.turn[2]"],
    [{ place: { shift: [0, 0, 0] } }, TRIANGLE, "place.shift"],
    [{}, { ...TRIANGLE, triangles: [] }, "file"],
    [{}, { ...TRIANGLE, triangles: [[0, 1, 3]] }, "file"],
    [{}, { ...TRIANGLE, vertices: [[Number.NaN, 0, 0], ...TRIANGLE.vertices] }, "file"],
    [{ unit: "m" }, { ...TRIANGLE, vertices: [[101, 0, 0], ...TRIANGLE.vertices] }, "file"],
  ])("with %j is refused with a mesh of %j at %s", (part, mesh, key) => {
    const setup = resolvedWith(part, mesh);
    expect(setup.ok ? [] : setup.issues.map((issue) => issue.key)).toEqual([`truck.body[0].${key}`]);
    if (!setup.ok) expect(formatIssue(setup.issues[0]!)).not.toMatch(/undefined|\n/);
  });
});
