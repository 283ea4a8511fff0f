import { type GlbDocument, listAt, numberAt, objectAt } from "./glbDocument.ts";
import { MeshFault } from "./meshBuilder.ts";

/** Numbers of an accessor, row by row. */
export interface AccessorReader {
  readonly count: number;
  /** One number of a row that is there. */
  at(row: number, column: number): number;
}

/** Component types: bytes, how to read one, and the largest value for normalized integers. */
const COMPONENTS: Readonly<
  Record<
    number,
    { readonly bytes: number; readonly read: (view: DataView, at: number) => number; readonly most: number }
  >
> = {
  5120: { bytes: 1, read: (view, at) => view.getInt8(at), most: 127 },
  5121: { bytes: 1, read: (view, at) => view.getUint8(at), most: 255 },
  5122: { bytes: 2, read: (view, at) => view.getInt16(at, true), most: 32767 },
  5123: { bytes: 2, read: (view, at) => view.getUint16(at, true), most: 65535 },
  5125: { bytes: 4, read: (view, at) => view.getUint32(at, true), most: 4294967295 },
  5126: { bytes: 4, read: (view, at) => view.getFloat32(at, true), most: 1 },
};

/** Reads an accessor in place, once its bytes are known to be there. @throws MeshFault */
export function accessorReader(
  { json, binary }: GlbDocument,
  index: number,
  type: "VEC3" | "SCALAR",
  where: string,
): AccessorReader {
  const name = `${where}, accessor ${index}`;
  const accessor = objectAt(listAt(json, "accessors", where)[index], name);
  if (accessor.type !== type) throw new MeshFault(name, `is not of type ${type}; export it again`);
  if (accessor.sparse !== undefined) throw new MeshFault(name, "is stored sparsely; export it without");
  const component = COMPONENTS[numberAt(accessor, "componentType", name) ?? -1];
  if (!component) throw new MeshFault(name, "is of an unknown component type; export it again");
  const viewIndex = numberAt(accessor, "bufferView", name);
  const bufferView = objectAt(listAt(json, "bufferViews", where)[viewIndex ?? -1], `${name}, bufferView`);
  if (bufferView.extensions !== undefined)
    throw new MeshFault(name, "is compressed; export it without compression");
  const buffer = objectAt(
    listAt(json, "buffers", where)[numberAt(bufferView, "buffer", name) ?? -1],
    `${name}, buffer`,
  );
  if (bufferView.buffer !== 0 || buffer.uri !== undefined)
    throw new MeshFault(name, "keeps its numbers in another file; export everything as one .glb");
  const count = numberAt(accessor, "count", name) ?? 0;
  const columns = type === "VEC3" ? 3 : 1;
  const row = columns * component.bytes;
  const stride = numberAt(bufferView, "byteStride", name) ?? row;
  const viewLength = numberAt(bufferView, "byteLength", name) ?? 0;
  const offset = numberAt(accessor, "byteOffset", name) ?? 0;
  const start = (numberAt(bufferView, "byteOffset", name) ?? 0) + offset;
  const needed = count === 0 ? 0 : (count - 1) * stride + row;
  if (stride < row || offset + needed > viewLength || start + needed > binary.byteLength)
    throw new MeshFault(name, "does not fit in the file, which may be cut off; export or copy it again");
  const { bytes, read, most } = component;
  const factor = accessor.normalized === true ? 1 / most : 1;
  return { count, at: (r, column) => read(binary, start + stride * r + bytes * column) * factor };
}
