import { useDeferredValue } from "react";

import type { Measured } from "../../../studies/measure/measured.ts";
import { measureTruck } from "../../../studies/measure/measureTruck.ts";
import { WORKSHEET_CANDIDATES } from "../../../studies/worksheet/candidates.ts";
import { worksheetAskOf } from "../../../studies/worksheet/worksheetAskOf.ts";
import { memoLast } from "../../state/memoLast.ts";
import { shownDocument } from "../../state/selectors.ts";
import type { TypedDocument } from "../../state/typedDocument.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";

const measured = memoLast((document: TypedDocument): Measured | null => {
  const { ask } = worksheetAskOf(document, WORKSHEET_CANDIDATES);
  return ask && measureTruck(ask);
});

/** What the readings of the setup shown say, once keys have had their turn; null = it has no units to read them in. */
export function useMeasured(): Measured | null {
  const document = useDeferredValue(useWorkbench(shownDocument));
  return document && measured(document);
}
