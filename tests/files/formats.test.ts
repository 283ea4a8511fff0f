import { describe, expect, it } from "vitest";
import { readMesh } from "../../src/files/readMesh.ts";
import {
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

/** The corners of every triangle read, nine numbers each. */
function corners(file: string | Uint8Array, name: string): number[] {
  const read = readMesh(typeof file === "string" ? new TextEncoder().encode(file) : file, name);
  if (!read.ok) throw new Error(read.mend);
  const { positions, triangles } = read.mesh;
  return [...triangles].flatMap((vertex) => [...positions.subarray(3 * vertex, 3 * vertex + 3)]);
}

/** Area of all triangles in the plane z = 0, each counted as positive. */
function area(file: string, name: string): number {
  const c = corners(file, name);
  let sum = 0;
  for (let i = 0; i < c.length; i += 9)
    sum +=
      0.5 *
      Math.abs((c[i + 3]! - c[i]!) * (c[i + 7]! - c[i + 1]!) - (c[i + 4]! - c[i + 1]!) * (c[i + 6]! - c[i]!));
  return sum;
}

it.each(Object.entries(samples()))("the same square is read from %s", (name, bytes) => {
  expect(corners(bytes, name)).toEqual(SQUARE_CORNERS);
  expect(corners(bytes, name.toUpperCase())).toEqual(SQUARE_CORNERS);
});

it("a file is read where it stands in a larger buffer", () => {
  for (const [name, bytes] of Object.entries(samples())) {
    const inside = joined(new Uint8Array(37).fill(9), bytes, new Uint8Array(50).fill(7)).subarray(
      37,
      37 + bytes.length,
    );
    expect(corners(inside, name)).toEqual(SQUARE_CORNERS);
  }
});

describe("vertices and triangles", () => {
  it("become one only where every bit is the same, −0 and 0 aside", () => {
    const read = readMesh(binaryStl("", [0, 0, 0, 1, 0, 0, 0, 1, 0, -0, 0, 0, 1, 1e-7, 0, 0, 1, 0]), "a.stl");
    expect(read.ok && [read.mesh.positions.length / 3, read.mesh.triangles.length / 3]).toEqual([4, 2]);
  });

  it("without area are left out and counted, with the vertices only they used", () => {
    const same = [5, 5, 5, 5, 5, 5, 1, 2, 3];
    const inLine = [0, 0, 0, 8, 8, 8, 3, 3, 3];
    const read = readMesh(binaryStl("", [...same, ...SQUARE_CORNERS, ...inLine]), "a.stl");
    expect(
      read.ok && [read.mesh.positions.length / 3, read.mesh.triangles.length / 3, read.mesh.dropped],
    ).toEqual([4, 2, 2]);
  });
});

describe("STL", () => {
  it("is binary by its length, also when it begins with solid, and then with words of the text form", () => {
    expect(corners(binaryStl("solid fender"), "a.stl")).toEqual(SQUARE_CORNERS);
    expect(corners(binaryStl("solid x\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0"), "a.stl")).toEqual(
      SQUARE_CORNERS,
    );
  });

  it.each([
    ["line ends of CR LF", TEXT_STL.replaceAll("\n", "\r\n")],
    ["line ends of CR", TEXT_STL.replaceAll("\n", "\r")],
    ["capitals", TEXT_STL.toUpperCase()],
    ["no name", TEXT_STL.replaceAll(" invented", "")],
    ["normals that are no numbers", TEXT_STL.replaceAll("normal 0 0 1", "normal nan -nan(ind) inf")],
    ["exponents", TEXT_STL.replaceAll("vertex 2", "vertex +2.000000e+00")],
    ["two solids", TEXT_STL.replace("endfacet\n", "endfacet\nendsolid invented\nsolid second\n")],
    [
      "tabs and no line ends",
      TEXT_STL.replace("solid invented\n", "solid\n")
        .replaceAll(/\n(?=.)/g, "\t")
        .replace("solid\t", "solid\n"),
    ],
  ])("as text may have %s", (_, file) => {
    expect(corners(file, "a.stl")).toEqual(SQUARE_CORNERS);
  });
});

describe("OBJ", () => {
  it.each([
    ["texture and normal numbers", OBJ.replace("f 1 2 3", "vt 0 0\nvn 0 0 1\nf 1/1 2/1/1 3//1")],
    ["numbers that count back", OBJ.replace("f 1 2 3", "f -4 -3 -2")],
    ["weights or colors", OBJ.replace("v 2 0 0", "v 2 0 0 1.0").replace("v 2 2 0", "v 2 2 0 0.5 0.5 0.5")],
    [
      "groups, materials, lines, comments",
      `mtllib a.mtl\no part\ng side\nusemtl steel\ns off\n${OBJ}l 1 2\np 1\n#end`,
    ],
    ["lines carried on", OBJ.replace("f 1 2 3", "f 1 \\\n  2 \\\r\n 3")],
    ["a square face", OBJ.replace("f 1 2 3\nf 1 3 4", "f 1 2 3 4")],
    ["line ends of CR", OBJ.replaceAll("\n", "\r")],
    ["faces among the vertices", OBJ.replace("f 1 2 3\n", "").replace("v 0 2 0", "f 1 2 3\nv 0 2 0")],
  ])("may have %s", (_, file) => {
    expect(corners(file, "a.obj")).toEqual(SQUARE_CORNERS);
  });

  it.each([
    [
      "an arrowhead, hollow at its second corner",
      [
        [0, 0],
        [1, 1],
        [2, 0],
        [1, 3],
      ],
      2,
    ],
    [
      "an arrowhead, hollow at its third corner",
      [
        [1, 3],
        [0, 0],
        [1, 1],
        [2, 0],
      ],
      2,
    ],
    [
      "an L",
      [
        [0, 0],
        [3, 0],
        [3, 1],
        [1, 1],
        [1, 4],
        [0, 4],
      ],
      6,
    ],
    [
      "an L the other way round",
      [
        [0, 4],
        [1, 4],
        [1, 1],
        [3, 1],
        [3, 0],
        [0, 0],
      ],
      6,
    ],
    [
      "a comb",
      [
        [0, 0],
        [5, 0],
        [5, 3],
        [4, 3],
        [4, 1],
        [3, 1],
        [3, 3],
        [2, 3],
        [2, 1],
        [1, 1],
        [1, 3],
        [0, 3],
      ],
      11,
    ],
    [
      "a straight corner",
      [
        [0, 0],
        [1, 0],
        [2, 0],
        [2, 2],
        [0, 2],
      ],
      4,
    ],
  ])("cuts %s without covering what is hollow", (_, outline, expected) => {
    const file = `${outline.map(([x, y]) => `v ${x} ${y} 0`).join("\n")}\nf ${outline.map((_, i) => i + 1).join(" ")}\n`;
    expect(area(file, "a.obj")).toBeCloseTo(expected, 12);
  });

  it("cuts a spiral of eight turns, whose area the surveyor's formula gives", () => {
    const arm = (inner: number) =>
      Array.from({ length: 500 }, (_, i) => [
        (inner + i / 20) * Math.cos(i / 10),
        (inner + i / 20) * Math.sin(i / 10),
      ]);
    const outline = [...arm(1), ...arm(1.5).reverse()] as [number, number][];
    const twice = outline.reduce((sum, [x, y], i) => {
      const [nextX, nextY] = outline[(i + 1) % outline.length]!;
      return sum + x * nextY - nextX * y;
    }, 0);
    const file = `${outline.map(([x, y]) => `v ${x} ${y} 0`).join("\n")}\nf ${outline.map((_, i) => i + 1).join(" ")}\n`;
    expect(area(file, "a.obj")).toBeCloseTo(Math.abs(twice) / 2, 9);
  });
});

describe("PLY", () => {
  it.each([
    [
      "more properties and elements, in any order",
      TEXT_PLY.replace("property float x", "property uchar red\nproperty double x")
        .replace("element face", "element edge 1\nproperty int a\nproperty list uchar float b\nelement face")
        .replaceAll(/^(\d) (\d) 0$/gm, "255 $1 $2 0")
        .replace("3 0 1 2", "7 2 0.5 0.5\n3 0 1 2"),
    ],
    ["the list named vertex_index", TEXT_PLY.replace("vertex_indices", "vertex_index")],
    [
      "a square face",
      TEXT_PLY.replace("element face 2", "element face 1").replace("3 0 1 2\n3 0 2 3", "4 0 1 2 3"),
    ],
    ["line ends of CR LF", TEXT_PLY.replaceAll("\n", "\r\n")],
    [
      "faces before vertices",
      `ply\nformat ascii 1.0\nelement face 2\nproperty list uchar int vertex_indices\nelement vertex 4\nproperty float x\nproperty float y\nproperty float z\nend_header\n3 0 1 2\n3 0 2 3\n0 0 0\n2 0 0\n2 2 0\n0 2 0\n`,
    ],
  ])("may have %s", (_, file) => {
    expect(corners(file, "a.ply")).toEqual(SQUARE_CORNERS);
  });
});

describe("GLB", () => {
  const withScene = (change: object) => glb({ ...gltf(), ...change });

  it("is placed by matrices, and by translation of rotation of scale, parent after child", () => {
    const half = Math.SQRT1_2;
    const nodes = [
      { children: [1], translation: [10, 0, 0], rotation: [0, 0, half, half] },
      { mesh: 0, matrix: [2, 0, 0, 0, 0, 2, 0, 0, 0, 0, 2, 0, 0, 0, 5, 1] },
    ];
    // Twice as large and 5 up, then a quarter turn about z, then 10 along x: [x, y, z] → [10 − 2y, 2x, 5].
    const read = corners(withScene({ nodes }), "a.glb");
    const expected = SQUARE_CORNERS.flatMap((_, i) =>
      i % 3 ? [] : [10 - 2 * SQUARE_CORNERS[i + 1]!, 2 * SQUARE_CORNERS[i]!, 5],
    );
    expect(read).toEqual(expected.map((value) => expect.closeTo(value, 12)));
  });

  it("without a scene has every node that is no child", () => {
    const { scenes: _, scene: __, ...rest } = gltf();
    expect(corners(glb({ ...rest, nodes: [{ mesh: 0 }, { children: [0] }] }), "a.glb")).toEqual(
      SQUARE_CORNERS,
    );
  });

  it("leaves out nodes that are not in the scene, points and lines", () => {
    const meshes = [
      {
        primitives: [
          { attributes: { POSITION: 0 }, mode: 0 },
          { attributes: { POSITION: 0 }, mode: 1 },
          { attributes: { POSITION: 0 }, indices: 1, mode: 4 },
        ],
      },
    ];
    expect(corners(withScene({ meshes, nodes: [{ mesh: 0 }, { mesh: 0 }] }), "a.glb")).toEqual(
      SQUARE_CORNERS,
    );
  });

  it.each([
    [5, [0, 0, 0, 2, 0, 0, 2, 2, 0, 2, 0, 0, 2, 2, 0, 0, 2, 0]],
    [6, SQUARE_CORNERS],
  ])("takes mode %d, without vertex numbers", (mode, expected) => {
    const meshes = [{ primitives: [{ attributes: { POSITION: 0 }, mode }] }];
    expect(corners(withScene({ meshes }), "a.glb")).toEqual(expected);
  });

  it("takes rows that are apart, and whole numbers that stand for shares of 1", () => {
    const binary = packed(44, (view) => {
      [0, 0, 0, 255, 0, 0, 255, 255, 0, 0, 255, 0].forEach((value, i) => {
        view.setUint8(8 * Math.floor(i / 3) + (i % 3), value);
      });
      [0, 1, 2, 0, 2, 3].forEach((vertex, i) => {
        view.setUint16(32 + 2 * i, vertex, true);
      });
    });
    const document = {
      ...gltf(),
      extensionsRequired: ["KHR_mesh_quantization"],
      accessors: [
        { bufferView: 0, componentType: 5121, normalized: true, count: 4, type: "VEC3" },
        { bufferView: 1, componentType: 5123, count: 6, type: "SCALAR" },
      ],
      bufferViews: [
        { buffer: 0, byteLength: 32, byteStride: 8 },
        { buffer: 0, byteOffset: 32, byteLength: 12 },
      ],
      nodes: [{ mesh: 0, scale: [2, 2, 2] }],
    };
    expect(corners(glb(document, binary), "a.glb")).toEqual(SQUARE_CORNERS);
  });
});
