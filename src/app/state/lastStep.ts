import { createStore } from "zustand/vanilla";
import type { DocumentSlice } from "./typedDocument.ts";
import { workbench } from "./workbench.ts";

interface Steps {
  readonly pastStates: readonly Partial<DocumentSlice>[];
  readonly futureStates: readonly Partial<DocumentSlice>[];
}

/** What was on the board before the last step, be it done, undone or done again; null = there was none, or it is put away. */
export const lastStep = createStore<{ readonly before: Partial<DocumentSlice> | null }>()(() => ({
  before: null,
}));

workbench.temporal.subscribe((now, then) => {
  const before = cameFrom(now, then);
  if (before !== undefined) lastStep.setState({ before });
});

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
