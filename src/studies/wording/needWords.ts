import type { KeyPath } from "../../setup/types/keyPath.ts";

/** How much is to be measured before there is an answer. */
export function needCount(needs: readonly KeyPath[]): string {
  if (needs.length === 0)
    return "Every number is in, but the truck does not go together as they are; see what is said above.";
  return needs.length === 1 ? "It needs one thing more:" : `It needs ${needs.length} things, in this order:`;
}
