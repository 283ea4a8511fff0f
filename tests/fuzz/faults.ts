import { disagreements } from "./agreement.ts";
import { faultsOf, runVerb, VERB_RUNS } from "./verbs.ts";

/** All that is wrong with what the verbs say of a setup: a line each. @param json as documents, else as texts */
export function faultsAt(text: string, json: boolean): string[] {
  const answers = VERB_RUNS.map((run) => runVerb(text, run, json));
  const faults = answers.flatMap((answer) => faultsOf(answer, text));
  return faults.length === 0 && json ? disagreements(text, answers) : faults;
}
