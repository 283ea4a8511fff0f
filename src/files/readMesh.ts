import { MAX_MESH_BYTES } from "./limits.ts";
import type { FileMesh } from "./meshBuilder.ts";
import { MeshFault } from "./meshBuilder.ts";
import { readGlb } from "./readGlb.ts";
import { readObj } from "./readObj.ts";
import { readPly } from "./readPly.ts";
import { readStl } from "./readStl.ts";

/** A mesh, or what is wrong with its file: one sentence without a full stop, which says where and how to mend it. */
export type MeshResult =
  | { readonly ok: true; readonly mesh: FileMesh }
  | { readonly ok: false; readonly mend: string };

const READERS = { stl: readStl, obj: readObj, ply: readPly, glb: readGlb } as const;

type MeshFormat = keyof typeof READERS;

/** Whether a file is one of those with a mesh, by its name. */
export function isMeshName(name: string): boolean {
  return formatOf(name) !== null;
}

/** What to say of a mesh file that is too large, without reading it; null = it is not. */
export function tooLargeMend(bytes: number): string | null {
  if (bytes <= MAX_MESH_BYTES) return null;
  const mb = MAX_MESH_BYTES / (1024 * 1024);
  return `has more than ${mb} MB, the most a mesh file may have; reduce it, or cut away what no wheel comes near`;
}

/**
 * Reads a mesh file of any of the known formats: its surface as triangles, in the file's own unit and axes.
 * Vertices in the very same place become one; triangles without area are left out and counted. Never throws
 * for what is in the file, and takes time and memory in proportion to its length. three.js has loaders for all
 * four formats; they throw, warn or go on with what is broken in a file, and one of them only answers later.
 * @param name the file's name: its ending says what should be in it
 */
export function readMesh(bytes: Uint8Array, name: string): MeshResult {
  try {
    return { ok: true, mesh: readerFor(bytes, name)(bytes) };
  } catch (error) {
    if (error instanceof MeshFault) return { ok: false, mend: error.message };
    if (error instanceof RangeError && /allocation/i.test(error.message))
      return { ok: false, mend: "needs more memory than there is; reduce it" };
    throw error;
  }
}

function readerFor(bytes: Uint8Array, name: string): (bytes: Uint8Array) => FileMesh {
  const format = formatOf(name);
  if (format === null)
    throw new MeshFault("", "is no mesh file by its name; it should end in .stl, .obj, .ply or .glb");
  if (bytes.length === 0) throw new MeshFault("", "is empty; export or copy it again");
  const mend = tooLargeMend(bytes.length);
  if (mend !== null) throw new MeshFault("", mend);
  const inside = signatureOf(bytes);
  if (inside === "zip" || inside === "gzip")
    throw new MeshFault("", `is compressed (${inside}); unpack it and use the mesh file inside`);
  if (inside !== null && inside !== format) {
    throw new MeshFault(
      "",
      `ends in .${format} but holds ${inside.toUpperCase()}; rename it to end in .${inside}`,
    );
  }
  return READERS[format];
}

function formatOf(name: string): MeshFormat | null {
  const ending = /\.([a-z]+)$/i.exec(name)?.[1]?.toLowerCase() ?? "";
  return Object.hasOwn(READERS, ending) ? (ending as MeshFormat) : null;
}

/** What a file is by its first bytes; null for formats that have none of their own. */
function signatureOf(bytes: Uint8Array): "ply" | "glb" | "zip" | "gzip" | null {
  const start = String.fromCharCode(...bytes.subarray(0, 4));
  if (start === "glTF") return "glb";
  if (/^ply[\r\n]/.test(start)) return "ply";
  if (start === "PK\x03\x04") return "zip";
  return start.startsWith("\x1f\x8b") ? "gzip" : null;
}
