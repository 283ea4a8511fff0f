import { MAX_POLYGON_CORNERS } from "./limits.ts";
import { Coordinates, type FileMesh, MeshBuilder, MeshFault } from "./meshBuilder.ts";
import { type CutWork, cutWork, splitPolygon } from "./splitPolygon.ts";
import { found, TextScanner } from "./textScanner.ts";

/**
 * Reads the faces of an OBJ file (Wavefront, "Object Files", appendix B1 of the Advanced Visualizer manual, from
 * memory). It has no unit. Groups, materials, normals, texture coordinates, lines and points are passed over;
 * faces of more than three corners are cut into triangles. @throws MeshFault, also for free-form surfaces
 */
export function readObj(bytes: Uint8Array): FileMesh {
  const scanner = new TextScanner(bytes);
  const builder = new MeshBuilder();
  const vertices = new Coordinates();
  const where = () => scanner.where;
  const work = cutWork(bytes.length);
  do {
    const keyword = scanner.wordOfLine();
    if (keyword === "v") {
      const [x, y, z] = [coordinate(scanner), coordinate(scanner), coordinate(scanner)];
      vertices.add(x, y, z);
    } else if (keyword === "f" || keyword === "fo") {
      const corners = faceCorners(scanner, vertices.count);
      if (corners.length === 3) addTriangle(builder, vertices, corners, [0, 1, 2], where);
      else addPolygon(builder, vertices, corners, where, work);
    } else if (keyword === "surf" || keyword === "curv") {
      throw new MeshFault(scanner.where, "has a free-form surface; export it as triangles");
    }
  } while (scanner.skipLine());
  if (vertices.count === 0)
    throw new MeshFault("", 'has no line that begins with "v"; is it an OBJ? export it again');
  return builder.mesh(null);
}

function coordinate(scanner: TextScanner): number {
  const word = scanner.wordOfLine();
  if (word === "")
    throw new MeshFault(scanner.where, "a vertex takes three numbers; export or copy it again");
  return scanner.finite(word);
}

/** Vertex numbers of a face, from 0. A corner is `v`, `v/vt`, `v//vn` or `v/vt/vn`; minus counts back from the last. */
function faceCorners(scanner: TextScanner, vertexCount: number): number[] {
  const corners: number[] = [];
  for (let word = scanner.wordOfLine(); word !== ""; word = scanner.wordOfLine()) {
    const slash = word.indexOf("/");
    const text = slash < 0 ? word : word.slice(0, slash);
    const number = /^[+-]?\d+$/.test(text) ? Number(text) : Number.NaN;
    const index = number < 0 ? vertexCount + number : number - 1;
    if (!(index >= 0 && index < vertexCount))
      throw new MeshFault(
        scanner.where,
        `corner ${found(word)} names no vertex of the ${vertexCount} before it; export or copy it again`,
      );
    if (corners.length >= MAX_POLYGON_CORNERS)
      throw new MeshFault(
        scanner.where,
        `a face has more than ${MAX_POLYGON_CORNERS} corners; export it as triangles`,
      );
    corners.push(index);
  }
  if (corners.length < 3)
    throw new MeshFault(
      scanner.where,
      `a face has ${corners.length} corners; it takes 3 or more, export it again`,
    );
  return corners;
}

function addPolygon(
  builder: MeshBuilder,
  vertices: Coordinates,
  corners: readonly number[],
  where: () => string,
  work: CutWork,
) {
  const positions = corners.flatMap((corner) => [
    vertices.at(corner, 0),
    vertices.at(corner, 1),
    vertices.at(corner, 2),
  ]);
  const cut = splitPolygon(positions, where, work);
  for (let i = 0; i < cut.length; i += 3)
    addTriangle(builder, vertices, corners, [cut[i]!, cut[i + 1]!, cut[i + 2]!], where);
}

function addTriangle(
  builder: MeshBuilder,
  vertices: Coordinates,
  corners: readonly number[],
  [a, b, c]: readonly [number, number, number],
  where: () => string,
): void {
  const add = (corner: number) =>
    builder.vertex(vertices.at(corner, 0), vertices.at(corner, 1), vertices.at(corner, 2));
  builder.triangle(add(corners[a]!), add(corners[b]!), add(corners[c]!), where);
}
