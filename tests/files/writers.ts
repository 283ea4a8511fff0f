import type { BufferGeometry, Object3D } from "three";
import { GLTFExporter } from "three/addons/exporters/GLTFExporter.js";
import { OBJExporter } from "three/addons/exporters/OBJExporter.js";
import { PLYExporter } from "three/addons/exporters/PLYExporter.js";
import { STLExporter } from "three/addons/exporters/STLExporter.js";

/** Files as the exporters of three.js write them: an outside hand for every format. */
const WRITERS: Readonly<Record<string, (object: Object3D) => Uint8Array>> = {
  "binary.stl": (object) => bytesOf(new STLExporter().parse(object, { binary: true })),
  "text.stl": (object) => bytesOf(new STLExporter().parse(object, { binary: false })),
  "text.obj": (object) => bytesOf(new OBJExporter().parse(object)),
  "text.ply": (object) => bytesOf(writtenPly(object, { binary: false })),
  "little-endian.ply": (object) => bytesOf(writtenPly(object, { binary: true, littleEndian: true })),
  "big-endian.ply": (object) => bytesOf(writtenPly(object, { binary: true, littleEndian: false })),
};

export const WRITTEN_NAMES = Object.keys(WRITERS);

/** A geometry as a file of that name. */
export function written(name: string, object: Object3D): Uint8Array {
  const write = WRITERS[name];
  if (!write) throw new RangeError(`written: no writer for ${name}`);
  object.updateMatrixWorld(true);
  return write(object);
}

/** An object as a GLB file. */
export async function writtenGlb(object: Object3D): Promise<Uint8Array> {
  object.updateMatrixWorld(true);
  const file = await new GLTFExporter().parseAsync(object, { binary: true });
  if (!(file instanceof ArrayBuffer)) throw new TypeError("writtenGlb: asked for a GLB, got JSON");
  return new Uint8Array(file);
}

/** Without a callback, which would wait for a browser's next frame. */
function writtenPly(object: Object3D, options: object): string | ArrayBuffer {
  const file: string | ArrayBuffer | null = new PLYExporter().parse(
    object,
    undefined as never,
    options as never,
  );
  if (file === null) throw new TypeError("writtenPly: nothing was written");
  return file;
}

function bytesOf(file: string | ArrayBuffer | ArrayBufferView): Uint8Array {
  if (typeof file === "string") return new TextEncoder().encode(file);
  return ArrayBuffer.isView(file)
    ? new Uint8Array(file.buffer, file.byteOffset, file.byteLength)
    : new Uint8Array(file);
}

/** The corners of every triangle, nine numbers each, where the geometry itself says they are. */
export function cornersOf(geometry: BufferGeometry): number[] {
  const { index } = geometry;
  const position = geometry.getAttribute("position");
  const count = index?.count ?? position.count;
  return Array.from({ length: count }, (_, i) => index?.getX(i) ?? i).flatMap((vertex) => [
    position.getX(vertex),
    position.getY(vertex),
    position.getZ(vertex),
  ]);
}

/** What the GLB exporter needs of a browser: reading a Blob. */
export class BlobReader {
  result: ArrayBuffer | null = null;
  onloadend: (() => void) | null = null;

  readAsArrayBuffer(blob: Blob): void {
    void blob.arrayBuffer().then((buffer) => {
      this.result = buffer;
      this.onloadend?.();
    });
  }
}
