import { useMemo } from "react";
import { effectiveDocument, withoutVariants } from "../../../setup/editing/effectiveDocument.ts";
import { oddsDocument } from "../../../studies/odds/oddsTruck.ts";
import type { OddsSpeech } from "../../../studies/wording/oddsWords.ts";
import type { Truck } from "../../state/truck.ts";
import { useFormat, useWorkbench } from "../../state/useWorkbench.ts";
import type { Answered } from "../../work/answerCache.ts";
import { useAnswer } from "../../work/useAnswer.ts";

/** The odds of a truck as far as they are known, and how they are told. */
export interface Odds {
  /** null = not asked for. */
  readonly answered: Answered<"odds"> | null;
  readonly speech: OddsSpeech;
}

/** Works out the odds of a truck, of whatever variant it is, as long as this is on the page. @param isAsked default true */
export function useOdds(truck: Truck, isAsked = true): Odds {
  const whole = useWorkbench((s) => s.good?.document ?? null);
  const format = useFormat();
  const { variant } = truck.setup;
  const shown = useMemo(
    () => (variant === null ? withoutVariants(whole) : effectiveDocument(whole, variant)),
    [whole, variant],
  );
  const question = useMemo(() => ({ document: oddsDocument(shown) }), [shown]);
  const answered = useAnswer("odds", isAsked ? truck : null, { question });
  const speech = useMemo(() => ({ format, document: shown }), [format, shown]);
  return { answered, speech };
}

/** Whether anybody told how well a number of the truck is known. */
export function tellsWithin({ setup }: Truck): boolean {
  return setup.within.some(({ within }) => within > 0) || setup.odds.points > 0;
}
