import { isOnAssumedLayout } from "../../setup/worksheet/assumedLayout.ts";
import { type Progress, progressOf } from "../../setup/worksheet/worksheetState.ts";
import { memoLast } from "./memoLast.ts";
import { shownDocument } from "./selectors.ts";
import type { DocumentSlice, TypedDocument } from "./typedDocument.ts";
import { useWorkbench } from "./useWorkbench.ts";

const waiting = memoLast((document: TypedDocument): Progress | null => {
  if (!isOnAssumedLayout(document)) return null;
  const progress = progressOf(document);
  return progress.missing > 0 ? progress : null;
});

/** How far a worksheet is that has too few readings for a verdict; null = there are enough, or it is no such truck. */
export function waitingFor(state: Pick<DocumentSlice, "document" | "variant">): Progress | null {
  const document = shownDocument(state);
  return document && waiting(document);
}

/** The same, for a component. */
export function useWaitingFor(): Progress | null {
  return useWorkbench(waitingFor);
}
