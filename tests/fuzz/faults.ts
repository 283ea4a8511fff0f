import { disagreements } from "./agreement.ts";
import { faultsOf, PART_RUNS, runVerb, VERB_RUNS } from "./verbs.ts";

/** Of the verbs after the first, those that one setup goes through where the first refuses it: each of them in turn. */
const TURNS = 3;

/**
 * All that is wrong with what the verbs say of a setup: a line each. @param json as documents, else as texts
 * @param withPart also those of the part that is made
 * @param turn where given, a setup that the first verb refuses, as it is broken, goes through a third of the others: which
 */
export function faultsAt(text: string, json: boolean, withPart: boolean, turn?: number): string[] {
  const [first, ...rest] = [...VERB_RUNS, ...(withPart ? PART_RUNS : [])];
  const answer = runVerb(text, first!, json);
  const isBroken = turn !== undefined && answer.code === 2;
  const others = isBroken ? rest.filter((_, i) => i % TURNS === turn % TURNS) : rest;
  const answers = [answer, ...others.map((run) => runVerb(text, run, json))];
  const faults = answers.flatMap((each) => faultsOf(each, text));
  return faults.length === 0 && json ? disagreements(text, answers) : faults;
}
