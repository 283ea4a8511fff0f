import { createStore, type StoreApi } from "zustand/vanilla";
import type { SectionPlane } from "../../studies/section/sectionPlane.ts";
import type { StageSettings } from "../state/stageSettings.ts";
import type { Truck } from "../state/truck.ts";
import type { WorkbenchStore } from "../state/workbenchStore.ts";
import type { DrawnEnvelope } from "./envelopeMessages.ts";
import type { EnvelopeState } from "./envelopeStore.ts";
import type { DrawnSection, SectionAnswer, SectionRequest } from "./sectionMessages.ts";

export interface SectionState {
  readonly drawn: DrawnSection | null;
  readonly failure: string | null;
}

/** Whatever cuts: a worker in the page, a stand-in in a test. */
export interface Cutter {
  ask(request: SectionRequest): void;
  onAnswer(listener: (answer: SectionAnswer) => void): void;
}

const NONE: SectionState = { drawn: null, failure: null };

/**
 * Keeps the section that the stage asks for, of the truck, pose and envelope shown. One question is under way at a
 * time; of what changes meanwhile only the last is asked. @param cutterOf makes the cutter, when one is first needed
 */
export function sectionStoreOf(
  workbench: WorkbenchStore,
  settings: StoreApi<StageSettings>,
  envelopes: StoreApi<EnvelopeState>,
  cutterOf: () => Cutter,
) {
  const store = createStore<SectionState>()(() => NONE);
  let cutter: Cutter | null = null;
  let id = 0;
  let isBusy = false;
  let given: { readonly truck: Truck; envelope: DrawnEnvelope | null } | null = null;
  let cut: { readonly plane: SectionPlane; readonly travel: number; readonly steer: number } | null = null;

  const ask = () => {
    const { truck, travel, steer } = workbench.getState();
    const plane = settings.getState().section;
    if (plane === null || truck === null) {
      cut = null;
      if (store.getState() !== NONE) store.setState(NONE, true);
      return;
    }
    if (isBusy) return;
    cutter ??= started();
    const state = envelopes.getState();
    const envelope = state.status === "done" ? state.drawn : null;
    const isSame =
      given?.truck === truck &&
      given.envelope === envelope &&
      cut?.plane === plane &&
      cut.travel === travel &&
      cut.steer === steer;
    if (isSame) return;
    if (given?.truck !== truck) {
      cutter.ask({ kind: "truck", ...truck.ask });
      given = { truck, envelope: null };
      cutter.ask({ kind: "envelope", sides: [] });
    }
    if (given.envelope !== envelope) {
      cutter.ask({ kind: "envelope", sides: envelope?.sides ?? [] });
      given.envelope = envelope;
    }
    cut = { plane, travel, steer };
    isBusy = true;
    cutter.ask({ kind: "cut", id: ++id, cut });
  };
  const started = () => {
    const made = cutterOf();
    made.onAnswer((answer) => {
      if (answer.id !== id) return;
      isBusy = false;
      // Put away meanwhile: nothing is shown of it.
      if (cut !== null) {
        const drawn = answer.kind === "cut" ? answer.drawn : null;
        store.setState({ drawn, failure: answer.kind === "failed" ? answer.message : null }, true);
      }
      ask();
    });
    return made;
  };
  workbench.subscribe(ask);
  settings.subscribe(ask);
  envelopes.subscribe(ask);
  return store;
}
