import { type LimitPose, limitMargins } from "../../studies/limits/limitsOf.ts";
import { type GapEntry, gapsAt } from "../../studies/reports/gapsAt.ts";
import { type PoseResult, type SolvedPose, solvePose } from "../../suspension/solvePose.ts";
import { memoLast } from "./memoLast.ts";
import type { Truck } from "./truck.ts";
import type { WorkbenchState } from "./workbenchState.ts";

/** What moves the pose asks at every move, the rest of the page once a frame: each is to find what it was told. */
const ASKED_OF = 2;

const solved = memoLast(
  (truck: Truck, travel: number, steer: number) => solvePose(truck.model.frontEnd, travel, steer),
  ASKED_OF,
);
const NO_GAPS: readonly GapEntry[] = [];
const ranked = memoLast(
  (truck: Truck, pose: SolvedPose) => [...gapsAt(truck.model, pose)].sort((a, b) => a.gap - b.gap),
  ASKED_OF,
);

const margins = memoLast((truck: Truck, travel: number, steer: number) =>
  limitMargins(truck.model, travel, steer),
);

type PoseInputs = Pick<WorkbenchState, "truck" | "travel" | "steer">;

/** The pose asked for: solved, or what is out of reach; null without a truck. The same object until an input changes. */
export function shownPose(state: PoseInputs): PoseResult | null {
  return state.truck && solved(state.truck, state.travel, state.steer);
}

/** Every gap at the pose asked for, smallest first; empty when there is no such pose. The same list until it changes. */
export function shownGaps(state: PoseInputs): readonly GapEntry[] {
  const pose = shownPose(state);
  return state.truck && pose?.ok ? ranked(state.truck, pose) : NO_GAPS;
}

/** What a truck has in hand of each limit at a pose. The same object until one of them changes. */
export function marginsAt(truck: Truck, travel: number, steer: number): LimitPose {
  return margins(truck, travel, steer);
}
