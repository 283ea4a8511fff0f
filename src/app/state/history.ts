import { type TemporalState, temporal } from "zundo";
import type { StateCreator, StoreApi } from "zustand/vanilla";
import { isSameJson } from "../../setup/editing/writtenValues.ts";
import { type DocumentSlice, documentSlice, isSameSlice } from "./typedDocument.ts";

/** Steps that can be undone. More than a working day has; steps share what they did not change. */
const MAX_STEPS = 1000;

/** Openings among them. Two setups share nothing, and each may hold scans of many megabytes. */
const MAX_OPENINGS = 8;

/** Where steps are kept: `pastStates` and `futureStates` hold the slices to go back and forth to. */
export type HistoryStore = StoreApi<TemporalState<DocumentSlice>>;

/** One step a gesture: what is set between its begin and its end is undone at once. */
export interface Gestures {
  begin(): void;
  /** Goes on with the gesture that ended last, in its step, if nothing has been done or undone since; else begins one. */
  resume(): void;
  /** Ends the gesture, if there is one; one that ended where it began leaves no step. */
  end(): void;
  /** Ends the gesture and puts everything back to where it began. */
  cancel(): void;
}

/**
 * Keeps the steps of the document slice of a store. What else a state holds (pose, view, the variant shown) is no step.
 * @returns the creator with history, and gestures to be bound to the store once it is there
 */
export function withHistory<State extends DocumentSlice>(
  creator: StateCreator<State, [["temporal", unknown]]>,
) {
  let gesture: { readonly start: DocumentSlice; hasStep: boolean } | null = null;
  let ended: { readonly start: DocumentSlice; readonly step: unknown } | null = null;

  const creatorWithHistory = temporal<State, [], [], DocumentSlice>(creator, {
    partialize: documentSlice,
    equality: isSameSlice,
    limit: MAX_STEPS,
    handleSet: (handleSet) => (past, replace, current, delta) => {
      if (gesture?.hasStep) return;
      if (gesture) gesture.hasStep = true;
      // Its type tells only of the first two; it takes all four.
      (handleSet as (...step: readonly unknown[]) => void)(past, replace, current, delta);
    },
  });

  const gesturesOf = (store: StoreApi<State> & { readonly temporal: HistoryStore }): Gestures => {
    const { temporal: history } = store;
    const dropLastStep = () => history.setState((h) => ({ pastStates: h.pastStates.slice(0, -1) }));
    const putBack = (slice: DocumentSlice) => {
      history.getState().pause();
      store.setState(slice as Partial<State>);
      history.getState().resume();
    };
    const close = () => {
      const closed = gesture;
      gesture = null;
      return closed?.hasStep ? closed : null;
    };
    return {
      begin() {
        this.end();
        gesture = { start: documentSlice(store.getState()), hasStep: false };
      },
      resume() {
        const { pastStates, futureStates } = history.getState();
        if (gesture || !ended || ended.step !== pastStates.at(-1) || futureStates.length > 0) this.begin();
        else gesture = { start: ended.start, hasStep: true };
      },
      end() {
        const closed = close();
        ended = null;
        if (!closed) return;
        if (isUnchanged(closed.start, store.getState())) {
          putBack(closed.start);
          dropLastStep();
        } else ended = { start: closed.start, step: history.getState().pastStates.at(-1) };
      },
      cancel() {
        const closed = close();
        if (!closed) return;
        putBack(closed.start);
        dropLastStep();
      },
    };
  };
  return { creatorWithHistory, gesturesOf };
}

function isUnchanged(start: DocumentSlice, now: DocumentSlice): boolean {
  return (
    start.documentId === now.documentId &&
    start.file === now.file &&
    start.meshes === now.meshes &&
    isSameJson(start.document, now.document) &&
    isSameJson(start.drafts, now.drafts)
  );
}

/** Drops the steps of all but the last few setups opened; to be called after an opening. */
export function forgetOldOpenings(history: HistoryStore): void {
  const { pastStates } = history.getState();
  const openings = new Set<string | undefined>();
  for (let i = pastStates.length - 1; i >= 0; i--) {
    openings.add(pastStates[i]!.documentId);
    if (openings.size <= MAX_OPENINGS) continue;
    history.setState({ pastStates: pastStates.slice(i + 1) });
    return;
  }
}
