import { readReadings } from "../../../setup/readReadings.ts";
import { readingAt } from "../../../studies/wording/measureWords.ts";
import { memoLast } from "../../state/memoLast.ts";
import { shownDocument } from "../../state/selectors.ts";
import type { TypedDocument } from "../../state/typedDocument.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";

/** A reading that no truck can have, alone or with the others. */
export interface ImpossibleLine {
  /** Its place among the readings. */
  readonly at: number;
  /** One sentence without a full stop; numbers other readings by their places, from 1. */
  readonly mend: string;
}

const impossible = memoLast((document: TypedDocument): readonly ImpossibleLine[] =>
  readReadings(document, "").leftOut.map(({ key, mend }) => ({ at: readingAt(key), mend })),
);
const NONE: readonly ImpossibleLine[] = [];

/** The readings of the setup shown that are left out since they cannot be; the same list until it changes. */
export function useImpossible(): readonly ImpossibleLine[] {
  return useWorkbench((s) => {
    const document = shownDocument(s);
    return document ? impossible(document) : NONE;
  });
}
