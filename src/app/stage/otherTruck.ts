import { type SolvedPose, solvePose } from "../../suspension/solvePose.ts";
import { memoLast } from "../state/memoLast.ts";
import { type Truck, trucks } from "../state/truck.ts";
import type { WorkbenchState } from "../state/workbenchState.ts";

/** Another variant of the setup on the board (null = the setup below them); null when it cannot be put together. */
export function otherTruck(state: WorkbenchState, variant: string | null): Truck | null {
  // The document that the truck shown was made of: what is being typed may not go together.
  const document = state.good?.document ?? state.document;
  if (document === null) return null;
  const made = trucks.make(document, state.file, variant, state.meshes, state.isAligned);
  return made.ok ? made.value : null;
}

const solved = memoLast((truck: Truck, travel: number, steer: number) =>
  solvePose(truck.model.frontEnd, travel, steer),
);

/** A truck that is not shown at the height and steering of the one that is; null where it cannot be. */
export function otherPose(truck: Truck, { travel, steer }: WorkbenchState): SolvedPose | null {
  const pose = solved(truck, travel, steer);
  return pose.ok ? pose : null;
}
