import { isOnAssumedLayout } from "../../../setup/worksheet/assumedLayout.ts";
import { type Progress, progressOf } from "../../../setup/worksheet/worksheetState.ts";
import { memoLast } from "../../state/memoLast.ts";
import { shownDocument } from "../../state/selectors.ts";
import type { TypedDocument } from "../../state/typedDocument.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";

const waiting = memoLast((document: TypedDocument): Progress | null => {
  if (!isOnAssumedLayout(document)) return null;
  const progress = progressOf(document);
  return progress.missing > 0 ? progress : null;
});

/** How far a worksheet is that has too few readings for a verdict; null = there are enough, or it is no such truck. */
export function useWaitingFor(): Progress | null {
  return useWorkbench((s) => {
    const document = shownDocument(s);
    return document && waiting(document);
  });
}
