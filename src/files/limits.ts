/** Every limit of the mesh readers: name, unit, reason. Triangles are capped in `setup/limits.ts`. */

/** Bytes. Two million triangles take 100 MB as binary STL; as text the most any page can hold takes about this. */
export const MAX_MESH_BYTES = 200 * 1024 * 1024;

/** Bytes of the JSON in a GLB: it lists parts, the shape itself is in the binary chunk. Read whole, it takes twenty times as much memory. */
export const MAX_GLB_JSON = 16 * 1024 * 1024;

/** Corners of one polygon. Cutting it up takes their square; a face of more is a drawing, no surface. */
export const MAX_POLYGON_CORNERS = 1000;

/** Looks for an ear, per corner of a polygon. A spiral of eight turns takes about twenty; without an end a bad outline takes minutes. */
export const EAR_LOOKS = 64;

/**
 * Corners looked at, to see whether one lies in an ear: at least, for each byte of the file, and at most. A mesh of hollow
 * faces of thirty corners takes about ten a byte; thousands of tangled ones would take minutes.
 */
export const CORNER_LOOKS = { least: 50_000_000, perByte: 25, most: 200_000_000 } as const;

/** Characters shown of what stands in a file: enough to find the place, too few to tell what is in a file that is none of ours. */
export const MAX_SHOWN = 12;
