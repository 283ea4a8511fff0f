import { type Most, runFile } from "./miniVitest.ts";
import type { Switch } from "./switched.ts";

/** A test file to be run with a mutant on, the one that the process was begun with; −1 = none. */
export interface Asked {
  readonly file: string;
  readonly mutant: number;
  /** No test is begun after so many, or so many ms of processor time. */
  readonly most: Most;
}

export interface Judged {
  readonly fault: string | null;
  /** How many of the file's tests were run. */
  readonly tests: number;
  /** ms of processor time. */
  readonly took: number;
  /** Mutants that the file came by. */
  readonly seen: readonly number[];
}

// The process that `main.ts` starts in the copy: told which file to run, it tells what came of it.
const mutation: Switch = {
  active: Number(process.env.MUTATION_ACTIVE ?? -1),
  seen: new Uint8Array(Number(process.env.MUTATION_COUNT)),
};
Object.assign(globalThis, { mutation });

process.on("message", async ({ file, most }: Asked) => {
  const before = process.cpuUsage();
  const { fault, tests } = await runFile(`${process.cwd()}/${file}`, most);
  const { user, system } = process.cpuUsage(before);
  const seen = [...mutation.seen.keys()].filter((number) => mutation.seen[number] === 1);
  process.send?.({ fault, tests, took: (user + system) / 1000, seen } satisfies Judged);
});
process.on("disconnect", () => process.exit());
process.send?.("ready");
