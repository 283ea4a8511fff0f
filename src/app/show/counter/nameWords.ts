import type { Comparison } from "./useComparison.ts";

/** The setup compared, and as what its trucks are shown: `Shop truck, aligned`. */
export function nameWords({ setupName, standing }: Pick<Comparison, "setupName" | "standing">): string {
  return standing === null ? setupName : `${setupName}, ${standing}`;
}
