import { MAX_GLB_JSON } from "./limits.ts";
import { MeshFault } from "./meshBuilder.ts";
import { found } from "./textScanner.ts";

/** A JSON object of a file, not checked yet. */
export type Loose = Readonly<Record<string, unknown>>;

/** The two parts of a GLB file. */
export interface GlbDocument {
  readonly json: Loose;
  /** The binary chunk; empty when there is none. */
  readonly binary: DataView;
}

const MAGIC = 0x46546c67; // "glTF"
const JSON_CHUNK = 0x4e4f534a;
const BINARY_CHUNK = 0x004e4942;

/** Takes a GLB file apart: 12 bytes of header, then chunks of length, type, data. @throws MeshFault */
export function readGlbDocument(bytes: Uint8Array): GlbDocument {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const cutOff = (at: number) => new MeshFault(`byte ${at}`, "the file is cut off; export or copy it again");
  if (bytes.length < 20) throw cutOff(bytes.length);
  if (view.getUint32(0, true) !== MAGIC)
    throw new MeshFault("", 'does not begin with "glTF"; is it a GLB? export it again');
  const version = view.getUint32(4, true);
  if (version !== 2) throw new MeshFault("", `is GLB version ${version}; export it as version 2`);
  const length = view.getUint32(8, true);
  if (length > bytes.length) throw cutOff(bytes.length);
  let json: Loose | null = null;
  let binary: DataView = new DataView(new ArrayBuffer(0));
  let hasBinary = false;
  for (let at = 12; at + 8 <= length; ) {
    const size = view.getUint32(at, true);
    const type = view.getUint32(at + 4, true);
    if (at + 8 + size > length) throw cutOff(length);
    if (type === JSON_CHUNK && json === null) json = parsed(bytes.subarray(at + 8, at + 8 + size));
    if (type === BINARY_CHUNK && !hasBinary) {
      binary = new DataView(bytes.buffer, bytes.byteOffset + at + 8, size);
      hasBinary = true;
    }
    at += 8 + Math.ceil(size / 4) * 4;
  }
  if (json === null) throw new MeshFault("", "has no JSON chunk; export it again");
  checkExtensions(json);
  return { json, binary };
}

function parsed(bytes: Uint8Array): Loose {
  if (bytes.length > MAX_GLB_JSON)
    throw new MeshFault(
      "JSON chunk",
      `is larger than ${MAX_GLB_JSON / 1024 / 1024} MB; join the parts and export it again`,
    );
  let value: unknown;
  try {
    value = JSON.parse(new TextDecoder("utf-8", { fatal: true }).decode(bytes));
  } catch {
    throw new MeshFault("JSON chunk", "cannot be read; export it again");
  }
  return objectAt(value, "JSON chunk");
}

/** What a file needs beyond the specification, and leaves the shape as it is. */
const HARMLESS = /^(KHR_materials_|KHR_texture_|EXT_texture_|KHR_lights_|KHR_mesh_quantization$|KHR_xmp)/;

function checkExtensions(json: Loose): void {
  for (const extension of listAt(json, "extensionsRequired", "JSON chunk"))
    if (!HARMLESS.test(String(extension)))
      throw new MeshFault("", `needs ${found(String(extension))}, which is not read here; export it without`);
}

/** @throws MeshFault unless it is an object */
export function objectAt(value: unknown, where: string): Loose {
  if (typeof value === "object" && value !== null && !Array.isArray(value)) return value as Loose;
  throw new MeshFault(where, "is missing or no object; export it again");
}

/** A list, empty where there is none. @throws MeshFault for anything else */
export function listAt(object: Loose, key: string, where: string): readonly unknown[] {
  const value = object[key] ?? [];
  if (Array.isArray(value)) return value;
  throw new MeshFault(`${where}, ${key}`, "is no list; export it again");
}

/** A whole number from 0, null where there is none. @throws MeshFault for anything else */
export function numberAt(object: Loose, key: string, where: string): number | null {
  const value = object[key];
  if (value === undefined) return null;
  if (Number.isSafeInteger(value) && (value as number) >= 0) return value as number;
  throw new MeshFault(`${where}, ${key}`, "is no whole number from 0; export it again");
}

/** Numbers, as many as asked for; null where there are none. @throws MeshFault for anything else */
export function numbersAt(
  object: Loose,
  key: string,
  count: number,
  where: string,
): readonly number[] | null {
  const value = object[key];
  if (value === undefined) return null;
  if (Array.isArray(value) && value.length === count && value.every((entry) => Number.isFinite(entry)))
    return value;
  throw new MeshFault(`${where}, ${key}`, `is not ${count} numbers; export it again`);
}
