import { renameSync, unlinkSync } from "node:fs";
import { NAMED_TWICE, NONE_WRITTEN, someWrittenMend } from "../../studies/wording/fileMends.ts";
import { OutRefused, type OutRules, type OutTarget, outTarget, systemRefusals } from "./outTarget.ts";
import { folderToDisk, writeBeside } from "./writeBeside.ts";

/** What asks a program to end. */
const SIGNALS = ["SIGINT", "SIGTERM", "SIGHUP"] as const;

let areHeld = false;

/**
 * Runs a short job that a signal must not cut in two. One that comes meanwhile ends the program as it would have, with
 * the same exit code for the shell, but only after the job and what still follows it in this turn. From then on signals
 * wait for the end of a turn: a listener taken away again can lose one that is on its way. So this is for the last work
 * of a run.
 */
function withHeldSignals<T>(job: () => T): T {
  if (!areHeld) for (const signal of SIGNALS) process.on(signal, endBy);
  areHeld = true;
  try {
    return job();
  } finally {
    // A turn more, in which what came is handed over, even where nothing else is left to do.
    setImmediate(() => {});
  }
}

function endBy(signal: NodeJS.Signals): void {
  for (const one of SIGNALS) process.off(one, endBy);
  process.kill(process.pid, signal);
}

/** A file to be written, as the user named it. */
export interface OutFile {
  readonly file: string;
  readonly bytes: Uint8Array;
}

/** Turns what keeps a file from being written into the error the caller throws. */
export type RefuseOut = (file: string, mend: string) => Error;

/** Looks at every name before anything that takes long is worked out. @throws `refuse`'s error for the first that will not do */
export function checkOutFiles(files: readonly string[], rules: OutRules, refuse: RefuseOut): void {
  const seen = new Set<string>();
  for (const file of files) {
    const { path } = refusing(file, refuse, () => outTarget(file, rules));
    if (seen.has(path)) throw refuse(file, NAMED_TWICE);
    seen.add(path);
  }
}

/**
 * Writes files, all or none: each whole beside its place first, then all renamed. An old file survives a full disk and an
 * interrupt. @throws `refuse`'s error, which says so where a renaming failed after another had been done
 */
export function writeFiles(outs: readonly OutFile[], rules: OutRules, refuse: RefuseOut): void {
  withHeldSignals(() => {
    const beside: { readonly target: OutTarget; readonly part: string }[] = [];
    let renamed = 0;
    try {
      for (const { file, bytes } of outs) {
        const write = () => {
          const target = outTarget(file, rules); // once more: time has passed
          return { target, part: systemRefusals(() => writeBeside(target, bytes)) };
        };
        beside.push(refusing(file, refuse, write, NONE_WRITTEN));
      }
      for (const [i, { target, part }] of beside.entries()) {
        const rename = () => systemRefusals(() => renameSync(part, target.path));
        refusing(outs[i]!.file, refuse, rename, i === 0 ? NONE_WRITTEN : someWritten(outs, i));
        renamed++;
      }
    } finally {
      for (const { part } of beside.slice(renamed)) unlinkSync(part);
    }
    for (const folder of new Set(beside.map(({ target }) => target.folder))) folderToDisk(folder);
  });
}

function someWritten(outs: readonly OutFile[], count: number): string {
  const names = outs.map(({ file }) => file);
  return someWrittenMend(names.slice(0, count), names.slice(count));
}

function refusing<T>(file: string, refuse: RefuseOut, job: () => T, after = ""): T {
  try {
    return job();
  } catch (error) {
    if (!(error instanceof OutRefused)) throw error;
    throw refuse(file, after === "" ? error.message : `${error.message}; ${after}`);
  }
}
