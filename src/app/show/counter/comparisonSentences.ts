import type { Doubt } from "../../../studies/doubts/doubt.ts";
import { ofOneExample } from "../../../studies/wording/answerWords.ts";
import {
  halfTrack,
  type Mention,
  outSentence,
  rangeClause,
  rangeSentence,
  type SteeringFacts,
  steerClause,
  steeringFacts,
  steerSentence,
} from "../../../studies/wording/comparisonWords.ts";
import type { TruckAnswer } from "../../../studies/wording/counterFacts.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import type { Comparison, Contender } from "./useComparison.ts";

/** What is said of a comparison, in order; null = not known yet. */
export interface ComparisonSentences {
  readonly out: string | null;
  readonly steer: string | null;
  readonly range: string | null;
}

/**
 * The three sentences of a comparison, which hold under its `conditionLines`; two that are one truck are told of once.
 * @param by how two are called; a letter takes less room, and says no less where the names stand beside the letters
 */
export function comparisonSentences(
  comparison: Comparison,
  by: "name" | "letter" = "name",
): ComparisonSentences {
  const { first, second, stances, travel, format } = comparison;
  const told = toldOf(comparison);
  const called = (one: Contender): Mention =>
    by === "letter" && told.length > 1 ? { letter: one.letter } : one.name;
  const at = stances.findIndex((stance) => stance.travel === travel);
  const [a, b] = told.map(({ truck }) => halfTrack(truck.model));
  const steering = told.flatMap((one) => steeringFactsOf(one, at, format) ?? []);
  const steers = steering.map((facts, i) =>
    steerClause(called(told[i]!), facts, told[i]!.truck.model, format),
  );
  const ranges = told.flatMap((one) =>
    one.answer.report ? [rangeClause(called(one), one.answer.report, one.truck.model, format)] : [],
  );
  const model = told[0]?.truck.model;
  const isAll = (clauses: readonly string[]) => told.length > 0 && clauses.length === told.length;
  return {
    out:
      first && second && told.length === 2 && typeof a === "number" && typeof b === "number"
        ? outSentence([called(first), called(second)], [a, b], format)
        : null,
    steer: model && isAll(steers) ? steerSentence(travel, model, steers, steering, format) : null,
    range: isAll(ranges) ? rangeSentence(ranges) : null,
  };
}

/** What is told of one truck's steering at a height, by its place among those asked for; null = not known yet. */
function steeringFactsOf(
  { truck, answer }: { readonly truck: Contender["truck"]; readonly answer: TruckAnswer },
  at: number,
  format: LengthFormat,
): SteeringFacts | null {
  const steering = answer.steering?.[at];
  const height = answer.heights?.[at];
  return steering && height !== undefined ? steeringFacts(steering, height, truck.model, format) : null;
}

/** The trucks to tell of: both, or the one that both are. */
export function toldOf({ first, second, isSame }: Comparison): readonly Contender[] {
  const both = [first, second].filter((one) => one !== null);
  return first && isSame ? [first] : ofOneExample(both);
}

/** What is in doubt of both of two alike, to be told once; null = not all that is in doubt of the one is of the other. */
export function alikeDoubts(told: readonly Pick<Contender, "doubts">[]): readonly Doubt[] | null {
  const [first, second] = told;
  if (!first || !second || first.doubts.length === 0) return null;
  const [a, b] = [first, second].map(({ doubts }) =>
    doubts.map(({ kind, text }) => `${kind} ${text}`).join("\n"),
  );
  return a === b ? first.doubts : null;
}
