import type { CheckEntry } from "../../studies/reports/check.ts";
import type { WorkbenchState } from "../state/workbenchState.ts";

/** mm and share of lock within which a pose is the one meant: it was gone to. */
const SAME_TRAVEL = 0.05;
const SAME_STEER = 1e-3;

/** The worst place over the whole range, once it is known. */
export function worstOf({ check }: Pick<WorkbenchState, "check">): CheckEntry | null {
  return check.status === "done" ? check.report.worst : null;
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
