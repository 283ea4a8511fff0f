import { accessSync, constants, lstatSync, realpathSync, type Stats, statSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import {
  DANGLING_LINK,
  isInputMend,
  NO_OUT_FILE,
  NOT_OURS,
  writeMend,
} from "../../studies/wording/fileMends.ts";
import type { InputFiles } from "./inputFiles.ts";
import { isOurs } from "./isOurs.ts";
import { identityOf } from "./readBytes.ts";

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
