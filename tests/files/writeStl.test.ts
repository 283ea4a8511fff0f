import { STLLoader } from "three/addons/loaders/STLLoader.js";
import { describe, expect, it } from "vitest";
import { readStl } from "../../src/files/readStl.ts";
import { stlBytes } from "../../src/files/writeStl.ts";
import { meshVolume } from "../../src/studies/section/outline.ts";
import { cornersOf, cornersVolume, crookedRing } from "./meshCases.ts";

describe("binary STL", () => {
  const mesh = crookedRing();
  const bytes = stlBytes([mesh], "Ünnamed truck");

  it("three's reader finds the same corners in the same order, the same volume and outward normals", () => {
    const geometry = new STLLoader().parse(bytes.buffer as ArrayBuffer);
    const found = geometry.getAttribute("position").array;
    const corners = cornersOf(mesh);
    expect([...found]).toEqual(corners.map(Math.fround));
    expect(cornersVolume(corners)).toBeGreaterThan(1e6);
    expect(cornersVolume(found) / meshVolume(mesh)).toBeCloseTo(1, 5);
    const normals = geometry.getAttribute("normal").array;
    for (let t = 0; t < corners.length; t += 9) {
      const u = [0, 1, 2].map((i) => corners[t + 3 + i]! - corners[t + i]!) as [number, number, number];
      const v = [0, 1, 2].map((i) => corners[t + 6 + i]! - corners[t + i]!) as [number, number, number];
      const square = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
      const size = Math.hypot(...square);
      for (let i = 0; i < 3; i++) expect(normals[t + i]).toBeCloseTo(square[i]! / size, 4);
    }
  });

  it("our own reader joins the corners back into the mesh's vertices", () => {
    const read = readStl(bytes);
    expect(read.triangles.length).toBe(mesh.triangles.length);
    expect(read.positions.length).toBe(mesh.positions.length);
    expect(read.dropped).toBe(0);
  });

  it("has the layout of the format: 80 bytes of header in ASCII that do not begin with solid, a count, 50 bytes each", () => {
    const count = mesh.triangles.length / 3;
    expect(bytes.length).toBe(84 + 50 * count);
    expect(new DataView(bytes.buffer).getUint32(80, true)).toBe(count);
    const header = String.fromCharCode(...bytes.subarray(0, 80));
    expect(header.trimEnd()).toBe("Wellsweep, mm: ?nnamed truck");
    expect(stlBytes([mesh], "x".repeat(500)).length).toBe(bytes.length);
    for (let i = 0; i < count; i++)
      expect(new DataView(bytes.buffer).getUint16(84 + 50 * i + 48, true)).toBe(0);
  });

  it("has straight quotes in its header for typographic ones", () => {
    const named = stlBytes([mesh], "Ray’s truck, variant “deep”");
    expect(String.fromCharCode(...named.subarray(0, 80)).trimEnd()).toBe(
      `Wellsweep, mm: Ray's truck, variant "deep"`,
    );
  });

  it("puts several surfaces one after another", () => {
    const both = stlBytes([mesh, crookedRing(5)], "two");
    const found = new STLLoader().parse(both.buffer as ArrayBuffer).getAttribute("position").array;
    expect([...found]).toEqual([...cornersOf(mesh), ...cornersOf(crookedRing(5))].map(Math.fround));
  });

  it("gives a triangle without area no normal, and refuses what 32 bits cannot hold", () => {
    const flat = {
      positions: Float64Array.of(1, 2, 3, 4, 5, 6, 1, 2, 3),
      triangles: Uint32Array.of(0, 1, 2),
    };
    const view = new DataView(stlBytes([flat], "flat").buffer);
    expect([0, 4, 8].map((at) => view.getFloat32(84 + at, true))).toEqual([0, 0, 0]);
    for (const bad of [Number.NaN, Number.POSITIVE_INFINITY, 1e39]) {
      const broken = { ...flat, positions: Float64Array.of(1, 2, 3, 4, bad, 6, 1, 2, 3) };
      expect(() => stlBytes([broken], "bad")).toThrow(RangeError);
    }
  });
});
