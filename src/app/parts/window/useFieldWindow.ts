import { useMemo } from "react";
import { windowField } from "../../../studies/window/windowField.ts";
import type { FieldWindow } from "../../../studies/window/windowTypes.ts";
import type { WindowSpeech } from "../../../studies/wording/windowWords.ts";
import { askedOf } from "../../state/madeOf.ts";
import type { Truck } from "../../state/truck.ts";
import { useFormat } from "../../state/useWorkbench.ts";
import type { Answered } from "../../work/answerCache.ts";
import { useAnswer, useLastAnswer } from "../../work/useAnswer.ts";

/** How far a field may go, as far as it is known. */
export interface FieldWindowAsked {
  readonly answered: Answered<"window">;
  /** The last answer there was; null = none yet. */
  readonly window: FieldWindow | null;
  readonly speech: WindowSpeech;
}

/**
 * Asks how far a field of a truck may go, as long as this is on the page; null without a truck.
 * @param field its key: `knuckle.hubFace`
 */
export function useFieldWindow(truck: Truck | null, field: string): FieldWindowAsked | null {
  const format = useFormat();
  const document = truck && askedOf(truck);
  const question = useMemo(() => ({ document, field }), [document, field]);
  const answered = useAnswer("window", truck, { question });
  const last = useLastAnswer(answered);
  const now = useMemo(() => {
    if (truck === null) return null;
    const found = windowField(document, truck.setup, field, truck.file);
    return found.ok ? found.value.now : null;
  }, [document, truck, field]);
  const speech = useMemo(() => truck && { model: truck.model, format, document }, [truck, format, document]);
  if (answered === null || speech === null) return null;
  if (last?.field !== field) return { answered, window: null, speech };
  // Of another value of the field what fits is the same; where it stands is told at once.
  const window = answered.answer === null && now !== null ? { ...last, now } : last;
  return { answered, window, speech };
}
