import { closeSync, openSync, readSync, writeFileSync } from "node:fs";
import { InputError } from "./inputError.ts";

/** A file to be written, as the user named it. */
export interface OutFile {
  readonly file: string;
  readonly content: Uint8Array | string;
}

/** What every file written here says near its beginning. */
const MARK = "Wellsweep";
/** Bytes looked through for it. */
const HEAD = 4096;

/** Why a file cannot be written, by the system's own code. */
const WRITE_MENDS: Readonly<Record<string, string>> = {
  ENOENT: "there is no such folder; make it first",
  ENOTDIR: "there is no such folder; make it first",
  EISDIR: "is a folder; name a file inside it",
  EACCES: "may not be written; choose another folder",
  EPERM: "may not be written; choose another folder",
  EROFS: "may not be written; choose another folder",
  ENOSPC: "the disk is full; make room",
  ENAMETOOLONG: "the name is too long for a file; shorten it",
};

/**
 * A file of that name that was written by this program is replaced, as output files are; any other is left alone:
 * beside a setup lie scans that are not to be lost to a slip of the hand.
 * @throws InputError when the name cannot be written to
 */
export function checkWritable(setupFile: string, option: string, file: string): void {
  const refuse = (mend: string) => InputError.ofOption(setupFile, option, file, mend);
  let handle: number;
  try {
    handle = openSync(file, "r");
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return;
    throw refuse(writeMend(error));
  }
  try {
    const head = Buffer.alloc(HEAD);
    const length = readSync(handle, head, 0, HEAD, 0);
    // An empty file holds nothing that could be lost.
    if (length === 0 || head.subarray(0, length).includes(MARK)) return;
  } catch (error) {
    throw refuse(writeMend(error));
  } finally {
    closeSync(handle);
  }
  throw refuse("is there already and was not written by this program; choose another name, or move it away");
}

/** Writes a file. @returns its bytes @throws InputError */
export function writeFile(setupFile: string, option: string, { file, content }: OutFile): number {
  try {
    writeFileSync(file, content);
  } catch (error) {
    throw InputError.ofOption(setupFile, option, file, writeMend(error));
  }
  return typeof content === "string" ? Buffer.byteLength(content) : content.length;
}

function writeMend(error: unknown): string {
  const { code } = error as NodeJS.ErrnoException;
  return (code && WRITE_MENDS[code]) || `cannot be written${code ? ` (${code})` : ""}; choose another name`;
}
