import { createContext, useMemo } from "react";
import { truckName } from "../../studies/wording/truckName.ts";
import { type SolvedPose, solvePose } from "../../suspension/solvePose.ts";
import { memoLast } from "../state/memoLast.ts";
import { useStage } from "../state/stageSettings.ts";
import { type Truck, trucks } from "../state/truck.ts";
import { useWorkbench } from "../state/useWorkbench.ts";
import { workbench } from "../state/workbench.ts";
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

/** The truck chosen as a ghost; null where none is, it cannot be put together, or it is the very truck shown. */
export function useGhostTruck(truck: Truck): Truck | null {
  const choice = useStage((s) => s.ghost);
  const document = useWorkbench((s) => s.good?.document ?? null);
  const isAligned = useWorkbench((s) => s.isAligned);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the document and the way it stands are what the other truck is made of
  const other = useMemo(
    () => choice && otherTruck(workbench.getState(), choice.variant),
    [choice, document, isAligned],
  );
  return other === truck || other?.setup.variant === truck.setup.variant ? null : other;
}

/** Whether what is drawn inside belongs to the truck that is laid beside the one shown. */
export const IsGhost = createContext(false);

/** What a truck is called beside its other variants. */
export function variantLabel({ setup }: Truck): string {
  return truckName(setup.variant);
}
