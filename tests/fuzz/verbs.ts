import { type Captured, captured } from "../cli/captured.ts";

/** A verb as it is run here: its options keep the work of a sound truck small. */
export interface VerbRun {
  readonly verb: string;
  readonly options: readonly string[];
}

/** Seconds by the counted clock below: about a tenth of a second of work. */
const BUDGET = ["--budget", "0.05"];

/** Every verb about the truck. `envelope` writes files: asked for none, it reads the setup and refuses. */
export const VERB_RUNS: readonly VerbRun[] = [
  { verb: "pose", options: [] },
  { verb: "check", options: ["--tolerance", "2 mm"] },
  { verb: "sweep", options: ["--steps", "2"] },
  { verb: "map", options: ["--rows", "3", "--cols", "3"] },
  { verb: "geometry", options: ["--steps", "2"] },
  { verb: "align", options: [] },
  { verb: "limits", options: [] },
  { verb: "air", options: [] },
  { verb: "floor", options: [] },
  { verb: "envelope", options: [] },
];

/** Those of the part that is made, of which every block is left out in most setups. */
export const PART_RUNS: readonly VerbRun[] = [
  { verb: "order", options: [] },
  { verb: "asbuilt", options: [] },
  { verb: "loads", options: [] },
  { verb: "odds", options: ["--draws", "3"] },
  { verb: "measure", options: [] },
  { verb: "window", options: ["--field", "knuckle.hubFace", "--tolerance", "2 mm"] },
  { verb: "solve", options: ["--field", "knuckle.pinAngle", "--for", "camber=-0.5"] },
  { verb: "chart", options: ["--x", "wheel.backspacing=4, 5", "--y", "knuckle.hubFace=6", "--lock", "0.5"] },
  { verb: "change", options: ["--fields", "wheel.backspacing,trim"] },
];

/** What one verb said of one setup. */
export interface VerbAnswer extends Captured {
  readonly verb: string;
  readonly json: boolean;
}

/** Runs a verb on the text of a setup. Its budget is counted in looks at the clock, so that a run is the same anywhere. */
export function runVerb(text: string, { verb, options }: VerbRun, json: boolean): VerbAnswer {
  let milliseconds = 0;
  const args = [verb, "-", ...options, ...BUDGET, ...(json ? ["--json"] : [])];
  return { ...captured(args, text, () => milliseconds++), verb, json };
}

/** Words that nothing said to a person or a program may hold. */
const NONSENSE = /\bNaN\b|\bundefined\b|\[object|\bInfinity\b/;

/** What is wrong with an answer whatever the setup is: a line each, none when nothing is. @param setup its text */
export function faultsOf({ verb, json, code, out, error }: VerbAnswer, setup: string): string[] {
  const faults: string[] = [];
  const fault = (what: string) => faults.push(`${verb}: ${what}`);
  if (/fault of the program/.test(error)) fault(error.trim());
  else if (code === 2) {
    if (out !== "") fault("prints an answer and exits 2");
    // One line: the file, then a key, option or value where there is one, and the mend.
    if (!/^standard input: [^\n\r]{5,}\n$/.test(error)) fault(`exits 2 without one plain line: ${error}`);
  } else if (code !== 0 && code !== 1) fault(`exits ${code}`);
  else if (out === "") fault(`exits ${code} without an answer`);
  else if (json && !isJson(out)) fault("prints what is no JSON");
  for (const text of [out, error]) {
    const [nonsense] = NONSENSE.exec(text) ?? [];
    // What the setup says itself is told back.
    if (nonsense !== undefined && !setup.includes(nonsense))
      fault(`says ${nonsense}: ${around(text, nonsense)}`);
  }
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

function around(text: string, word: string): string {
  const at = text.indexOf(word);
  return text.slice(Math.max(0, at - 80), at + 40).replace(/\s+/g, " ");
}
