import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { MAX_MESH_BYTES } from "../../src/files/limits.ts";
import { isMeshName, readMesh, tooLargeMend } from "../../src/files/readMesh.ts";
import { runs } from "../runs.ts";
import {
  binaryPly,
  binaryStl,
  glb,
  gltf,
  joined,
  OBJ,
  packed,
  SQUARE_CORNERS,
  samples,
  TEXT_PLY,
  TEXT_STL,
} from "./samples.ts";

function mendOf(file: string | Uint8Array, name: string): string {
  const read = readMesh(typeof file === "string" ? new TextEncoder().encode(file) : file, name);
  if (read.ok) throw new Error(`${name} was taken`);
  expect(read.mend).not.toMatch(/\n|undefined|NaN|\[object|\.$/);
  expect(read.mend.length).toBeLessThan(200);
  return read.mend;
}

const withScene = (change: object) => glb({ ...gltf(), ...change });
const withPrimitive = (change: object) =>
  withScene({ meshes: [{ primitives: [{ attributes: { POSITION: 0 }, indices: 1, ...change }] }] });
const withAccessors = (first: object, second: object = {}) => {
  const [points, corners] = gltf().accessors as [object, object];
  return withScene({
    accessors: [
      { ...points, ...first },
      { ...corners, ...second },
    ],
  });
};
const setFloat = (bytes: Uint8Array, at: number, value: number) => {
  const copy = bytes.slice();
  new DataView(copy.buffer).setFloat32(at, value, true);
  return copy;
};
const setUint = (bytes: Uint8Array, at: number, value: number) => {
  const copy = bytes.slice();
  new DataView(copy.buffer).setUint32(at, value, true);
  return copy;
};

describe("a broken file is refused with what is wrong, where, and how to mend it", () => {
  it.each<[string, string | Uint8Array, string, RegExp]>([
    // Any format.
    ["an empty file", "", "a.stl", /^is empty; export or copy it again$/],
    ["no ending", OBJ, "fender", /should end in \.stl, \.obj, \.ply or \.glb$/],
    ["another ending", OBJ, "fender.step", /should end in \.stl/],
    ["an ending that is a key of every object", OBJ, "a.constructor", /should end in \.stl/],
    ["a PLY named STL", TEXT_PLY, "a.stl", /^ends in \.stl but holds PLY; rename it to end in \.ply$/],
    ["a GLB named OBJ", glb(gltf()), "a.obj", /^ends in \.obj but holds GLB; rename/],
    ["a zip archive", "PK\x03\x04....", "a.stl", /^is compressed \(zip\); unpack it/],
    ["a gzip archive", Uint8Array.of(0x1f, 0x8b, 8, 0), "a.ply", /^is compressed \(gzip\); unpack it/],
    // STL.
    [
      "a text that is no mesh, as STL",
      "Dear diary, …\n".repeat(20),
      "a.stl",
      /^is cut off: it should hold \d+ triangles/,
    ],
    ["a short text, as STL", "hello", "a.stl", /^is too short for an STL/],
    ["a word, as STL", "solid", "a.stl", /^line 1: the file ends where "facet" or "endsolid" should be/],
    [
      "a text STL without triangles",
      "solid\nendsolid\n",
      "a.stl",
      /^holds no triangles; export the surface itself/,
    ],
    ["an STL without triangles", binaryStl("", []), "a.stl", /^holds no triangles/],
    [
      "an STL whose triangles have no area",
      binaryStl("", [1, 1, 1, 1, 1, 1, 2, 2, 2]),
      "a.stl",
      /^all 1 triangles have no area/,
    ],
    [
      "an STL cut off",
      binaryStl().subarray(0, 150),
      "a.stl",
      /^is cut off: it should hold 2 triangles and has room for 1/,
    ],
    [
      "an STL that is too long",
      joined(binaryStl(), new Uint8Array(50)),
      "a.stl",
      /^is longer than its count of 2 triangles/,
    ],
    [
      "a huge count, as STL",
      setUint(binaryStl(), 80, 0xffffffff),
      "a.stl",
      /^is cut off: it should hold 4294967295 triangles/,
    ],
    [
      "a corner that is not a number",
      setFloat(binaryStl(), 84 + 50 + 12, Number.NaN),
      "a.stl",
      /^triangle 2 of 2: has a corner that is not a number/,
    ],
    [
      "an infinite corner",
      setFloat(binaryStl(), 84 + 32, Number.NEGATIVE_INFINITY),
      "a.stl",
      /^triangle 1 of 2: has a corner/,
    ],
    ["a text STL cut off in a facet", TEXT_STL.slice(0, 150), "a.stl", /^line \d+: the file ends where /],
    [
      "a text STL without its end",
      TEXT_STL.replace(/endsolid.*\n/, ""),
      "a.stl",
      /^line 16: the file ends where "facet" or "endsolid" should be/,
    ],
    [
      "a text STL with a square",
      TEXT_STL.replace(" endloop", "  vertex 0 2 0\n endloop"),
      "a.stl",
      /^line 7: "vertex" where "endloop" should be/,
    ],
    [
      "a comma in a number",
      TEXT_STL.replace("vertex 2 0 0", "vertex 2,5 0 0"),
      "a.stl",
      /^line 5: "2,5" where a number should be/,
    ],
    [
      "a number in hexadecimal",
      TEXT_STL.replace("vertex 2 0 0", "vertex 0x2 0 0"),
      "a.stl",
      /^line 5: "0x2" where a number should be/,
    ],
    [
      "a number too large for any",
      TEXT_STL.replace("vertex 2 0 0", "vertex 1e999 0 0"),
      "a.stl",
      /^line 5: "1e999" where a number should be/,
    ],
    [
      "a text STL gone over to something else",
      TEXT_STL.replace("endfacet\nfacet", "endfacet\nfascia"),
      "a.stl",
      /^line 9: "fascia" where "facet" or "endsolid"/,
    ],
    // OBJ.
    [
      "a text that is no mesh, as OBJ",
      "Dear diary, …\n".repeat(20),
      "a.obj",
      /^has no line that begins with "v"/,
    ],
    ["an OBJ of points alone", "v 0 0 0\nv 1 0 0\nv 0 1 0\n", "a.obj", /^holds no triangles/],
    [
      "an OBJ with a vertex of two numbers",
      OBJ.replace("v 2 0 0", "v 2 0"),
      "a.obj",
      /^line 3: a vertex takes three numbers/,
    ],
    [
      "an OBJ with a word for a number",
      OBJ.replace("v 2 0 0", "v 2 0 up"),
      "a.obj",
      /^line 3: "up" where a number should be/,
    ],
    [
      "an OBJ with a NaN",
      OBJ.replace("v 2 0 0", "v 2 0 nan"),
      "a.obj",
      /^line 3: "nan" where a number should be/,
    ],
    [
      "an OBJ that names vertex 0",
      OBJ.replace("f 1 2 3", "f 0 1 2"),
      "a.obj",
      /^line 6: corner "0" names no vertex of the 4 before it/,
    ],
    [
      "an OBJ that names a vertex too many",
      OBJ.replace("f 1 2 3", "f 1 2 5"),
      "a.obj",
      /^line 6: corner "5" names no vertex/,
    ],
    [
      "an OBJ that counts back too far",
      OBJ.replace("f 1 2 3", "f -5 2 3"),
      "a.obj",
      /^line 6: corner "-5" names no vertex/,
    ],
    [
      "an OBJ with a face of two corners",
      OBJ.replace("f 1 2 3", "f 1 2"),
      "a.obj",
      /^line 6: a face has 2 corners/,
    ],
    [
      "an OBJ with a fraction for a vertex",
      OBJ.replace("f 1 2 3", "f 1 2 3.5"),
      "a.obj",
      /^line 6: corner "3.5" names no vertex/,
    ],
    [
      "an OBJ with a free-form surface",
      `${OBJ}surf 0 1 0 1 1 2 3 4\n`,
      "a.obj",
      /^line 8: has a free-form surface; export it as triangles/,
    ],
    [
      "an OBJ with a face of a thousand corners and one",
      `${OBJ}f ${"1 2 3 ".repeat(334)}\n`,
      "a.obj",
      /^line 8: a face has more than 1000 corners/,
    ],
    // PLY.
    [
      "a text that is no mesh, as PLY",
      "Dear diary, …\n".repeat(20),
      "a.ply",
      /^line \d: "ply" should stand here/,
    ],
    [
      "a PLY without the end of its header",
      TEXT_PLY.replace("end_header", "comment"),
      "a.ply",
      /^line 11: unknown word "0" in the header/,
    ],
    [
      "a PLY cut off in its header",
      TEXT_PLY.slice(0, 60),
      "a.ply",
      /^line 5: unknown word "prope" in the header/,
    ],
    [
      "a PLY of an unknown format",
      TEXT_PLY.replace("ascii", "packed"),
      "a.ply",
      /^line 2: unknown format "packed"/,
    ],
    [
      "a PLY without format",
      TEXT_PLY.replace("format ascii 1.0\n", ""),
      "a.ply",
      /^header: has no format line/,
    ],
    [
      "a PLY of an unknown type",
      TEXT_PLY.replace("float y", "real y"),
      "a.ply",
      /^line 6: unknown type "real"/,
    ],
    [
      "a PLY with a count that is none",
      TEXT_PLY.replace("vertex 4", "vertex -4"),
      "a.ply",
      /^line 4: "-4" where a count should be/,
    ],
    ["a PLY without z", TEXT_PLY.replace("float z", "float w"), "a.ply", /^header: vertices have no z/],
    [
      "a PLY without faces",
      TEXT_PLY.replace("face 2", "face 0"),
      "a.ply",
      /^header: holds points without faces/,
    ],
    ["a PLY of strips", TEXT_PLY.replace("face 2", "tristrips 2"), "a.ply", /^header: holds strips/],
    [
      "a PLY without vertices",
      TEXT_PLY.replace("vertex 4", "point 4"),
      "a.ply",
      /^header: has no element "vertex"/,
    ],
    [
      "a PLY whose faces list nothing",
      TEXT_PLY.replace("vertex_indices", "colors"),
      "a.ply",
      /^header: faces have no list vertex_indices/,
    ],
    [
      "a PLY with two of an element",
      TEXT_PLY.replace("element face", "element vertex"),
      "a.ply",
      /^line 8: a second element "vertex"/,
    ],
    [
      "a huge count of vertices, as text PLY",
      TEXT_PLY.replace("vertex 4", "vertex 999999999999999"),
      "a.ply",
      /^is cut off: the header says 999999999999999 of "vertex"/,
    ],
    [
      "a huge count of faces, as text PLY",
      TEXT_PLY.replace("face 2", "face 4294967295"),
      "a.ply",
      /^is cut off: the header says 4294967295 of "face"/,
    ],
    [
      "a huge count of something without properties, as PLY",
      TEXT_PLY.replace("element vertex", "element none 999999999999999\nelement vertex").replace(
        "3 0 2 3",
        "3 0 2 9",
      ),
      "a.ply",
      /^face 1: names vertex 9 of 4/,
    ],
    [
      "a huge list, as text PLY",
      TEXT_PLY.replace("3 0 2 3", "4000000000 0 2 3"),
      "a.ply",
      /^face 1: has 4000000000 corners/,
    ],
    [
      "a huge list of something else, as text PLY",
      TEXT_PLY.replace("property list", "property list uint int other\nproperty list").replace(
        "3 0 1 2",
        "4000000000 3 0 1 2",
      ),
      "a.ply",
      /: a list of 4000000000 does not fit/,
    ],
    [
      "a face of two corners, as PLY",
      TEXT_PLY.replace("3 0 2 3", "2 0 2 3"),
      "a.ply",
      /^face 1: has 2 corners/,
    ],
    [
      "a PLY that names a vertex too many",
      TEXT_PLY.replace("3 0 2 3", "3 0 2 4"),
      "a.ply",
      /^face 1: names vertex 4 of 4 counted from 0/,
    ],
    [
      "a PLY that names a vertex below 0",
      TEXT_PLY.replace("3 0 2 3", "3 0 2 -1"),
      "a.ply",
      /^face 1: names vertex -1 of 4/,
    ],
    [
      "a PLY with a word for a number",
      TEXT_PLY.replace("2 2 0", "2 two 0"),
      "a.ply",
      /^line 13: "two" where a number should be/,
    ],
    ["a PLY that goes on after its end", `${TEXT_PLY}3 0 1 2\n`, "a.ply", /^is longer than its header says/],
    ["a text PLY cut off", TEXT_PLY.slice(0, -3), "a.ply", /the file ends where a number should be/],
    ["a binary PLY cut off", binaryPly(true).subarray(0, -20), "a.ply", /cut off/],
    [
      "a binary PLY that goes on after its end",
      joined(binaryPly(false), Uint8Array.of(1, 2, 3)),
      "a.ply",
      /^is longer than its header says/,
    ],
    [
      "a binary PLY in the other byte order",
      joined(
        new TextEncoder().encode(
          new TextDecoder("latin1").decode(binaryPly(true).subarray(0, 40)).replace("little", "big"),
        ),
        binaryPly(true).subarray(40),
      ),
      "a.ply",
      /^face 0: names vertex|longer|cut off/,
    ],
    [
      "a binary PLY with a coordinate that is not a number",
      setFloat(binaryPly(true), binaryPly(true).length - 26 - 12, Number.NaN),
      "a.ply",
      /^vertex 3: its x is not a number/,
    ],
    // GLB.
    ["a GLB that is another file", "glTX".padEnd(40, "."), "a.glb", /^does not begin with "glTF"/],
    ["a GLB of a few bytes", "glTF", "a.glb", /^byte 4: the file is cut off/],
    ["a GLB of version 1", setUint(glb(gltf()), 4, 1), "a.glb", /^is GLB version 1; export it as version 2/],
    ["a GLB cut off", glb(gltf()).subarray(0, -10), "a.glb", /the file is cut off/],
    ["a GLB with a huge chunk", setUint(glb(gltf()), 12, 0xfffffff0), "a.glb", /the file is cut off/],
    ["a GLB without JSON", setUint(glb(gltf()), 16, 7), "a.glb", /^has no JSON chunk/],
    ["a GLB with broken JSON", glb('{"asset": '), "a.glb", /^JSON chunk: cannot be read/],
    ["a GLB with JSON that is a list", glb("[]"), "a.glb", /^JSON chunk: is missing or no object/],
    ["a GLB with JSON nested very deep", glb("[".repeat(200_000)), "a.glb", /^JSON chunk: cannot be read/],
    ["a GLB without meshes", glb({ asset: { version: "2.0" } }), "a.glb", /^holds no triangles/],
    ["a scene that is not there", withScene({ scene: 4 }), "a.glb", /^scene 4: is missing/],
    ["a node that is not there", withScene({ scenes: [{ nodes: [9] }] }), "a.glb", /^node 9: is missing/],
    [
      "nodes in a ring",
      withScene({ nodes: [{ children: [1] }, { mesh: 0, children: [0] }] }),
      "a.glb",
      /^node 0: is in the scene more than once/,
    ],
    [
      "a node that is its own child",
      withScene({ nodes: [{ mesh: 0, children: [0] }] }),
      "a.glb",
      /^node 0: is in the scene more than once/,
    ],
    ["a mesh that is not there", withScene({ nodes: [{ mesh: 3 }] }), "a.glb", /^mesh 3: is missing/],
    [
      "a mesh number that is none",
      withScene({ nodes: [{ mesh: "0" }] }),
      "a.glb",
      /^node 0, mesh: is no whole number/,
    ],
    [
      "a matrix of 15 numbers",
      withScene({ nodes: [{ mesh: 0, matrix: new Array(15).fill(1) }] }),
      "a.glb",
      /^node 0, matrix: is not 16 numbers/,
    ],
    [
      "a scale beyond numbers",
      withScene({ nodes: [{ mesh: 0, scale: [1e308, 1e308, 1e308] }, {}], accessors: gltf().accessors }),
      "a.glb",
      /vertex \d is not a number/,
    ],
    ["a skin", withScene({ nodes: [{ mesh: 0, skin: 0 }] }), "a.glb", /^node 0: has a skin; apply its pose/],
    [
      "a morph turned on",
      withScene({ nodes: [{ mesh: 0, weights: [0.5] }] }),
      "a.glb",
      /^node 0: has a morph turned on/,
    ],
    [
      "instances",
      withScene({ nodes: [{ mesh: 0, extensions: { EXT_mesh_gpu_instancing: {} } }] }),
      "a.glb",
      /^node 0: has instances/,
    ],
    [
      "required compression",
      withScene({ extensionsRequired: ["KHR_draco_mesh_compression"] }),
      "a.glb",
      /^needs "KHR_draco_me…"/,
    ],
    [
      "compression of a primitive",
      withPrimitive({ extensions: { KHR_draco_mesh_compression: {} } }),
      "a.glb",
      /is compressed with KHR_draco/,
    ],
    [
      "a primitive without positions",
      withPrimitive({ attributes: {} }),
      "a.glb",
      /^mesh 0, primitive 0: has no POSITION/,
    ],
    ["an accessor that is not there", withPrimitive({ indices: 7 }), "a.glb", /accessor 7: is missing/],
    [
      "an accessor of another type",
      withAccessors({ type: "VEC2" }),
      "a.glb",
      /accessor 0: is not of type VEC3/,
    ],
    [
      "an accessor of no type of number",
      withAccessors({ componentType: 5124 }),
      "a.glb",
      /unknown component type/,
    ],
    [
      "a huge accessor",
      withAccessors({ count: 9007199254740991 }),
      "a.glb",
      /accessor 0: does not fit in the file/,
    ],
    [
      "vertex numbers for a third of a triangle",
      withAccessors({}, { count: 4 }),
      "a.glb",
      /4 corners make no whole triangles/,
    ],
    [
      "vertex numbers of no vertex",
      withAccessors({ count: 3 }),
      "a.glb",
      /names vertex 3 of 3 counted from 0/,
    ],
    ["sparse storage", withAccessors({ sparse: {} }), "a.glb", /is stored sparsely/],
    [
      "a buffer in another file",
      withScene({ buffers: [{ byteLength: 60, uri: "a.bin" }] }),
      "a.glb",
      /in another file/,
    ],
    [
      "a view past the end",
      withScene({ bufferViews: [{ buffer: 0, byteOffset: 50, byteLength: 48 }, gltf().bufferViews[1]] }),
      "a.glb",
      /does not fit in the file/,
    ],
    [
      "rows that lie over each other",
      withScene({ bufferViews: [{ buffer: 0, byteLength: 48, byteStride: 4 }, gltf().bufferViews[1]] }),
      "a.glb",
      /does not fit in the file/,
    ],
    ["a list that is none", withScene({ nodes: { 0: {} } }), "a.glb", /^JSON chunk, nodes: is no list/],
  ])("%s", (_, file, name, mend) => {
    expect(mendOf(file, name)).toMatch(mend);
  });

  it("more triangles than the limit, though each is small in the file", () => {
    const nodes = Array.from({ length: 1001 }, () => ({ mesh: 0 }));
    const corners = new Uint8Array(4 * 12 + 2 * 6 * 1000);
    corners.set(
      packed(48, (view) =>
        [0, 0, 0, 2, 0, 0, 2, 2, 0, 0, 2, 0].forEach((value, i) => {
          view.setFloat32(4 * i, value, true);
        }),
      ),
    );
    const view = new DataView(corners.buffer);
    for (let i = 0; i < 6000; i++) view.setUint16(48 + 2 * i, [0, 1, 2, 0, 2, 3][i % 6]!, true);
    const document = {
      ...gltf(),
      nodes,
      scenes: [{ nodes: nodes.map((_, i) => i) }],
      accessors: [gltf().accessors[0], { bufferView: 1, componentType: 5123, count: 6000, type: "SCALAR" }],
      bufferViews: [gltf().bufferViews[0], { buffer: 0, byteOffset: 48, byteLength: 12000 }],
    };
    expect(mendOf(glb(document, corners), "a.glb")).toMatch(
      /^mesh 0, primitive 0: holds more than 2000000 triangles/,
    );
  });

  it("too large a file is told by its size alone", () => {
    expect(tooLargeMend(MAX_MESH_BYTES)).toBeNull();
    expect(tooLargeMend(MAX_MESH_BYTES + 1)).toMatch(
      /^has more than 200 MB, the most a mesh file may have; reduce it/,
    );
    expect(mendOf(new Uint8Array(MAX_MESH_BYTES + 1), "a.stl")).toMatch(/reduce it/);
  });

  it("only names of the four formats are names of meshes", () => {
    expect(["a.stl", "b/c.OBJ", "x.y.Ply", "q.glb"].map(isMeshName)).toEqual([true, true, true, true]);
    expect(["a.json", "stl", "a.stl.txt", "a.gltf", ""].map(isMeshName)).toEqual([
      false,
      false,
      false,
      false,
      false,
    ]);
  });
});

/** Whatever comes back is whole: every triangle has its vertices, every vertex is finite, and a refusal has words. */
function expectSound(bytes: Uint8Array, name: string): void {
  const read = readMesh(bytes, name);
  if (!read.ok) {
    expect(read.mend).toMatch(/^[\x20-\x7e…]+$/);
    return;
  }
  const { positions, triangles } = read.mesh;
  expect(triangles.length).toBeGreaterThan(0);
  expect(triangles.length % 3).toBe(0);
  expect(triangles.every((vertex) => vertex < positions.length / 3)).toBe(true);
  expect(positions.every(Number.isFinite)).toBe(true);
}

describe("whatever the bytes, a reader answers and does not throw", () => {
  const all = Object.entries(samples());

  it.each(all)("cut off anywhere: %s", (name, bytes) => {
    for (let length = 0; length < bytes.length; length++) {
      const read = readMesh(bytes.subarray(0, length), name);
      // A text may be cut where it is whole: an OBJ has no end, and a PLY or STL may lose its last line end.
      if (read.ok) expect(name).toMatch(/^text/);
      if (read.ok && name !== "text.obj") expect(read.mesh.triangles.length / 3).toBe(2);
    }
  });

  it.each(all)("a few bytes changed anywhere: %s", (name, bytes) => {
    const changes = fc.array(fc.tuple(fc.nat(bytes.length - 1), fc.nat(255)), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(changes, (changed) => {
        const copy = bytes.slice();
        for (const [at, value] of changed) copy[at] = value;
        expectSound(copy, name);
      }),
      { seed: 1957, numRuns: runs(200, 600) },
    );
  });

  it.each(all)("any bytes after a sound beginning: %s", (name, bytes) => {
    fc.assert(
      fc.property(fc.nat(bytes.length), fc.uint8Array({ maxLength: 300 }), (kept, rest) => {
        expectSound(joined(bytes.subarray(0, kept), rest), name);
      }),
      { seed: 1959, numRuns: runs(150, 400) },
    );
  });

  it.each(["a.stl", "a.obj", "a.ply", "a.glb"])("any bytes at all, as %s", (name) => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 2000 }), (bytes) => expectSound(bytes, name)),
      { seed: 1961, numRuns: 400 },
    );
  });

  it("any values anywhere in the JSON of a GLB", () => {
    const value = fc.oneof(fc.jsonValue(), fc.constantFrom(-1, 0.5, 1e300, 2 ** 53, "0", null, [], {}));
    const keys = ["scene", "scenes", "nodes", "meshes", "accessors", "bufferViews", "buffers"] as const;
    fc.assert(
      fc.property(fc.constantFrom(...keys), fc.nat(3), value, (key, depth, put) => {
        const document = gltf() as Record<string, unknown>;
        const list = document[key] as Record<string, unknown>[];
        const entry = Array.isArray(list) ? list[0]! : undefined;
        const names = entry ? Object.keys(entry) : [];
        if (depth === 0 || !entry) document[key] = put;
        else if (depth === 1) list[0] = put as never;
        else entry[names[depth % Math.max(1, names.length)] ?? "mesh"] = put;
        expectSound(glb(document), "a.glb");
      }),
      { seed: 1963, numRuns: runs(400, 1500) },
    );
  });

  it("faces of a thousand corners that cross themselves", () => {
    const random = (i: number) =>
      Math.sin(i * 12.9898) * 43758.5453 - Math.floor(Math.sin(i * 12.9898) * 43758.5453);
    const vertices = Array.from({ length: 999 }, (_, i) => `v ${random(i)} ${random(i + 1e4)} 0`).join("\n");
    const face = `f ${Array.from({ length: 999 }, (_, i) => i + 1).join(" ")}\n`;
    expectSound(new TextEncoder().encode(`${vertices}\n${face.repeat(10)}`), "a.obj");
  });

  it("the corners read from a sound file are those that were written", () => {
    for (const [name, bytes] of all) {
      const read = readMesh(bytes, name);
      expect(read.ok && [...read.mesh.triangles].length * 3).toBe(SQUARE_CORNERS.length);
    }
  });
});
