/** Small files of every format, the same two triangles in each: a square of side 2 cut along its diagonal. */

const text = (file: string) => new TextEncoder().encode(file);

/** Puts numbers into bytes one after another. */
export function packed(length: number, fill: (view: DataView) => void): Uint8Array {
  const bytes = new Uint8Array(length);
  fill(new DataView(bytes.buffer));
  return bytes;
}

const SQUARE = [
  [0, 0, 0],
  [2, 0, 0],
  [2, 2, 0],
  [0, 2, 0],
] as const;
const TRIANGLES = [
  [0, 1, 2],
  [0, 2, 3],
] as const;
/** The corners of both triangles in order. */
export const SQUARE_CORNERS = TRIANGLES.flat().flatMap((vertex) => [...SQUARE[vertex]!]);

/** @param header at most 80 characters that the file begins with */
export function binaryStl(header = "invented", corners: readonly number[] = SQUARE_CORNERS): Uint8Array {
  const count = corners.length / 9;
  const bytes = packed(84 + 50 * count, (view) => {
    view.setUint32(80, count, true);
    corners.forEach((value, i) => {
      view.setFloat32(84 + 50 * Math.floor(i / 9) + 12 + 4 * (i % 9), value, true);
    });
  });
  bytes.set(text(header));
  return bytes;
}

const facet = (corners: readonly (readonly number[])[]) =>
  `facet normal 0 0 1\n outer loop\n${corners.map((c) => `  vertex ${c.join(" ")}\n`).join("")} endloop\nendfacet\n`;

export const TEXT_STL = `solid invented\n${TRIANGLES.map((t) => facet(t.map((v) => SQUARE[v]!))).join("")}endsolid invented\n`;

export const OBJ = `# invented\n${SQUARE.map((v) => `v ${v.join(" ")}\n`).join("")}f 1 2 3\nf 1 3 4\n`;

const PLY_HEADER = `element vertex 4
property float x
property float y
property float z
element face 2
property list uchar int vertex_indices
end_header
`;

export const TEXT_PLY = `ply\nformat ascii 1.0\ncomment invented\n${PLY_HEADER}${SQUARE.map((v) => `${v.join(" ")}\n`).join("")}3 0 1 2\n3 0 2 3\n`;

export function binaryPly(isLittle: boolean): Uint8Array {
  const header = text(`ply\nformat binary_${isLittle ? "little" : "big"}_endian 1.0\n${PLY_HEADER}`);
  const body = packed(4 * 12 + 2 * 13, (view) => {
    SQUARE.flat().forEach((value, i) => {
      view.setFloat32(4 * i, value, isLittle);
    });
    TRIANGLES.forEach((triangle, t) => {
      view.setUint8(48 + 13 * t, 3);
      triangle.forEach((vertex, i) => {
        view.setInt32(49 + 13 * t + 4 * i, vertex, isLittle);
      });
    });
  });
  return joined(header, body);
}

/** A glTF document as a GLB file. @param json the document, or its text as it is */
export function glb(json: object | string, binary: Uint8Array = SQUARE_BINARY): Uint8Array {
  const chunk = (type: number, data: Uint8Array, pad: number) => {
    const padded = new Uint8Array(Math.ceil(data.length / 4) * 4).fill(pad);
    padded.set(data);
    const head = packed(8, (view) => {
      view.setUint32(0, padded.length, true);
      view.setUint32(4, type, true);
    });
    return joined(head, padded);
  };
  const chunks = joined(
    chunk(0x4e4f534a, text(typeof json === "string" ? json : JSON.stringify(json)), 32),
    chunk(0x004e4942, binary, 0),
  );
  const header = packed(12, (view) => {
    view.setUint32(0, 0x46546c67, true);
    view.setUint32(4, 2, true);
    view.setUint32(8, 12 + chunks.length, true);
  });
  return joined(header, chunks);
}

/** Four points in single precision, then six 16-bit vertex numbers. */
const SQUARE_BINARY = packed(60, (view) => {
  SQUARE.flat().forEach((value, i) => {
    view.setFloat32(4 * i, value, true);
  });
  TRIANGLES.flat().forEach((vertex, i) => {
    view.setUint16(48 + 2 * i, vertex, true);
  });
});

/** A fresh glTF document of the square. */
export function gltf() {
  return {
    asset: { version: "2.0" },
    scene: 0,
    scenes: [{ nodes: [0] }] as object[],
    nodes: [{ mesh: 0 }] as object[],
    meshes: [{ primitives: [{ attributes: { POSITION: 0 }, indices: 1 }] }] as object[],
    accessors: [
      { bufferView: 0, componentType: 5126, count: 4, type: "VEC3" },
      { bufferView: 1, componentType: 5123, count: 6, type: "SCALAR" },
    ] as object[],
    bufferViews: [
      { buffer: 0, byteOffset: 0, byteLength: 48 },
      { buffer: 0, byteOffset: 48, byteLength: 12 },
    ] as object[],
    buffers: [{ byteLength: 60 }] as object[],
  };
}

export function joined(...parts: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    bytes.set(part, at);
    at += part.length;
  }
  return bytes;
}

/** Every sample by a name with its format's ending. */
export function samples(): Readonly<Record<string, Uint8Array>> {
  return {
    "binary.stl": binaryStl(),
    "text.stl": text(TEXT_STL),
    "text.obj": text(OBJ),
    "text.ply": text(TEXT_PLY),
    "little-endian.ply": binaryPly(true),
    "big-endian.ply": binaryPly(false),
    "scene.glb": glb(gltf()),
  };
}
