import type { Mesh } from "three";
import { GLTFLoader } from "three/addons/loaders/GLTFLoader.js";
import { describe, expect, it } from "vitest";
import { glbBytes } from "../../src/files/writeGlb.ts";
import { meshVolume } from "../../src/studies/section/outline.ts";
import { cornersVolume, crookedRing } from "./meshCases.ts";

const left = crookedRing();
const right = crookedRing(6);
const bytes = glbBytes(
  [
    { name: "envelope left", mesh: left },
    { name: "envelope right", mesh: right },
  ],
  { about: "Trück" },
);
const view = new DataView(bytes.buffer);
const jsonLength = view.getUint32(12, true);
// biome-ignore lint/suspicious/noExplicitAny: the test looks into a document whose shape is what it asserts
const json: any = JSON.parse(
  new TextDecoder("utf-8", { fatal: true }).decode(bytes.subarray(20, 20 + jsonLength)),
);
const binAt = 20 + jsonLength;

describe("three's glTF reader", () => {
  it("finds the same vertices, triangles and volume, in meters with Y up, Z forward and X to the left", async () => {
    const { scene, asset } = await new GLTFLoader().parseAsync(bytes.buffer as ArrayBuffer, "");
    expect(asset.generator).toBe("Wellsweep");
    const found = scene.children as Mesh[];
    expect(found.map((one) => one.name)).toEqual(["envelope_left", "envelope_right"]);
    for (const [i, mesh] of [left, right].entries()) {
      const { geometry, matrixWorld } = found[i]!;
      expect(matrixWorld.elements).toEqual([1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1]);
      expect([...geometry.getIndex()!.array]).toEqual([...mesh.triangles]);
      const points = geometry.getAttribute("position").array;
      const wanted: number[] = [];
      for (let v = 0; v < mesh.positions.length; v += 3) {
        const [x, y, z] = [mesh.positions[v]!, mesh.positions[v + 1]!, mesh.positions[v + 2]!];
        wanted.push(Math.fround(y * 0.001), Math.fround(z * 0.001), Math.fround(x * 0.001));
      }
      expect([...points]).toEqual(wanted);
      const corners = [...mesh.triangles].flatMap((v) => [...points.subarray(3 * v, 3 * v + 3)]);
      // The axes are turned, not mirrored: the volume keeps its sign.
      expect((cornersVolume(corners) * 1e9) / meshVolume(mesh)).toBeCloseTo(1, 4);
    }
  });
});

describe("the container, against the specification's words", () => {
  it("is 'glTF', version 2 and the length of all, then a JSON and a binary chunk at multiples of 4", () => {
    expect(String.fromCharCode(...bytes.subarray(0, 4))).toBe("glTF");
    expect(view.getUint32(4, true)).toBe(2);
    expect(view.getUint32(8, true)).toBe(bytes.length);
    expect(String.fromCharCode(...bytes.subarray(16, 20))).toBe("JSON");
    expect([...bytes.subarray(binAt + 4, binAt + 8)]).toEqual([0x42, 0x49, 0x4e, 0]);
    expect(view.getUint32(binAt, true)).toBe(json.buffers[0].byteLength);
    expect(binAt + 8 + view.getUint32(binAt, true)).toBe(bytes.length);
    for (const length of [jsonLength, view.getUint32(binAt, true)]) expect(length % 4).toBe(0);
    expect(json.buffers[0].uri).toBeUndefined();
    expect(json.asset).toMatchObject({ version: "2.0", extras: { about: "Trück" } });
  });

  it("pads the JSON with spaces whatever its length", () => {
    for (const about of ["", "a", "ab", "abc", "ä"]) {
      const padded = glbBytes([{ name: "one", mesh: right }], { about });
      const length = new DataView(padded.buffer).getUint32(12, true);
      expect(length % 4).toBe(0);
      const text = new TextDecoder().decode(padded.subarray(20, 20 + length));
      expect(text).toMatch(/^\{.*\} {0,3}$/);
      expect(JSON.parse(text).asset.extras.about).toBe(about);
    }
  });

  it("has views that follow one another without a gap, aligned, within the buffer", () => {
    let at = 0;
    for (const { buffer, byteOffset, byteLength } of json.bufferViews) {
      expect([buffer, byteOffset, byteOffset % 4]).toEqual([0, at, 0]);
      at += byteLength;
    }
    expect(at).toBe(json.buffers[0].byteLength);
  });

  it("has accessors of floats with the very least and greatest, and of whole numbers below the count of vertices", () => {
    for (const { primitives } of json.meshes) {
      for (const { attributes, indices, mode } of primitives) {
        expect(mode ?? 4).toBe(4);
        expect(Object.keys(attributes)).toEqual(["POSITION"]);
        const position = json.accessors[attributes.POSITION];
        const index = json.accessors[indices];
        expect([position.componentType, position.type]).toEqual([5126, "VEC3"]);
        expect([index.componentType, index.type]).toEqual([5125, "SCALAR"]);
        const [points, corners] = [json.bufferViews[position.bufferView], json.bufferViews[index.bufferView]];
        expect([points.target, corners.target]).toEqual([34962, 34963]);
        expect([points.byteLength, corners.byteLength]).toEqual([12 * position.count, 4 * index.count]);
        for (let axis = 0; axis < 3; axis++) {
          const values = Array.from({ length: position.count }, (_, i) =>
            view.getFloat32(binAt + 8 + points.byteOffset + 12 * i + 4 * axis, true),
          );
          expect([position.min[axis], position.max[axis]]).toEqual([
            Math.min(...values),
            Math.max(...values),
          ]);
        }
        for (let i = 0; i < index.count; i++) {
          expect(view.getUint32(binAt + 8 + corners.byteOffset + 4 * i, true)).toBeLessThan(position.count);
        }
      }
    }
  });

  it("refuses a mesh without triangles and coordinates that are no numbers", () => {
    const empty = { positions: new Float64Array(0), triangles: new Uint32Array(0) };
    expect(() => glbBytes([{ name: "none", mesh: empty }])).toThrow(/none has no triangles/);
    const broken = { ...right, positions: right.positions.map((value, i) => (i === 7 ? Number.NaN : value)) };
    expect(() => glbBytes([{ name: "bad", mesh: broken }])).toThrow(/bad has a vertex at NaN/);
  });
});
