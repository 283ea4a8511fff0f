import { createStore, type StateCreator, type StoreMutatorIdentifier } from "zustand/vanilla";
import { neededFields, withoutNeeded } from "../../setup/newTruck.ts";
import { documentActions } from "./documentActions.ts";
import { GivenMeshes } from "./givenMeshes.ts";
import { forgetOldOpenings, type HistoryStore, withHistory } from "./history.ts";
import { listActions } from "./listActions.ts";
import { openingActions, readOpening } from "./openingActions.ts";
import { DEFAULT_PREFERENCES } from "./preferences.ts";
import { shownDocument } from "./selectors.ts";
import { trucks } from "./truck.ts";
import { documentSlice } from "./typedDocument.ts";
import { commitTyped } from "./typing.ts";
import { variantActions } from "./variantActions.ts";
import { clampTravel, viewActions } from "./viewActions.ts";
import type { ActionContext, Workbench } from "./workbenchActions.ts";
import type { WorkbenchState } from "./workbenchState.ts";

export type WorkbenchStore = ReturnType<typeof createWorkbenchStore>;

/**
 * The workbench's store, without React: the document and its history, inputs, and the truck made from them.
 * Whatever changes the document or the variant changes the truck or the issues in the same step.
 */
export function createWorkbenchStore(text: string, file: string) {
  const history: { store: HistoryStore | null } = { store: null };

  const creator: StateCreator<Workbench, [["temporal", unknown]]> = (set, get) => {
    const context: ActionContext = { set, get };
    return {
      ...firstState(text, file),
      ...afterTyping(openingActions(context, () => history.store && forgetOldOpenings(history.store))),
      ...documentActions(context),
      ...afterTyping(listActions(context)),
      ...afterTyping(variantActions(context)),
      ...viewActions(context),
      undo: () => stepBy(-1),
      redo: () => stepBy(1),
      stepBy: (count) => stepBy(count),
      putDocument(document) {
        commitTyped();
        get().endGesture();
        set({ document, drafts: {} });
      },
      beginGesture() {
        gestures.begin();
        set({ isGesturing: true });
      },
      resumeGesture() {
        gestures.resume();
        set({ isGesturing: true });
      },
      endGesture() {
        gestures.end();
        set({ isGesturing: false });
      },
      cancelGesture() {
        gestures.cancel();
        set({ isGesturing: false });
      },
    };
  };
  const { creatorWithHistory, gesturesOf } = withHistory<Workbench>(creator);
  const store = createStore<Workbench>()(withTruck(creatorWithHistory));
  history.store = store.temporal;
  const gestures = gesturesOf(store);
  const stepBy = (count: number) => {
    commitTyped();
    store.getState().endGesture();
    if (count !== 0) store.temporal.getState()[count < 0 ? "undo" : "redo"](Math.abs(count));
  };
  return store;
}

/** Actions before which what is being typed is put into the document that they are done to. */
function afterTyping<Actions extends object>(actions: Actions): Actions {
  const wrapped = Object.entries(actions).map(([name, act]) => [
    name,
    (...given: unknown[]) => {
      commitTyped();
      return act(...given);
    },
  ]);
  return Object.fromEntries(wrapped) as Actions;
}

function firstState(text: string, file: string): WorkbenchState {
  const opening = readOpening(text, file, new GivenMeshes());
  const slice = opening.ok ? opening.slice : opening.emptySlice;
  return {
    ...documentSlice(slice),
    travel: 0,
    steer: 0,
    view: "three-quarter",
    viewsAsked: 0,
    selection: null,
    hiddenParts: [],
    preferences: DEFAULT_PREFERENCES,
    issues: [],
    needs: [],
    refusal: opening.ok ? null : opening.refusal,
    isAligned: false,
    truck: null,
    good: null,
    isGesturing: false,
    saved: slice.document ? { [slice.documentId]: slice.document } : {},
  };
}

/** Has every change of the document bring its truck, or its issues, with it: nobody ever sees one without the other. */
function withTruck<Mutators extends [StoreMutatorIdentifier, unknown][]>(
  creator: StateCreator<Workbench, [], Mutators>,
): StateCreator<Workbench, [], Mutators> {
  return ((set, get, api) => {
    const setWithTruck: typeof api.setState = (change) =>
      set((before) => {
        const changed = typeof change === "function" ? change(before) : change;
        if (changed === before) return before;
        const after = { ...before, ...changed };
        return { ...changed, ...truckChange(after, before) };
      });
    api.setState = setWithTruck;
    const first = creator(setWithTruck as typeof set, get, api as never);
    return { ...first, ...truckChange(first, null) };
  }) as StateCreator<Workbench, [], Mutators>;
}

function truckChange(now: WorkbenchState, before: WorkbenchState | null): Partial<WorkbenchState> {
  const { document, documentId, file, variant, meshes, isAligned } = now;
  if (document === null) return {};
  const isSame =
    before?.document === document &&
    before.variant === variant &&
    before.meshes === meshes &&
    before.isAligned === isAligned &&
    before.file === file;
  if (isSame) return {};
  const made = trucks.make(document, file, variant, meshes, isAligned);
  if (!made.ok) {
    const needs = neededFields(shownDocument(now));
    const issues = withoutNeeded(made.issues, needs);
    // Of a truck that is just begun there is nothing to show, least of all another truck.
    const isBegun = needs.length > 0 && now.good?.documentId !== documentId;
    return isBegun ? { issues, needs, truck: null, good: null } : { issues, needs };
  }
  const truck = made.value;
  const good = { documentId, document, variant };
  if (truck === now.truck) return { issues: [], needs: [], good };
  return {
    issues: [],
    needs: [],
    good,
    truck,
    travel: clampTravel(truck, now.travel),
  };
}
