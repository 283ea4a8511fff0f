import type { NamedMesh } from "../geometry/drawnFile.ts";
import type { TriangleMesh } from "../geometry/triangleMesh.ts";

// Numbers of the format.
const MAGIC = 0x46546c67;
const VERSION = 2;
const JSON_CHUNK = 0x4e4f534a;
const BIN_CHUNK = 0x004e4942;
const FLOAT = 5126;
const UNSIGNED_INT = 5125;
const ARRAY_BUFFER = 34962;
const ELEMENT_ARRAY_BUFFER = 34963;
const SPACE = 0x20;

const METERS = 0.001;

/**
 * Binary glTF of surfaces, a node each (The Khronos Group, glTF 2.0 Specification, 2021: sections 3.4 "Coordinate System
 * and Units", 3.6 "Binary Data Storage", 3.7 "Geometry", 4 "GLB File Format Specification"; from memory). Meters; glTF has
 * +Y up, +Z forward and +X to the left, so a point of the truck [X forward, Y left, Z up] is written as
 * [Y, Z, X]. Vehicle axes or a frame that lies like them, mm. Indexed triangles; no normals, which by the specification means flat shading.
 * @param notes kept in `asset.extras`: what the surfaces are and what they do not say
 * @throws RangeError for a mesh without triangles, a coordinate that is not finite or a file past 4 GB
 */
export function glbBytes(
  meshes: readonly NamedMesh[],
  notes: Readonly<Record<string, string>> = {},
): Uint8Array {
  const views: object[] = [];
  const accessors: object[] = [];
  const blocks: (Float32Array | Uint32Array)[] = [];
  let length = 0;
  const addBlock = (block: Float32Array | Uint32Array, target: number, accessor: object): number => {
    views.push({ buffer: 0, byteOffset: length, byteLength: block.byteLength, target });
    accessors.push({ bufferView: views.length - 1, ...accessor });
    blocks.push(block);
    length += block.byteLength; // a multiple of 4: every block begins where its numbers may
    return accessors.length - 1;
  };
  const gltfMeshes = meshes.map(({ name, mesh }) => {
    if (mesh.triangles.length === 0) throw new RangeError(`glbBytes: ${name} has no triangles`);
    const points = gltfPoints(mesh, name);
    const position = addBlock(points, ARRAY_BUFFER, {
      componentType: FLOAT,
      count: points.length / 3,
      type: "VEC3",
      ...boundsOf(points),
    });
    const indices = addBlock(mesh.triangles, ELEMENT_ARRAY_BUFFER, {
      componentType: UNSIGNED_INT,
      count: mesh.triangles.length,
      type: "SCALAR",
    });
    return { name, primitives: [{ attributes: { POSITION: position }, indices }] };
  });
  const document = {
    asset: { version: "2.0", generator: "Wellsweep", extras: notes },
    scene: 0,
    scenes: [{ nodes: meshes.map((_, i) => i) }],
    nodes: meshes.map(({ name }, i) => ({ name, mesh: i })),
    meshes: gltfMeshes,
    buffers: [{ byteLength: length }],
    bufferViews: views,
    accessors,
  };
  return packed(new TextEncoder().encode(JSON.stringify(document)), blocks, length);
}

function gltfPoints({ positions }: TriangleMesh, name: string): Float32Array {
  const points = new Float32Array(positions.length);
  for (let i = 0; i < positions.length; i += 3) {
    points[i] = positions[i + 1]! * METERS;
    points[i + 1] = positions[i + 2]! * METERS;
    points[i + 2] = positions[i]! * METERS;
  }
  const bad = points.findIndex((value) => !Number.isFinite(value));
  if (bad >= 0) throw new RangeError(`glbBytes: ${name} has a vertex at ${points[bad]}`);
  return points;
}

/** Of the rounded numbers, as the specification asks. */
function boundsOf(points: Float32Array): { min: number[]; max: number[] } {
  const min = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  const max = min.map((value) => -value);
  for (let i = 0; i < points.length; i++) {
    min[i % 3] = Math.min(min[i % 3]!, points[i]!);
    max[i % 3] = Math.max(max[i % 3]!, points[i]!);
  }
  return { min, max };
}

/** Header, JSON chunk padded with spaces, binary chunk; all little-endian, chunks begin at multiples of 4. */
function packed(
  json: Uint8Array,
  blocks: readonly (Float32Array | Uint32Array)[],
  binLength: number,
): Uint8Array {
  const jsonLength = Math.ceil(json.length / 4) * 4;
  const total = 12 + 8 + jsonLength + 8 + binLength;
  if (total > 0xffffffff) throw new RangeError(`glbBytes: ${total} bytes are more than the format can count`);
  const bytes = new Uint8Array(total);
  const view = new DataView(bytes.buffer);
  const words = (at: number, ...values: number[]) =>
    values.forEach((value, i) => {
      view.setUint32(at + 4 * i, value, true);
    });
  words(0, MAGIC, VERSION, total, jsonLength, JSON_CHUNK);
  bytes.fill(SPACE, 20, 20 + jsonLength);
  bytes.set(json, 20);
  words(20 + jsonLength, binLength, BIN_CHUNK);
  let at = 28 + jsonLength;
  for (const block of blocks) {
    const isFloat = block instanceof Float32Array;
    for (let i = 0; i < block.length; i++, at += 4) {
      if (isFloat) view.setFloat32(at, block[i]!, true);
      else view.setUint32(at, block[i]!, true);
    }
  }
  return bytes;
}
