import { mkdirSync, rmdirSync, statSync } from "node:fs";
import { NO_OUT_FOLDER } from "../../studies/wording/fileMends.ts";
import { OutRefused, systemRefusals } from "./outTarget.ts";

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
