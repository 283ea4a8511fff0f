import { MAX_TRIANGLES } from "../setup/reading/limits.ts";
import { accessorReader } from "./glbAccessor.ts";
import { type GlbDocument, type Loose, listAt, numberAt, objectAt, readGlbDocument } from "./glbDocument.ts";
import { placedNodes } from "./glbNodes.ts";
import { type FileMesh, MeshBuilder, MeshFault } from "./meshBuilder.ts";

/** Primitive modes that are surfaces. */
const TRIANGLES = 4;
const STRIP = 5;
const FAN = 6;

/** Primitives, each time a node places them. As many as triangles: with one node for each of a list it would not end. */
const MOST_PRIMITIVES = MAX_TRIANGLES;

/**
 * Reads the surfaces of a GLB file's scene with every node's transform applied (The Khronos Group, glTF 2.0
 * Specification, 2021: section 4 "GLB File Format Specification", 3.5 "Scenes", 3.6 "Binary Data Storage", 3.7
 * "Geometry"; from memory). It is in meters, Y up, by that specification. Points and lines are passed over.
 * @throws MeshFault, also for what would change the shape and is not read: skins, morphs, compression
 */
export function readGlb(bytes: Uint8Array): FileMesh {
  const document = readGlbDocument(bytes);
  const builder = new MeshBuilder();
  let primitiveCount = 0;
  for (const { mesh, matrix, name: meshName } of placedNodes(document.json)) {
    for (const [i, entry] of listAt(mesh, "primitives", meshName).entries()) {
      const name = `${meshName}, primitive ${i}`;
      if (++primitiveCount > MOST_PRIMITIVES)
        throw new MeshFault(name, `is past the limit of ${MOST_PRIMITIVES}; join them and export it again`);
      const primitive = objectAt(entry, name);
      const mode = numberAt(primitive, "mode", name) ?? TRIANGLES;
      if (mode === TRIANGLES || mode === STRIP || mode === FAN)
        addSurface(builder, document, primitive, mode, matrix, name);
    }
  }
  return builder.mesh("m");
}

function addSurface(
  builder: MeshBuilder,
  document: GlbDocument,
  primitive: Loose,
  mode: number,
  matrix: readonly number[],
  name: string,
): void {
  if (primitive.extensions !== undefined) {
    for (const extension of Object.keys(objectAt(primitive.extensions, name)))
      if (/draco|meshopt/i.test(extension))
        throw new MeshFault(name, `is compressed with ${extension}; export it without compression`);
  }
  const attributes = objectAt(primitive.attributes, `${name}, attributes`);
  const position = numberAt(attributes, "POSITION", name);
  if (position === null) throw new MeshFault(name, "has no POSITION; export it again");
  const points = accessorReader(document, position, "VEC3", name);
  const indices = numberAt(primitive, "indices", name);
  const corners = indices === null ? null : accessorReader(document, indices, "SCALAR", name);
  const placed = (row: number, x: number, y: number, z: number) =>
    matrix[row]! * x + matrix[4 + row]! * y + matrix[8 + row]! * z + matrix[12 + row]!;
  const vertex = (corner: number): number => {
    const i = corners ? corners.at(corner, 0) : corner;
    if (!(Number.isInteger(i) && i >= 0 && i < points.count))
      throw new MeshFault(name, `names vertex ${i} of ${points.count} counted from 0; export it again`);
    const [x, y, z] = [points.at(i, 0), points.at(i, 1), points.at(i, 2)];
    const [px, py, pz] = [placed(0, x, y, z), placed(1, x, y, z), placed(2, x, y, z)];
    if (!Number.isFinite(px + py + pz))
      throw new MeshFault(name, `vertex ${i} is not a number; export it again`);
    return builder.vertex(px, py, pz);
  };
  const count = corners?.count ?? points.count;
  if (mode === TRIANGLES && count % 3 !== 0)
    throw new MeshFault(name, `${count} corners make no whole triangles; export it again`);
  const where = () => name;
  for (let i = 0; i + 2 < count; i += mode === TRIANGLES ? 3 : 1)
    builder.triangle(vertex(mode === FAN ? 0 : i), vertex(i + 1), vertex(i + 2), where);
}
