import { useMemo } from "react";
import { useStore } from "zustand";
import { EFFORT } from "../../../studies/change/changeField.ts";
import type { ChangeReport } from "../../../studies/change/changeTypes.ts";
import type { ChangeSpeech } from "../../../studies/wording/changeWords.ts";
import { assumedTrimSentence } from "../../../studies/wording/standingDoubts.ts";
import { askedOf, shownOf } from "../../state/madeOf.ts";
import { shownDocument } from "../../state/selectors.ts";
import type { Truck } from "../../state/truck.ts";
import { useFormat, useWorkbench } from "../../state/useWorkbench.ts";
import type { Answered } from "../../work/answerCache.ts";
import { useManyAnswers } from "../../work/useAnswer.ts";
import { type ChosenChange, chosenChanges } from "./chosenChanges.ts";

/** The changes of a truck as far as they are known, and how they are told. */
interface Changes {
  readonly answered: Answered<"change">;
  /** `document` is the variant shown as if it were all of the file, without its body parts. */
  readonly speech: ChangeSpeech;
}

/**
 * Looks for the smallest changes of the truck shown, as long as this is on the page.
 * @param isWanted false = what is known of them is told, and no more is looked for
 */
export function useChanges(truck: Truck, isWanted: boolean): Changes {
  const format = useFormat();
  const document = askedOf(truck);
  // The order is a matter of reading: what is found does not depend on it.
  const questions = useMemo(() => [{ document, order: EFFORT }], [document]);
  const answered = useManyAnswers("change", truck, questions, isWanted)[0]!;
  const isAssumed = (part: string) => assumedTrimSentence(part, truck.bolted.setup, shownOf(truck));
  return { answered, speech: { format, document, allowance: truck.bolted.setup.allowance, isAssumed } };
}

/** What the variant shown was picked from; null = it was made otherwise, or changed since. */
export function useChosen(): ChosenChange | null {
  const documentId = useWorkbench((s) => s.documentId);
  const variant = useWorkbench((s) => s.variant);
  const document = useWorkbench(shownDocument);
  return useStore(chosenChanges.store, () => chosenChanges.of(documentId, variant, document));
}

/** Least effort first. @param order the keys of fields, least effort first */
export function byEffort(report: ChangeReport, order: readonly string[]) {
  const rank = ({ set, trim }: ChangeReport["changes"][number]) =>
    order.indexOf(trim === null ? set[0]!.key : "trim");
  return [...report.changes].sort((a, b) => rank(a) - rank(b));
}
