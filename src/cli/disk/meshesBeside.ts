import { realpathSync } from "node:fs";
import { dirname, isAbsolute, relative, resolve, sep } from "node:path";
import { MAX_MESH_BYTES } from "../../files/limits.ts";
import { readMesh, tooLargeMend } from "../../files/readMesh.ts";
import {
  type LoadedMesh,
  type LoadedMeshes,
  leavesFolder,
  type RefusedMesh,
} from "../../setup/reading/blockReading.ts";
import { MESH_OUTSIDE, meshLinkMend, NO_MESH_FILE, openMend } from "../../studies/wording/fileMends.ts";
import { type InputFiles, ReadRefused } from "./readBytes.ts";

/**
 * The mesh files of a setup, read when they are asked for and once. Their paths lead from the folder in which the setup
 * really is, links resolved; from the current one for standard input. A setup from elsewhere must not make us read any
 * file it likes: what is outside that folder, by its path or through a link, is refused unless `allowOutside`.
 * @param setupFile the setup's path; "-" = standard input
 */
export function meshesBeside(setupFile: string, allowOutside: boolean, inputs: InputFiles): LoadedMeshes {
  const known = new Map<string, LoadedMesh | RefusedMesh>();
  const load = (file: string): LoadedMesh | RefusedMesh => {
    if (!allowOutside && leavesFolder(file)) return { refused: MESH_OUTSIDE };
    try {
      const folder = setupFile === "-" ? realpathSync(".") : dirname(realpathSync(setupFile));
      const path = realpathSync(resolve(folder, file));
      if (!allowOutside && !isInside(folder, path)) return { refused: meshLinkMend(path) };
      const read = readMesh(inputs.read(path, MAX_MESH_BYTES, file), file);
      return read.ok ? read.mesh : { refused: read.mend };
    } catch (error) {
      return { refused: readMend(error) };
    }
  };
  return {
    guardsFolder: true,
    get(file) {
      const mesh = known.get(file) ?? load(file);
      known.set(file, mesh);
      return mesh;
    },
  };
}

function isInside(folder: string, path: string): boolean {
  const way = relative(folder, path);
  return !isAbsolute(way) && way !== ".." && !way.startsWith(`..${sep}`);
}

function readMend(error: unknown): string {
  if (!(error instanceof ReadRefused)) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === undefined) throw error;
    return code === "EISDIR" ? NO_MESH_FILE : openMend(code);
  }
  return error.why === "no file" ? NO_MESH_FILE : tooLargeMend(MAX_MESH_BYTES + 1)!;
}
