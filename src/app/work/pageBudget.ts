import { Budget } from "../../studies/numeric/budget.ts";

/** Seconds a study of the page may take unless its user asks it to search longer. */
const PAGE_SECONDS = 2;

/** What a study of the page may spend, from now on. */
export function pageBudget(seconds = PAGE_SECONDS): Budget {
  return Budget.of(seconds, () => performance.now());
}
