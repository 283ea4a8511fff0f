import { uncountedSides } from "../../studies/limits/limitsPastAt.ts";
import type { CheckEntry } from "../../studies/reports/check.ts";
import { isSamePart } from "../../studies/reports/gapsAt.ts";
import { gapWord } from "../../studies/wording/gapTexts.ts";
import { amountText } from "../../studies/wording/lengths.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import type { SolvedPose } from "../../suspension/solvePose.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { memoLast } from "../state/memoLast.ts";
import { shownGaps, shownPose } from "../state/shown.ts";
import type { Truck } from "../state/truck.ts";
import type { WorkbenchState } from "../state/workbenchState.ts";
import { work } from "../work/work.ts";
import type { LinearDimension } from "./overlay/dimensions.ts";

/** mm and share of lock within which a pose is the one meant: it was gone to. */
const SAME_TRAVEL = 0.05;
const SAME_STEER = 1e-3;

/** The place over the whole range that a truck's answer tells of, as far as it is known. */
export function worstOf(truck: Truck): CheckEntry | null {
  return checkOf(truck).answer?.worst ?? null;
}

/** Whether it is the worst found so far: the check was cut short. */
export function isSoFar(truck: Truck): boolean {
  return checkOf(truck).isCut;
}

const uncounted = memoLast((truck: Truck, pose: SolvedPose, limitedBy: readonly string[]) =>
  uncountedSides(truck.model, pose, limitedBy),
);

/** Sides of which a truck's answer does not count the pose shown; none while there is no answer. */
export function uncountedNow(truck: Truck, state: WorkbenchState): readonly Side[] {
  const { limitedBy } = checkOf(truck).answer ?? {};
  const pose = limitedBy && state.truck === truck ? shownPose(state) : null;
  return pose?.ok && limitedBy ? uncounted(truck, pose, limitedBy) : [];
}

function checkOf(truck: Truck) {
  return work.of({ job: "check", truck, question: null, given: null });
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

/** The gap now of the part that comes nearest of all, as a dimension; null where a mark tells it already. */
export function worstDimension(
  state: WorkbenchState,
  allowance: number,
  format: LengthFormat,
): LinearDimension | null {
  const worst = state.truck && worstOf(state.truck);
  const entry = worst && shownGaps(state).find((gap) => isSamePart(gap, worst));
  if (!entry || gapWord(entry.gap, allowance) !== "clear" || isSamePart(entry, state.selection)) return null;
  return {
    kind: "linear",
    from: entry.onRing,
    to: entry.point,
    asides: [],
    text: `${entry.part} ${amountText(entry.gap, format, true)}`,
  };
}
