import { startTransition, useEffect, useState } from "react";
import type { Truck } from "../state/truck.ts";
import type { TypedDocument } from "../state/typedDocument.ts";
import { useWorkbench } from "../state/useWorkbench.ts";
import { workbench } from "../state/workbench.ts";
import type { WorkbenchState } from "../state/workbenchState.ts";
import type { Answered } from "../work/answerCache.ts";
import { useAnswer } from "../work/useAnswer.ts";
import { whenKeysRest } from "./keysAtRest.ts";

/**
 * ms without a key in a field: more than lies between two presses of a hand that steps it one by one, or on two cores what is
 * worked out for the one takes its time from the curves of the next.
 */
const REST = 400;

/** What is on the board, as most of the page shows it. */
export interface Settled {
  readonly documentId: string;
  readonly document: TypedDocument | null;
  readonly truck: Truck | null;
}

/**
 * What is on the board; while curves stand beside the fields a step behind: the page follows when the frame that shows
 * them is painted and no key has come for a moment. Another setup, or a truck that comes or goes, is shown at once.
 * @param waits curves stand there
 */
export function useSettled(waits: boolean): Settled {
  const [held, setHeld] = useState<Settled>(boardNow);
  useEffect(() => {
    if (!waits) return;
    let isComing = false;
    let callOff = () => {};
    const follow = () => {
      if (isComing) return;
      isComing = true;
      callOff = afterPaint(() => {
        callOff = whenKeysRest(() => {
          isComing = false;
          startTransition(() => setHeld(boardNow));
        }, REST);
      });
    };
    follow();
    const unfollow = workbench.subscribe((now, before) => {
      if (now.truck !== before.truck || now.document !== before.document) follow();
    });
    return () => {
      unfollow();
      callOff();
    };
  }, [waits]);
  const isHeld = (s: WorkbenchState) =>
    waits && s.documentId === held.documentId && !!s.truck && !!held.truck;
  const truck = useWorkbench((s) => (isHeld(s) ? held.truck : s.truck));
  const document = useWorkbench((s) => (isHeld(s) ? held.document : s.document));
  if (truck === held.truck && document === held.document) return held;
  const now = boardNow();
  setHeld(now);
  return now;
}

/** Whether another truck than this is on the board already: what is told of this one can neither be kept nor called the answer. */
export function useIsBehind(truck: Truck | null): boolean {
  return useWorkbench((s) => s.truck !== truck);
}

/** What a truck comes nearest to; not told while another truck is on the board already. */
export function useCheckNow(truck: Truck | null): Answered<"check"> | null {
  const isBehind = useIsBehind(truck);
  const check = useAnswer("check", truck);
  return check && isBehind ? { ...check, answer: null, failure: null } : check;
}

/** The same as before where nothing of it differs. */
function boardNow(before?: Settled): Settled {
  const { documentId, document, truck } = workbench.getState();
  const isSame = before?.truck === truck && before.document === document && before.documentId === documentId;
  return isSame ? before : { documentId, document, truck };
}

/** Runs something when the next frame has been painted. @returns what calls it off */
function afterPaint(run: () => void): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const frame = requestAnimationFrame(() => {
    timer = setTimeout(run);
  });
  return () => {
    cancelAnimationFrame(frame);
    clearTimeout(timer);
  };
}
