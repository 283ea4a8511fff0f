import { useMemo } from "react";
import type { FieldWindow } from "../../../studies/window/windowTypes.ts";
import type { WindowSpeech } from "../../../studies/wording/windowWords.ts";
import { askedOf } from "../../state/madeOf.ts";
import type { Truck } from "../../state/truck.ts";
import { useFormat } from "../../state/useWorkbench.ts";
import type { Answered } from "../../work/answerCache.ts";
import { useAnswer, useLastAnswered } from "../../work/useAnswer.ts";
import { windowTold } from "./windowTold.ts";

/** How far a field may go, as far as it is known. */
export interface FieldWindowAsked {
  readonly answered: Answered<"window">;
  /** Its answer, or what `windowTold` tells until there is one; null = nothing yet. */
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
  const last = useLastAnswered(answered);
  const window = useMemo(
    () => truck && answered && windowTold(truck, field, answered, last),
    [truck, field, answered, last],
  );
  const speech = useMemo(() => truck && { model: truck.model, format, document }, [truck, format, document]);
  if (answered === null || speech === null) return null;
  return { answered, window, speech };
}
