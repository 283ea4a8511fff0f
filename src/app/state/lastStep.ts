import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import { whenLetGo } from "./pointerHeld.ts";
import type { DocumentSlice } from "./typedDocument.ts";
import { workbench } from "./workbench.ts";

interface Steps {
  readonly pastStates: readonly Partial<DocumentSlice>[];
  readonly futureStates: readonly Partial<DocumentSlice>[];
}

/** How a step came about: a change, or one of the history. */
export type StepKind = "done" | "undone" | "again";

interface LastStep {
  /** What was on the board before it; null = there was none, or it is put away. */
  readonly before: Partial<DocumentSlice> | null;
  readonly kind: StepKind;
}

/**
 * The last step. A change stands until the next step or until it is put away, so that it can be read where its answers are.
 * One taken back, or done again, is nothing to look up later: it goes with the next thing done, be it another pose or station.
 */
export const lastStep = createStore<LastStep>()(() => ({ before: null, kind: "done" }));

workbench.temporal.subscribe((now, then) => {
  const before = cameFrom(now, then);
  if (before !== undefined) lastStep.setState({ before, kind: kindOf(now, then) });
});

/** What was taken back is about to be told no more. */
let isGoing = false;
workbench.subscribe((now, then) => {
  const isMoved = now.travel !== then.travel || now.steer !== then.steer;
  const { before, kind } = lastStep.getState();
  if (!isMoved || before === null || kind === "done" || isGoing) return;
  isGoing = true;
  // In a drag nothing goes from under the hand.
  whenLetGo(() => {
    isGoing = false;
    if (lastStep.getState().before === before) forgetUndone();
  });
});

/** Whether there is a step whose doing can be told. */
export function useHasStep(): boolean {
  return useStore(lastStep, (s) => s.before !== null);
}

/** Something else was done: what was taken back is told no more. */
export function forgetUndone(): void {
  const { before, kind } = lastStep.getState();
  if (before !== null && kind !== "done") lastStep.setState({ before: null });
}

/** Of the two lists the one that steps are taken from stays the same. */
export function kindOf(now: Steps, then: Steps): StepKind {
  if (now.futureStates.length > then.futureStates.length) return "undone";
  return now.futureStates === then.futureStates && now.pastStates.length > then.pastStates.length
    ? "again"
    : "done";
}

/**
 * From where a history came to where it is; null = by no step, such as a gesture that was called off; undefined = it stayed. Of
 * the two lists the one that steps are taken from stays the same.
 */
export function cameFrom(now: Steps, then: Steps): Partial<DocumentSlice> | null | undefined {
  if (now.pastStates === then.pastStates)
    return now.futureStates.length > then.futureStates.length
      ? now.futureStates[then.futureStates.length]
      : undefined;
  const done = now.pastStates.length - then.pastStates.length;
  const isStep = done === 1 || (done > 0 && now.futureStates === then.futureStates);
  return (isStep && now.pastStates[then.pastStates.length]) || null;
}
