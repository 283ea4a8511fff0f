import { answerClause } from "../../studies/wording/answerWords.ts";
import {
  halfTrackAt,
  outSentence,
  rangeClause,
  rangeSentence,
  steerClause,
  steerSentence,
} from "./counterWords.ts";
import type { Comparison, Contender } from "./useComparison.ts";

/** What is said of a comparison, in order; null = not known yet. */
export interface ComparisonSentences {
  readonly out: string | null;
  readonly steer: string | null;
  readonly range: string | null;
}

/** The three sentences of a comparison. Two that are one and the same truck are told of once. */
export function comparisonSentences(comparison: Comparison): ComparisonSentences {
  const { first, second, stances, travel, format } = comparison;
  const told = toldOf(comparison);
  const at = stances.findIndex((stance) => stance.travel === travel);
  const halves = told.map(({ truck }) => halfTrackAt(truck.model, travel));
  const [a, b] = halves;
  const steers = told.flatMap(({ name, truck, answer, doubts }) => {
    const steering = answer.steering?.[at];
    return steering ? [answerClause(steerClause(name, steering, truck.model), doubts)] : [];
  });
  const ranges = told.flatMap(({ name, truck, answer, doubts }) =>
    answer.report ? [answerClause(rangeClause(name, answer.report, truck.model, format), doubts)] : [],
  );
  const model = told[0]?.truck.model;
  const isAll = (clauses: readonly string[]) => told.length > 0 && clauses.length === told.length;
  return {
    out:
      first && second && told.length === 2 && typeof a === "number" && typeof b === "number"
        ? outSentence([first.name, second.name], [a, b], format)
        : null,
    steer: model && isAll(steers) ? steerSentence(travel, model, steers, format) : null,
    range: isAll(ranges) ? rangeSentence(ranges) : null,
  };
}

/** The trucks to tell of: both, or the one that both are. */
export function toldOf({ first, second }: Comparison): readonly Contender[] {
  const both = [first, second].filter((one) => one !== null);
  return first && second && first.truck === second.truck ? [first] : both;
}
