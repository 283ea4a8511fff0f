import { run } from "../../src/cli/run.ts";

/** What one run of the command line printed and returned. */
export interface Captured {
  readonly code: number;
  readonly out: string;
  readonly error: string;
}

/** Runs the command line in this process. @param input standard input @param clock for `--budget` */
export function captured(args: readonly string[], input = "", clock?: () => number): Captured {
  let out = "";
  let error = "";
  const code = run(args, {
    writeOut: (text) => {
      out += text;
    },
    writeError: (text) => {
      error += text;
    },
    readInput: () => ({ bytes: new TextEncoder().encode(input), identity: null }),
    ...(clock ? { clock } : {}),
  });
  return { code, out, error };
}

/**
 * A clock for `--budget SECONDS` by which an envelope is a preview, where what is asked is not how fine it is: nine tenths of
 * the time are gone as soon as it is begun.
 */
export function coarseClock(seconds: number): () => number {
  let looks = 0;
  return () => (looks++ < 3 ? 0 : 900 * seconds);
}

/** Runs a verb with `--json` and reads its document. */
// biome-ignore lint/suspicious/noExplicitAny: tests look into documents whose shape is what they assert
export function capturedJson(args: readonly string[]): { code: number; document: any } {
  const { code, out, error } = captured([...args, "--json"]);
  // What is unusual of a truck made for a test is told beside its document.
  const faults = error.split("\n").filter((line) => line !== "" && !line.includes(": unusual: "));
  if (faults.length > 0) throw new Error(error);
  return { code, document: JSON.parse(out) };
}
