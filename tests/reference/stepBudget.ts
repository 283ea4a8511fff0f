import { Budget } from "../../src/studies/numeric/budget.ts";

/** A budget spent once its clock was read `looks` times: what a study reaches in it is the same on every machine. */
export function stepBudget(looks: number): Budget {
  let read = 0;
  return Budget.of(looks / 1000, () => read++);
}
