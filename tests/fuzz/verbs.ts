import { type Captured, captured } from "../cli/captured.ts";

/** A verb as it is run here: its options keep the work of a sound truck small. */
export interface VerbRun {
  readonly verb: string;
  readonly options: readonly string[];
}

/** Every verb that reads a setup. `envelope` writes files: it is asked for none, so it reads the setup and refuses. */
export const VERB_RUNS: readonly VerbRun[] = [
  { verb: "pose", options: [] },
  { verb: "check", options: ["--tolerance", "5 mm"] },
  { verb: "sweep", options: ["--steps", "2"] },
  { verb: "map", options: ["--rows", "2", "--cols", "2"] },
  { verb: "geometry", options: [] },
  { verb: "align", options: [] },
  { verb: "limits", options: [] },
  { verb: "air", options: [] },
  { verb: "floor", options: [] },
  { verb: "envelope", options: [] },
];

/** What one verb said of one setup. */
export interface VerbAnswer extends Captured {
  readonly verb: string;
  readonly json: boolean;
}

/** Runs every verb on the text of a setup. */
export function runVerbs(text: string, json: boolean, runs: readonly VerbRun[] = VERB_RUNS): VerbAnswer[] {
  return runs.map(({ verb, options }) => ({
    ...captured([verb, "-", ...options, ...(json ? ["--json"] : [])], text),
    ...{ verb, json },
  }));
}

/** What is wrong with an answer whatever the setup: a line each, empty when nothing is. */
export function faultsOf({ verb, json, code, out, error }: VerbAnswer): string[] {
  const faults: string[] = [];
  const fault = (what: string) => faults.push(`${verb}: ${what}`);
  if (/fault of the program/.test(error)) fault(`throws: ${error.trim()}`);
  else if (code === 2) {
    if (out !== "") fault("prints an answer and exits 2");
    // One line that names the file, then a key or option where there is one, and the mend.
    if (!/^standard input: [^\n\r]+\n$/.test(error)) fault(`exits 2 without one plain line: ${error}`);
  } else if (code !== 0 && code !== 1) fault(`exits ${code}`);
  else if (out === "") fault(`exits ${code} without an answer`);
  else if (json && !isJson(out)) fault("prints what is no JSON");
  for (const text of [out, error]) {
    const nonsense = /\bNaN\b|undefined|\[object|\bInfinity\b|\bnull\b/.exec(
      json && text === out ? "" : text,
    );
    if (nonsense && !isQuoted(text, nonsense.index))
      fault(`says ${nonsense[0]}: ${text.slice(Math.max(0, nonsense.index - 60), nonsense.index + 30)}`);
  }
  if (json && /\bNaN\b|undefined|\[object|\bInfinity\b/.test(out) && code !== 2) fault("NaN in JSON");
  return faults;
}

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

/** Whether a place in a line is inside what the setup itself holds: the value as typed is told back. */
function isQuoted(text: string, at: number): boolean {
  const line = text.slice(text.lastIndexOf("\n", at) + 1).split("\n")[0]!;
  return (
    /: (?:"[^"]*"?|\{[^}]*\}?|\[[^\]]*\]?|null|NaN|Infinity): /.test(line) ||
    /"[^"]*$/.test(line.slice(0, 40))
  );
}
