import { useMemo } from "react";
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import { isSameJson } from "../../../setup/editing/writtenValues.ts";
import { EFFORT } from "../../../studies/change/changeField.ts";
import type { ChangeReport } from "../../../studies/change/changeTypes.ts";
import type { ChangeSpeech } from "../../../studies/wording/changeWords.ts";
import { askedOf } from "../../state/madeOf.ts";
import { shownDocument } from "../../state/selectors.ts";
import type { Truck } from "../../state/truck.ts";
import { useFormat, useWorkbench } from "../../state/useWorkbench.ts";
import type { Answered } from "../../work/answerCache.ts";
import { useManyAnswers } from "../../work/useAnswer.ts";

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
  return { answered, speech: { format, document, allowance: truck.bolted.setup.allowance } };
}

/** A variant that was picked from a list of changes: the list, how it is told, of what it was, and what was picked of it. */
export interface ChosenChange {
  readonly documentId: string;
  /** The variant that was made. */
  readonly variant: string;
  /** What that was when it was made, as typed; changed since, it is no longer what was picked. */
  readonly document: unknown;
  /** The variant that the list was worked out for; null = the setup without one. */
  readonly of: string | null;
  readonly report: ChangeReport;
  readonly speech: ChangeSpeech;
  /** As `changeTitle` tells it. */
  readonly title: string;
}

const chosenChanges = createStore<{ readonly all: readonly ChosenChange[] }>()(() => ({ all: [] }));

/** Notes where a variant comes from, for as long as the page is there. */
export function noteChosen(one: ChosenChange): void {
  chosenChanges.setState(({ all }) => ({ all: [...all.filter((other) => !isOf(other, one)), one] }));
}

/** What a variant of a document was picked from; null = it was made otherwise, or changed since. @param document as typed */
export function chosenOf(documentId: string, variant: string | null, document: unknown): ChosenChange | null {
  const found = chosenChanges.getState().all.find((one) => isOf(one, { documentId, variant }));
  return found && isSameJson(found.document, document) ? found : null;
}

/** The same of the variant shown. */
export function useChosen(): ChosenChange | null {
  const documentId = useWorkbench((s) => s.documentId);
  const variant = useWorkbench((s) => s.variant);
  const document = useWorkbench(shownDocument);
  return useStore(chosenChanges, () => chosenOf(documentId, variant, document));
}

function isOf(one: ChosenChange, other: { readonly documentId: string; readonly variant: string | null }) {
  return one.documentId === other.documentId && one.variant === other.variant;
}

/** Least effort first. @param order the keys of fields, least effort first */
export function byEffort(report: ChangeReport, order: readonly string[]) {
  const rank = ({ set, trim }: ChangeReport["changes"][number]) =>
    order.indexOf(trim === null ? set[0]!.key : "trim");
  return [...report.changes].sort((a, b) => rank(a) - rank(b));
}
