import { useEffect, useState } from "react";
import { shareComparison } from "../../shell/share/shareComparison.ts";
import type { ShareLink } from "../../shell/share/shareLink.ts";
import { workbench } from "../../state/workbench.ts";
import type { Comparison } from "./useComparison.ts";

/** The link to what is compared, as it is now; null = it is being made. @param isWanted false = none is made */
export function useComparisonLink(comparison: Comparison, isWanted: boolean): ShareLink | null {
  const [link, setLink] = useState<ShareLink | null>(null);
  const { first, second, travel } = comparison;
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is read beside them changes with these
  useEffect(() => {
    if (!isWanted) return;
    let isGone = false;
    void shareComparison(workbench).then((made) => {
      if (!isGone) setLink(made);
    });
    return () => {
      isGone = true;
    };
  }, [first?.truck, second?.truck, travel, isWanted]);
  return link;
}
