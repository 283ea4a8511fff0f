import { useMemo } from "react";
import { useStage } from "../state/stageSettings.ts";
import type { Truck } from "../state/truck.ts";
import { useWorkbench } from "../state/useWorkbench.ts";
import { workbench } from "../state/workbench.ts";
import { otherTruck } from "./otherTruck.ts";

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
