import { randomBytes } from "node:crypto";
import { closeSync, fchmodSync, fsyncSync, openSync, unlinkSync } from "node:fs";
import { join } from "node:path";
import type { OutTarget } from "./outTarget.ts";
import { writeAll } from "./writeAll.ts";

/**
 * Writes a new file into the folder of a target, down to the disk, to be renamed to it: so the target is the old file or
 * the whole new one at every moment. @returns its path @throws the system's error, with nothing left in the folder
 */
export function writeBeside({ folder, mode }: OutTarget, bytes: Uint8Array): string {
  const path = join(folder, `.wellsweep-${randomBytes(8).toString("hex")}.part`);
  // Never a file that is there, nor through a link.
  const handle = openSync(path, "wx");
  let isOpen = true;
  try {
    writeAll(handle, bytes);
    if (mode !== null) fchmodSync(handle, mode);
    toDisk(handle);
    isOpen = false;
    closeSync(handle);
    return path;
  } catch (error) {
    if (isOpen) closeSync(handle);
    unlinkSync(path);
    throw error;
  }
}

/** Sees that a renaming lasts too, where the system can. */
export function folderToDisk(folder: string): void {
  try {
    const handle = openSync(folder, "r");
    try {
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
  } catch {
    // Some systems open no folders; the files themselves are on disk.
  }
}

/** Some file systems know no such thing. */
const CANNOT = new Set(["EINVAL", "ENOSYS", "ENOTSUP"]);

function toDisk(handle: number): void {
  try {
    fsyncSync(handle);
  } catch (error) {
    if (!CANNOT.has((error as NodeJS.ErrnoException).code ?? "")) throw error;
  }
}
