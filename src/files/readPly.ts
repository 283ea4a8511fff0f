import { MAX_POLYGON_CORNERS } from "./limits.ts";
import { Coordinates, type FileMesh, MeshBuilder, MeshFault } from "./meshBuilder.ts";
import {
  type PlyElement,
  type PlyProperty,
  type PlyScalar,
  readPlyHeader,
  SCALAR_BYTES,
} from "./plyHeader.ts";
import { type CutWork, cutWork, splitPolygon } from "./splitPolygon.ts";
import { TextScanner } from "./textScanner.ts";

/** Where the numbers after the header come from, in the file's order. */
interface Numbers {
  /** The next number, whatever it is. @throws MeshFault at the end of the file */
  next(type: PlyScalar): number;
  /** Bytes that are left; no number takes less than `leastBytes` of its type. */
  readonly left: number;
  leastBytes(type: PlyScalar): number;
  /** Whether nothing but white space is left. */
  readonly isDone: boolean;
  readonly where: string;
}

/**
 * Reads the faces of a PLY file, text or binary of either byte order (Greg Turk, "The PLY Polygon File Format",
 * Stanford University 1994, from memory). It has no unit. Elements may come in any order with any properties;
 * faces of more than three corners are cut into triangles. @throws MeshFault
 */
export function readPly(bytes: Uint8Array): FileMesh {
  const { format, elements, end, line } = readPlyHeader(bytes);
  const vertexElement = elements.find(({ name }) => name === "vertex");
  if (!vertexElement) throw new MeshFault("header", 'has no element "vertex"; export it again');
  const faceElement = elements.find(({ name }) => name === "face");
  if (!faceElement || faceElement.count === 0) {
    throw new MeshFault(
      "header",
      elements.some(({ name }) => name === "tristrips")
        ? "holds strips; export it as separate triangles"
        : "holds points without faces; make a surface of them and export that",
    );
  }
  const numbers =
    format === "ascii"
      ? textNumbers(bytes, end, line)
      : binaryNumbers(bytes, end, format === "binary_little_endian");
  const vertices = new Coordinates();
  const corners = new FaceCorners();
  for (const element of elements) {
    checkRoom(element, numbers);
    if (element === vertexElement) readVertices(element, numbers, vertices);
    else if (element === faceElement) readFaces(element, numbers, corners);
    else if (element.properties.length > 0)
      for (let i = 0; i < element.count; i++)
        for (const property of element.properties) skip(property, numbers);
  }
  if (!numbers.isDone) throw new MeshFault("", "is longer than its header says; export it again");
  return corners.meshOn(vertices, cutWork(bytes.length));
}

/** A count in the header that the rest of the file cannot hold is refused before anything is read by it. */
function checkRoom({ name, count, properties }: PlyElement, numbers: Numbers): void {
  const least = properties.reduce(
    (sum, { type, countType }) => sum + numbers.leastBytes(countType ?? type),
    0,
  );
  if (count * least <= numbers.left) return;
  const mend = `is cut off: the header says ${count} of "${name}", and there is no room for them; export or copy it again`;
  throw new MeshFault("", mend);
}

function readVertices({ count, properties }: PlyElement, numbers: Numbers, vertices: Coordinates): void {
  const axes = ["x", "y", "z"].map((axis) => {
    const at = properties.findIndex(({ name, countType }) => name === axis && countType === null);
    if (at < 0) throw new MeshFault("header", `vertices have no ${axis}; export it again`);
    return at;
  });
  const point = [0, 0, 0];
  for (let i = 0; i < count; i++) {
    properties.forEach((property, at) => {
      const axis = axes.indexOf(at);
      if (axis < 0) {
        skip(property, numbers);
        return;
      }
      const value = numbers.next(property.type);
      if (!Number.isFinite(value))
        throw new MeshFault(`vertex ${i}`, `its ${property.name} is not a number; export it again`);
      point[axis] = value;
    });
    vertices.add(point[0]!, point[1]!, point[2]!);
  }
}

