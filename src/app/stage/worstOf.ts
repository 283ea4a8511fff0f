import type { CheckEntry } from "../../studies/reports/check.ts";
import type { Truck } from "../state/truck.ts";
import type { WorkbenchState } from "../state/workbenchState.ts";
import { work } from "../work/work.ts";

/** mm and share of lock within which a pose is the one meant: it was gone to. */
const SAME_TRAVEL = 0.05;
const SAME_STEER = 1e-3;

/** The worst place of a truck over the whole range, as far as it is known. */
export function worstOf(truck: Truck): CheckEntry | null {
  return work.of({ job: "check", truck, question: null, given: null }).answer?.worst ?? null;
}

/** Whether the pose shown is an entry's own; one that rides with the wheel is at home everywhere. */
export function isAtEntry(
  entry: CheckEntry,
  { travel, steer }: Pick<WorkbenchState, "travel" | "steer">,
): boolean {
  return (
    entry.together === true ||
    (Math.abs(entry.travel - travel) < SAME_TRAVEL && Math.abs(entry.steer - steer) < SAME_STEER)
  );
}
