import "./oddsLine.css";
import { useMemo } from "react";
import { oddsDocument } from "../../../studies/odds/oddsTruck.ts";
import { longerEnded } from "../../../studies/wording/answerWords.ts";
import {
  againSentence,
  LIKELY_SIGN,
  type OddsSpeech,
  oddsSentence,
} from "../../../studies/wording/oddsWords.ts";
import { shownOf } from "../../state/madeOf.ts";
import type { Truck } from "../../state/truck.ts";
import { useFormat } from "../../state/useWorkbench.ts";
import { keepTogether } from "../../words/keyWords.ts";
import { type Answered, whyNone } from "../../work/answerCache.ts";
import { useManyAnswers } from "../../work/useAnswer.ts";

export type OddsLineProps = {
  truck: Truck;
  /** What the truck is called; null = there is no other. */
  letter: string | null;
};

/** The odds of a truck in a sentence or two, under their own sign; nothing where no number tells how well it is known. */
export function OddsLine({ truck, letter }: OddsLineProps) {
  return tellsWithin(truck) ? <Line truck={truck} letter={letter} /> : null;
}

function Line({ truck, letter }: OddsLineProps) {
  const { answered, speech } = useOdds(truck);
  const report = answered?.answer ?? null;
  const failure = answered && whyNone(answered);
  if (failure !== null) return <p>The odds could not be worked out: {failure}</p>;
  const again = report && againSentence(report, speech);
  const ended = report && answered?.failure;
  return (
    <p className="odds-line">
      <span className="odds-sign" aria-hidden="true">
        {LIKELY_SIGN}
      </span>{" "}
      {letter !== null && `${letter} · `}
      {report ? keepTogether(oddsSentence(report, speech)) : "Working out how likely that is…"}
      {again !== null && ` ${keepTogether(again)}`}
      {ended && (
        <small className="odds-ended" role="alert">
          {longerEnded(ended)}
        </small>
      )}
    </p>
  );
}

/** The odds of a truck as far as they are known, and how they are told. */
interface Odds {
  /** null = not asked for. */
  readonly answered: Answered<"odds"> | null;
  readonly speech: OddsSpeech;
}

/**
 * Works out the odds of a truck, of whatever variant it is, as long as this is on the page.
 * @param isWanted default true; false = what is known of them is told, and no more is worked out
 */
export function useOdds(truck: Truck, isWanted = true): Odds {
  const format = useFormat();
  const shown = shownOf(truck);
  const questions = useMemo(() => [{ document: oddsDocument(shown) }], [shown]);
  const answered = useManyAnswers("odds", truck, questions, isWanted)[0] ?? null;
  const speech = useMemo(() => ({ format, document: shown, setup: truck.setup }), [format, shown, truck]);
  return { answered, speech };
}

/** Whether anybody told how well a number of the truck is known; a reading always does. */
export function tellsWithin({ setup }: Truck): boolean {
  return setup.within.some(({ within }) => within > 0) || setup.odds.points > 0 || setup.readings.length > 0;
}
