import { EFFORT } from "../../../studies/change/changeField.ts";

const KEPT = "wellsweep effort order";

/** The order of effort as it was put last; a browser may keep nothing for a page. */
export function keptOrder(): readonly string[] {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEPT) ?? "null");
    const isWhole =
      Array.isArray(kept) && kept.length === EFFORT.length && EFFORT.every((key) => kept.includes(key));
    return isWhole ? (kept as readonly string[]) : EFFORT;
  } catch {
    return EFFORT;
  }
}

export function keepOrder(order: readonly string[]): void {
  try {
    localStorage.setItem(KEPT, JSON.stringify(order));
  } catch {
    // Then the next visit begins with the order it came with.
  }
}
