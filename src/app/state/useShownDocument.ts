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

/** The same without the body, which the worker has already: what is asked is told by its text, and a scan is long. */
export function useDocumentToAsk(variant: string | null): unknown {
  const shown = useShownDocument(variant);
  return useMemo(() => removeAt(shown, ["truck", "body"]), [shown]);
}