function readFaces({ count, properties }: PlyElement, numbers: Numbers, corners: FaceCorners): void {
  const listed = properties.find(
    ({ name, countType }) => countType !== null && (name === "vertex_indices" || name === "vertex_index"),
  );
  if (!listed?.countType) throw new MeshFault("header", "faces have no list vertex_indices; export it again");
  for (let i = 0; i < count; i++) {
    for (const property of properties) {
      if (property !== listed) {
        skip(property, numbers);
        continue;
      }
      const length = numbers.next(listed.countType);
      if (!(Number.isInteger(length) && length >= 3 && length <= MAX_POLYGON_CORNERS))
        throw new MeshFault(
          `face ${i}`,
          `has ${length} corners; it takes 3 to ${MAX_POLYGON_CORNERS}, export it again`,
        );
      corners.begin(length);
      for (let corner = 0; corner < length; corner++) corners.add(numbers.next(listed.type));
    }
  }
}

function skip({ type, countType }: PlyProperty, numbers: Numbers): void {
  const count = countType === null ? 1 : numbers.next(countType);
  if (!(Number.isInteger(count) && count >= 0 && count * numbers.leastBytes(type) <= numbers.left))
    throw new MeshFault(
      numbers.where,
      `a list of ${count} does not fit in the file; export or copy it again`,
    );
  for (let i = 0; i < count; i++) numbers.next(type);
}

/** Faces as they stand in the file: they may come before the vertices. */
class FaceCorners {
  /** For each face its count of corners, then their vertex numbers. */
  #numbers = new Float64Array(4096);
  #length = 0;

  begin(count: number): void {
    this.add(count);
  }

  add(value: number): void {
    if (this.#length === this.#numbers.length) {
      const larger = new Float64Array(2 * this.#length);
      larger.set(this.#numbers);
      this.#numbers = larger;
    }
    this.#numbers[this.#length++] = value;
  }

  meshOn(vertices: Coordinates, work: CutWork): FileMesh {
    const builder = new MeshBuilder();
    for (let at = 0, face = 0; at < this.#length; face++) {
      const where = () => `face ${face}`;
      const count = this.#numbers[at]!;
      const positions: number[] = [];
      for (let i = 1; i <= count; i++) {
        const vertex = this.#numbers[at + i]!;
        if (!(Number.isInteger(vertex) && vertex >= 0 && vertex < vertices.count))
          throw new MeshFault(
            where(),
            `names vertex ${vertex} of ${vertices.count} counted from 0; export it again`,
          );
        positions.push(vertices.at(vertex, 0), vertices.at(vertex, 1), vertices.at(vertex, 2));
      }
      const cut = splitPolygon(positions, where, work);
      const add = (i: number) => {
        const corner = 3 * cut[i]!;
        return builder.vertex(positions[corner]!, positions[corner + 1]!, positions[corner + 2]!);
      };
      for (let i = 0; i < cut.length; i += 3) builder.triangle(add(i), add(i + 1), add(i + 2), where);
      at += 1 + count;
    }
    return builder.mesh(null);
  }
}

function textNumbers(bytes: Uint8Array, start: number, line: number): Numbers {
  const scanner = new TextScanner(bytes, start, line);
  return {
    next: () => scanner.number(),
    get left() {
      return bytes.length - scanner.at;
    },
    // A digit; what parts it from the next may be missing at the end of the file.
    leastBytes: () => 1,
    get isDone() {
      return scanner.word() === "";
    },
    get where() {
      return scanner.where;
    },
  };
}

function binaryNumbers(bytes: Uint8Array, start: number, isLittle: boolean): Numbers {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let at = start;
  return {
    next(type) {
      const from = at;
      at += SCALAR_BYTES[type];
      if (at > bytes.length)
        throw new MeshFault(`byte ${from}`, "the file is cut off; export or copy it again");
      switch (type) {
        case "int8":
          return view.getInt8(from);
        case "uint8":
          return view.getUint8(from);
        case "int16":
          return view.getInt16(from, isLittle);
        case "uint16":
          return view.getUint16(from, isLittle);
        case "int32":
          return view.getInt32(from, isLittle);
        case "uint32":
          return view.getUint32(from, isLittle);
        case "float32":
          return view.getFloat32(from, isLittle);
        case "float64":
          return view.getFloat64(from, isLittle);
      }
    },
    get left() {
      return bytes.length - at;
    },
    leastBytes: (type) => SCALAR_BYTES[type],
    get isDone() {
      return bytes.subarray(at).every((byte) => byte === 10 || byte === 13 || byte === 32);
    },
    get where() {
      return `byte ${at}`;
    },
  };
}
