import { useMemo } from "react";
import { lengthFormatOf } from "../state/preferences.ts";
import { type EnvelopeChoice, setStage, useStage } from "../state/stageSettings.ts";
import type { Truck } from "../state/truck.ts";
import { useWorkbench } from "../state/useWorkbench.ts";
import { workbench } from "../state/workbench.ts";
import type { Answered } from "../work/answerCache.ts";
import { bandEdges } from "../work/bandEdges.ts";
import { useAnswer } from "../work/useAnswer.ts";

/** The envelope that the stage asks for, of a truck; null = it asks for none. While a truck is dragged about none is begun. */
export function useEnvelope(truck: Truck): Answered<"envelope"> | null {
  const asked = useStage((s) => s.envelope);
  const isGesturing = useWorkbench((s) => s.isGesturing);
  const lengths = useWorkbench((s) => s.preferences.lengths);
  const { setup } = truck;
  const question = useMemo(() => {
    if (asked === null) return null;
    const { choice, travel } = asked;
    const { units } = lengthFormatOf(lengths, setup.units);
    // The height makes a difference for one choice alone.
    return { choice, travel: choice === "stance" ? travel : 0, edges: bandEdges(setup.allowance, units) };
  }, [asked, lengths, setup]);
  return useAnswer("envelope", question === null || isGesturing ? null : truck, {
    question: question ?? NONE,
  });
}

/** Asked of no truck. */
const NONE = { choice: "whole", travel: 0, edges: [] } as const;

/** Shows an envelope on the stage, at the height shown where it is of one height; null = none, and stops working at it. */
export function showEnvelope(choice: EnvelopeChoice | null): void {
  setStage({ envelope: choice && { choice, travel: workbench.getState().travel } });
}
