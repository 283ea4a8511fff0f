import { floorAt } from "../../studies/floor/floorAt.ts";
import { wheelTravelsInRoll } from "../../studies/floor/wheelTravelsInRoll.ts";
import type { FloorPose } from "../../studies/stances/floorPose.ts";
import { type PoseResult, type SolvedPose, solveApart } from "../../suspension/solvePose.ts";
import { memoLast } from "../state/memoLast.ts";
import { shownPose } from "../state/shown.ts";
import { stageSettings } from "../state/stageSettings.ts";
import type { Truck } from "../state/truck.ts";
import type { WorkbenchState } from "../state/workbenchState.ts";

type PoseInputs = Pick<WorkbenchState, "truck" | "travel" | "steer">;

const rolled = memoLast((truck: Truck, travel: number, steer: number, roll: number): SolvedPose | null => {
  const found = wheelTravelsInRoll(truck.model, travel, roll);
  if (!found.ok) return null;
  const pose = solveApart(truck.model.frontEnd, found.travels, steer);
  if (!pose.ok) return null;
  return { ok: true, travel, steer, left: pose.left, right: pose.right };
});

/** The pose on the stage: the one shown, or with the body rolled over the floor as far as the stage is asked to. */
export function stagePose(state: PoseInputs): PoseResult | null {
  const { truck, travel, steer } = state;
  const { roll } = stageSettings.getState();
  return (roll !== 0 && truck && rolled(truck, travel, steer, roll)) || shownPose(state);
}

/** The floor under a truck on the stage; null where it does not stand. */
export function stageFloor(truck: Truck, { travel, steer }: SolvedPose): FloorPose | null {
  const { roll } = stageSettings.getState();
  const found = roll === 0 ? null : wheelTravelsInRoll(truck.model, travel, roll);
  const travels = found?.ok ? found.travels : { left: travel, right: travel };
  return floorAt(truck.model, travels, steer);
}
