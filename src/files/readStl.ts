import { type FileMesh, MeshBuilder, MeshFault } from "./meshBuilder.ts";
import { found, TextScanner } from "./textScanner.ts";

/** Bytes before the count of triangles, its own, and of one triangle (normal, three corners, attribute). */
const HEADER = 80;
const COUNT_END = 84;
const TRIANGLE = 50;

/**
 * Reads an STL file, text or binary (3D Systems, StereoLithography Interface Specification, 1989, from memory:
 * both layouts are everywhere). It has no unit. Normals are not read: they follow from the corners.
 *
 * A binary file may begin with "solid" too, so its length decides: 84 + 50 × its count of triangles. Text never
 * has that length, for four printable characters read as a count mean more than 20 GB. @throws MeshFault
 */
export function readStl(bytes: Uint8Array): FileMesh {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const count = bytes.length < COUNT_END ? 0 : view.getUint32(HEADER, true);
  if (bytes.length >= COUNT_END && bytes.length === COUNT_END + TRIANGLE * count)
    return readBinary(view, count);
  if (isText(bytes)) return readText(bytes);
  if (bytes.length < COUNT_END) throw new MeshFault("", "is too short for an STL; export it again");
  const room = Math.floor((bytes.length - COUNT_END) / TRIANGLE);
  throw new MeshFault(
    "",
    count > room
      ? `is cut off: it should hold ${count} triangles and has room for ${room}; export or copy it again`
      : `is longer than its count of ${count} triangles says; export it again`,
  );
}

function readBinary(view: DataView, count: number): FileMesh {
  const builder = new MeshBuilder();
  const numbers = [0, 0, 0];
  for (let i = 0; i < count; i++) {
    const where = () => `triangle ${i + 1} of ${count}`;
    for (let corner = 0; corner < 3; corner++) {
      const at = COUNT_END + TRIANGLE * i + 12 * (corner + 1);
      const x = view.getFloat32(at, true);
      const y = view.getFloat32(at + 4, true);
      const z = view.getFloat32(at + 8, true);
      // One test for all three: any that is not finite makes the sum of differences NaN.
      if (!(x - x + (y - y) + (z - z) === 0))
        throw new MeshFault(where(), "has a corner that is not a number; export it again");
      numbers[corner] = builder.vertex(x, y, z);
    }
    builder.triangle(numbers[0]!, numbers[1]!, numbers[2]!, where);
  }
  return builder.mesh(null);
}

/** Begins with "solid", and with no control characters but white space. */
function isText(bytes: Uint8Array): boolean {
  const start = bytes.subarray(0, 512);
  if (start.some((byte) => byte < 9 || (byte > 13 && byte < 32))) return false;
  return new TextScanner(start).word().toLowerCase() === "solid";
}

function readText(bytes: Uint8Array): FileMesh {
  const scanner = new TextScanner(bytes);
  const builder = new MeshBuilder();
  const numbers = [0, 0, 0];
  const where = () => scanner.where;
  const expectWord = (wanted: string): void => {
    const word = scanner.word();
    if (word.toLowerCase() === wanted) return;
    throw new MeshFault(scanner.where, `${found(word)} where "${wanted}" should be; export or copy it again`);
  };
  for (let word = scanner.word(); word !== ""; word = scanner.word()) {
    if (word.toLowerCase() !== "solid")
      throw new MeshFault(scanner.where, `${found(word)} where "solid" should be; export it again`);
    scanner.restOfLine(); // its name
    for (word = scanner.word(); word.toLowerCase() === "facet"; word = scanner.word()) {
      expectWord("normal");
      // Not numbers for a triangle without area, in some files.
      for (let i = 0; i < 3; i++) scanner.word();
      expectWord("outer");
      expectWord("loop");
      for (let corner = 0; corner < 3; corner++) {
        expectWord("vertex");
        numbers[corner] = builder.vertex(scanner.number(), scanner.number(), scanner.number());
      }
      builder.triangle(numbers[0]!, numbers[1]!, numbers[2]!, where);
      expectWord("endloop");
      expectWord("endfacet");
    }
    if (word.toLowerCase() !== "endsolid")
      throw new MeshFault(
        scanner.where,
        `${found(word)} where "facet" or "endsolid" should be; export or copy it again`,
      );
    scanner.restOfLine();
  }
  return builder.mesh(null);
}
