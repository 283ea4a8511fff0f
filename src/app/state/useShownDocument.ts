import { useMemo } from "react";
import { effectiveDocument, withoutVariants } from "../../setup/editing/effectiveDocument.ts";
import { removeAt } from "../../setup/reading/setAt.ts";
import { useWorkbench } from "./useWorkbench.ts";

/** The last setup that stands, as typed, with a variant applied and without variants; null = the setup without one. */
export function useShownDocument(variant: string | null): unknown {
  const whole = useWorkbench((s) => s.good?.document ?? null);
  return useMemo(
    () => (variant === null ? withoutVariants(whole) : effectiveDocument(whole, variant)),
    [whole, variant],
  );
}

/** What is asked about a truck is told by its text: a scan is long, and what is noted beside the truck asks nothing else. */
const NOT_ASKED = [["truck", "body"], ["order"], ["jig"], ["asBuilt"]] as const;

/** The same without the body, which the worker has already, and without what changes no answer. */
export function useDocumentToAsk(variant: string | null): unknown {
  const shown = useShownDocument(variant);
  return useMemo(() => NOT_ASKED.reduce<unknown>(removeAt, shown), [shown]);
}
