import {
  accessSync,
  closeSync,
  constants,
  lstatSync,
  mkdirSync,
  openSync,
  readSync,
  realpathSync,
  rmdirSync,
  type Stats,
  statSync,
} from "node:fs";
import { basename, dirname, join } from "node:path";
import {
  DANGLING_LINK,
  isInputMend,
  NO_OUT_FILE,
  NO_OUT_FOLDER,
  NOT_OURS,
  writeMend,
} from "../../studies/wording/fileMends.ts";
import { type InputFiles, identityOf } from "./readBytes.ts";

/** Where a file named by the user is to be written, links resolved. */
export interface OutTarget {
  readonly folder: string;
  readonly path: string;
  /** Permissions of the file that is there; null = there is none. */
  readonly mode: number | null;
}

/** What may not be written over. */
export interface OutRules {
  /** What this run reads. */
  readonly inputs: InputFiles;
  /** Whether a file of another program may be replaced: else scans beside a setup would be lost to a slip of the hand. */
  readonly force: boolean;
}

/** Why a name cannot be written to; the message is the mend. */
export class OutRefused extends Error {
  override readonly name = "OutRefused";
}

/** Looks at a name that is to be written to, without touching anything. @throws OutRefused */
export function outTarget(file: string, rules: OutRules): OutTarget {
  return systemRefusals(() => {
    const there = statsAt(file);
    const folder = realpathSync(dirname(there === null ? file : realpathSync(file)));
    // A file that is written beside the old one needs its folder, not the old file.
    accessSync(folder, constants.W_OK);
    if (there === null) return { folder, path: join(folder, basename(file)), mode: null };
    const path = realpathSync(file);
    refuseStrangers(path, there, rules);
    accessSync(path, constants.W_OK);
    return { folder, path, mode: there.mode & 0o777 };
  });
}

/** The system's errors as refusals, with what is said of them. @throws OutRefused; anything else as it is */
export function systemRefusals<T>(job: () => T): T {
  try {
    return job();
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === undefined) throw error;
    throw new OutRefused(writeMend(code));
  }
}

/** null = nothing is there. */
function statsAt(file: string): Stats | null {
  const named = lstatSync(file, { throwIfNoEntry: false });
  if (named === undefined) return null;
  const stats = statSync(file, { throwIfNoEntry: false });
  if (stats === undefined) throw new OutRefused(DANGLING_LINK);
  return stats;
}

function refuseStrangers(path: string, stats: Stats, { inputs, force }: OutRules): void {
  if (stats.isDirectory()) throw new OutRefused(writeMend("EISDIR"));
  if (!stats.isFile()) throw new OutRefused(NO_OUT_FILE);
  const input = inputs.nameOf(identityOf(path));
  if (input !== null) throw new OutRefused(isInputMend(input));
  if (!force && !isOurs(path)) throw new OutRefused(NOT_OURS);
}

/** Bytes looked through for the mark. */
const HEAD = 4096;

/**
 * What the files written here say at their beginning: the header of an STL, the generator of a glTF file, the first
 * comments of a DXF, an SVG, a PDF, a STEP file and a cut list. A file that has been saved by another program loses most of them.
 */
const MARKS = [
  /^Wellsweep, mm: /,
  /^glTF.{16}\{"asset":\{"version":"2\.0","generator":"Wellsweep"/s,
  /^ *999\r\nWellsweep (section|drawing), /,
  /^<svg [^>]*>\s*<!-- Wellsweep (section|drawing), /,
  /^%PDF-1\.7\n%Wellsweep drawing, /,
  /^# Wellsweep cut list, /,
  /^ISO-10303-21;\n\/\* Wellsweep drawing, /,
];

/** Whether a file was written by this program, by its mark, or is empty: nothing in it could be lost. */
function isOurs(path: string): boolean {
  const handle = openSync(path, "r");
  try {
    const head = Buffer.alloc(HEAD);
    const length = readSync(handle, head, 0, HEAD, 0);
    if (length === 0) return true;
    const text = head.subarray(0, length).toString("latin1");
    return MARKS.some((mark) => mark.test(text));
  } finally {
    closeSync(handle);
  }
}

/**
 * Does a job in a folder, which is made if only it is missing; made in vain it is taken away again when the job fails.
 * @throws OutRefused where there can be no such folder, and whatever the job throws
 */
export function inOutFolder<T>(folder: string, job: () => T): T {
  const isNew = systemRefusals(() => {
    const there = statSync(folder, { throwIfNoEntry: false });
    if (there === undefined) {
      mkdirSync(folder);
      return true;
    }
    if (!there.isDirectory()) throw new OutRefused(NO_OUT_FOLDER);
    return false;
  });
  try {
    return job();
  } catch (error) {
    if (isNew) removeEmpty(folder);
    throw error;
  }
}

function removeEmpty(folder: string): void {
  try {
    rmdirSync(folder);
  } catch {
    // What another program has put there meanwhile stays.
  }
}
