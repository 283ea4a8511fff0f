import { BufferAttribute, BufferGeometry, Group, Mesh, TorusKnotGeometry, Vector3 } from "three";
import { STLLoader } from "three/addons/loaders/STLLoader.js";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import type { FileMesh } from "../../src/files/meshBuilder.ts";
import { readMesh } from "../../src/files/readMesh.ts";
import { BlobReader, cornersOf, WRITTEN_NAMES, written, writtenGlb } from "./writers.ts";

function meshIn(bytes: Uint8Array, name: string): FileMesh {
  const read = readMesh(bytes, name);
  if (!read.ok) throw new Error(read.mend);
  return read.mesh;
}

/** The corners of every triangle, nine numbers each. */
function cornersRead({ positions, triangles }: FileMesh): number[] {
  return [...triangles].flatMap((vertex) => [...positions.subarray(3 * vertex, 3 * vertex + 3)]);
}

/** Single precision, as most of these files keep it, with seams where vertices are doubled. */
const knot = new TorusKnotGeometry(180.3, 41.7, 90, 14);

/** A waved sheet of `columns` × `rows` squares, every corner on its own. */
function sheet(columns: number, rows: number): BufferGeometry {
  const at = (i: number, j: number) => [1.1 * i, 0.9 * j, 40 * Math.sin(0.01 * i) + 30 * Math.cos(0.02 * j)];
  const corners = new Float32Array(18 * columns * rows);
  for (let i = 0, k = 0; i < columns; i++) {
    for (let j = 0; j < rows; j++, k += 18)
      corners.set(
        [at(i, j), at(i + 1, j), at(i, j + 1), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)].flat(),
        k,
      );
  }
  return new BufferGeometry().setAttribute("position", new BufferAttribute(corners, 3));
}

beforeAll(() => {
  vi.stubGlobal("FileReader", BlobReader);
});
afterAll(() => {
  vi.unstubAllGlobals();
});

describe("a mesh written by three.js", () => {
  it.each(WRITTEN_NAMES)("is read to the last bit, triangle by triangle, from %s", (name) => {
    const mesh = meshIn(written(name, new Mesh(knot)), name);
    expect(cornersRead(mesh)).toEqual(cornersOf(knot));
    expect([mesh.unit, mesh.dropped]).toEqual([null, 0]);
  });

  it.each(WRITTEN_NAMES)("has each place once, however often %s repeats it", (name) => {
    const mesh = meshIn(written(name, new Mesh(knot)), name);
    const places = new Set(
      cornersOf(knot).flatMap((_, i, all) => (i % 3 ? [] : [all.slice(i, i + 3).join()])),
    );
    expect(mesh.positions.length / 3).toBe(places.size);
  });

  it("is read from a GLB in meters, with the transforms of all nodes above it", async () => {
    const inner = new Mesh(knot);
    inner.position.set(0.3, -0.2, 0.1);
    inner.rotation.set(0.4, -1.1, 2.3);
    const outer = new Group().add(inner);
    outer.scale.set(0.001, 0.002, 0.003);
    outer.rotation.set(-0.7, 0.2, 0.9);
    const other = new Mesh(sheet(4, 3));
    other.position.set(5, 6, 7);
    const scene = new Group().add(outer, other);
    const mesh = meshIn(await writtenGlb(scene), "scan.glb");
    const expected = new Map(
      [inner, other].map((part) => [cornersOf(part.geometry).length, placedCorners(part)]),
    );
    expect(mesh.unit).toBe("m");
    // The two may come in either order.
    const read = cornersRead(mesh);
    const sizes = [...expected.keys()];
    const first = sizes.find((size) => near(read.slice(0, size), expected.get(size)!));
    const second = sizes.find((size) => size !== first)!;
    expect(first).toBeDefined();
    expect(near(read.slice(first), expected.get(second)!)).toBe(true);
  });

  it("is the same to the STL loader of three.js, byte layout and all", () => {
    const bytes = written("binary.stl", new Mesh(knot));
    const loaded = new STLLoader().parse(
      bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length) as ArrayBuffer,
    );
    expect(cornersRead(meshIn(bytes, "a.stl"))).toEqual(cornersOf(loaded));
  });

  it("of half a million triangles is read whole (time told, not judged)", () => {
    const big = sheet(500, 500);
    const bytes = written("binary.stl", new Mesh(big));
    const start = performance.now();
    const mesh = meshIn(bytes, "big.stl");
    console.info(`500,000 triangles of binary STL read in ${Math.round(performance.now() - start)} ms`);
    expect(mesh.triangles.length / 3).toBe(500_000);
    expect(mesh.positions.length / 3).toBe(501 * 501);
  });
});

function placedCorners(part: Mesh): number[] {
  const corners = cornersOf(part.geometry);
  return corners.flatMap((_, i) =>
    i % 3 ? [] : new Vector3(...corners.slice(i, i + 3)).applyMatrix4(part.matrixWorld).toArray(),
  );
}

/** To the rounding of a few multiplications. The file keeps the matrix in full. */
function near(a: readonly number[], b: readonly number[]): boolean {
  return a.length === b.length && a.every((value, i) => Math.abs(value - b[i]!) < 1e-9);
}
