import { runFile } from "./miniVitest.ts";
import type { Switch } from "./switched.ts";

/** A test file to be run with a mutant on; −1 = none. */
export interface Asked {
  readonly file: string;
  readonly mutant: number;
}

export interface Judged {
  readonly fault: string | null;
  /** ms of processor time. */
  readonly took: number;
  /** Mutants that the file came by. */
  readonly seen: readonly number[];
}

// The process that `main.ts` starts in the copy: told which file to run, it tells what came of it.
const mutation: Switch = { active: -1, seen: new Uint8Array(Number(process.env.MUTATION_COUNT)) };
// Mutants of what is worked out when a module is read are on from the start.
mutation.active = Number(process.env.MUTATION_ACTIVE ?? -1);
Object.assign(globalThis, { mutation });

let turn = 0;
process.on("message", async ({ file, mutant }: Asked) => {
  mutation.active = mutant;
  mutation.seen.fill(0);
  const before = process.cpuUsage();
  // The test file is read anew each time, since it may work things out while it is read.
  const fault = await runFile(`${process.cwd()}/${file}?turn=${turn++}`);
  const { user, system } = process.cpuUsage(before);
  const seen = [...mutation.seen.keys()].filter((number) => mutation.seen[number] === 1);
  process.send?.({ fault, took: (user + system) / 1000, seen } satisfies Judged);
});
process.on("disconnect", () => process.exit());
process.send?.("ready");
