import { useMemo } from "react";
import { effectiveDocument, withoutVariants } from "../../../setup/editing/effectiveDocument.ts";
import { removeAt } from "../../../setup/reading/setAt.ts";
import type { FieldWindow } from "../../../studies/window/windowTypes.ts";
import type { WindowSpeech } from "../../../studies/wording/windowWords.ts";
import type { Truck } from "../../state/truck.ts";
import { useFormat, useWorkbench } from "../../state/useWorkbench.ts";
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
 * @param variant the variant the truck is of; null = the setup without one @param field its key: `knuckle.hubFace`
 * @param of what the truck was made of; default what is on the board
 */
export function useFieldWindow(
  truck: Truck | null,
  variant: string | null,
  field: string,
  of?: unknown,
): FieldWindowAsked | null {
  const board = useWorkbench((s) => s.good?.document ?? null);
  const whole = of ?? board;
  const format = useFormat();
  // Without the body, which the worker has already: a window is asked for by what is typed, and a scan is long.
  const document = useMemo(() => {
    const shown = variant === null ? withoutVariants(whole) : effectiveDocument(whole, variant);
    return removeAt(shown, ["truck", "body"]);
  }, [whole, variant]);
  const question = useMemo(() => ({ document, field }), [document, field]);
  const answered = useAnswer("window", truck, { question });
  const last = useLastAnswer(answered);
  const speech = useMemo(() => truck && { model: truck.model, format, document }, [truck, format, document]);
  if (answered === null || speech === null) return null;
  return { answered, window: last?.field === field ? last : null, speech };
}
