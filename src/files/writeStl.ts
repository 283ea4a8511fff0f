import type { TriangleMesh } from "../geometry/triangleMesh.ts";
import { plainAscii } from "./plainAscii.ts";

/** Bytes of the header, of the count after it, and of one triangle (normal, three corners, attribute). */
const HEADER = 80;
const COUNT_END = 84;
const TRIANGLE = 50;

/**
 * Binary STL of surfaces, one after another (3D Systems, StereoLithography Interface Specification, 1989, from
 * memory). STL has no unit: coordinates are written as they are, in mm, and the header says so. They are rounded
 * to 32 bits, as the format has it: at 1 m to 0.00003 mm. Normals are those of the rounded corners, 0 where there is no area.
 * @param title put in the header, as ASCII; cut to fit
 * @throws RangeError for a coordinate that is not finite in 32 bits, or more triangles than the format can count
 */
export function stlBytes(meshes: readonly TriangleMesh[], title: string): Uint8Array {
  const count = meshes.reduce((sum, { triangles }) => sum + triangles.length / 3, 0);
  if (count > 0xffffffff) throw new RangeError(`stlBytes: ${count} triangles are more than STL can count`);
  const bytes = new Uint8Array(COUNT_END + TRIANGLE * count);
  bytes.set(headerOf(title));
  const view = new DataView(bytes.buffer);
  view.setUint32(HEADER, count, true);
  let at = COUNT_END;
  for (const mesh of meshes) {
    for (let t = 0; t < mesh.triangles.length; t += 3) {
      writeTriangle(view, at, mesh, t);
      at += TRIANGLE;
    }
  }
  return bytes;
}

/** It must not begin with "solid": that is how readers know STL written as text. */
function headerOf(title: string): Uint8Array {
  const ascii = plainAscii(`Wellsweep, mm: ${title}`);
  return new TextEncoder().encode(ascii.slice(0, HEADER).padEnd(HEADER));
}

const corners = new Float32Array(9);

function writeTriangle(view: DataView, at: number, { positions, triangles }: TriangleMesh, t: number): void {
  for (let i = 0; i < 9; i++) {
    corners[i] = positions[3 * triangles[t + Math.floor(i / 3)]! + (i % 3)]!;
    if (!Number.isFinite(corners[i]))
      throw new RangeError(`stlBytes: triangle ${t / 3} has a corner at ${corners[i]}`);
  }
  const [ux, uy, uz] = [corners[3]! - corners[0]!, corners[4]! - corners[1]!, corners[5]! - corners[2]!];
  const [vx, vy, vz] = [corners[6]! - corners[0]!, corners[7]! - corners[1]!, corners[8]! - corners[2]!];
  const normal = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const size = Math.sqrt(normal[0]! ** 2 + normal[1]! ** 2 + normal[2]! ** 2);
  normal.forEach((value, axis) => {
    view.setFloat32(at + 4 * axis, size > 0 ? value / size : 0, true);
  });
  for (let i = 0; i < 9; i++) view.setFloat32(at + 12 + 4 * i, corners[i]!, true);
}
