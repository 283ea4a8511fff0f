import { disagreements } from "./agreement.ts";
import { faultsOf, PART_RUNS, runVerb, VERB_RUNS } from "./verbs.ts";

/**
 * All that is wrong with what the verbs say of a setup: a line each. @param json as documents, else as texts
 * @param withPart also those of the part that is made
 */
export function faultsAt(text: string, json: boolean, withPart: boolean): string[] {
  const answers = [...VERB_RUNS, ...(withPart ? PART_RUNS : [])].map((run) => runVerb(text, run, json));
  const faults = answers.flatMap((answer) => faultsOf(answer, text));
  return faults.length === 0 && json ? disagreements(text, answers) : faults;
}
