import { readFileSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { readMesh, tooLargeMend } from "../files/readMesh.ts";
import type { LoadedMesh, LoadedMeshes, RefusedMesh } from "../setup/blockReading.ts";
import { openMend } from "./openMend.ts";

/**
 * The mesh files of a setup, read when they are asked for and once. Their paths lead from the setup's own folder;
 * from the current one for standard input. That a path does not leave it is the setup reader's care.
 * @param setupFile the setup's path; "-" = standard input
 */
export function meshesBeside(setupFile: string): LoadedMeshes {
  const folder = setupFile === "-" ? "." : dirname(setupFile);
  const known = new Map<string, LoadedMesh | RefusedMesh>();
  return {
    get(file) {
      const mesh = known.get(file) ?? meshIn(join(folder, file));
      known.set(file, mesh);
      return mesh;
    },
  };
}

function meshIn(path: string): LoadedMesh | RefusedMesh {
  let bytes: Uint8Array;
  try {
    const stats = statSync(path);
    // A pipe or a device might never end.
    if (!stats.isFile()) return { refused: "is no file; name the mesh file itself" };
    const mend = tooLargeMend(stats.size);
    if (mend !== null) return { refused: mend };
    bytes = readFileSync(path);
  } catch (error) {
    return { refused: openMend(error) };
  }
  const read = readMesh(bytes, path);
  return read.ok ? read.mesh : { refused: read.mend };
}
