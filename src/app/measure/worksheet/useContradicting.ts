import { useEffect, useState } from "react";
import type { SetupIssue } from "../../../setup/types/types.ts";
import { isOnAssumedLayout } from "../../../setup/worksheet/assumedLayout.ts";
import { contradicting } from "../../../studies/worksheet/contradicting.ts";
import { shownDocument } from "../../state/selectors.ts";
import { trucks } from "../../state/truck.ts";
import type { TypedDocument } from "../../state/typedDocument.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";

/** Why a truck as read does not go together. */
export interface Contradiction {
  readonly issue: SetupIssue;
  /** Readings without any one of which it does, by their places. */
  readonly inTheWay: readonly number[];
}

/** ms without a change after which readings are looked through: each is left out in turn. */
const REST = 500;

/** What was found of a document: the bar, the card and the list ask about the same. */
const known = new WeakMap<object, Contradiction>();

/** Why the truck shown is not the one read, once keys rest; null = it is. */
export function useContradicting(): Contradiction | null {
  const issues = useWorkbench((s) => s.issues);
  const document = useWorkbench(shownDocument);
  const [found, setFound] = useState<(Contradiction & { readonly of: unknown }) | null>(null);
  useEffect(() => {
    const [issue] = issues;
    // A reading that does not read tells so itself.
    if (!issue || !document || issue.key.startsWith("readings") || !isOnAssumedLayout(document)) return;
    const timer = setTimeout(() => {
      const { file, meshes } = workbench.getState();
      const fits = (one: unknown) => trucks.make(one as TypedDocument, file, null, meshes).ok;
      const why = known.get(document) ?? { issue, inTheWay: contradicting(document, fits) };
      known.set(document, why);
      setFound({ ...why, of: document });
    }, REST);
    return () => clearTimeout(timer);
  }, [issues, document]);
  return found?.of === document && issues.length > 0 ? found : null;
}
