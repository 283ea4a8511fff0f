import { createStore } from "zustand/vanilla";
import { lengthFormatOf } from "../state/preferences.ts";
import type { Truck } from "../state/truck.ts";
import type { WorkbenchStore } from "../state/workbenchStore.ts";
import { bandEdges } from "./bandEdges.ts";
import type { DrawnEnvelope, EnvelopeAnswer, EnvelopeAsk, EnvelopeRequest } from "./envelopeMessages.ts";

export type EnvelopeState =
  | { readonly status: "none" }
  | { readonly status: "working"; readonly ask: EnvelopeAsk; readonly share: number }
  | { readonly status: "done"; readonly drawn: DrawnEnvelope }
  | { readonly status: "failed"; readonly message: string };

/** Works one envelope out. */
export interface Sweeper {
  onAnswer(listener: (answer: EnvelopeAnswer) => void): void;
  /** Stops at once; nothing is answered any more. */
  stop(): void;
}

/**
 * Keeps the envelope that is asked for, of the truck shown. One is worked out at a time; what was worked out is kept until
 * the truck changes. While a truck is being dragged about none is begun.
 * @param start begins to work out a request
 */
export function envelopeStoreOf(workbench: WorkbenchStore, start: (request: EnvelopeRequest) => Sweeper) {
  const store = createStore<EnvelopeState>()(() => ({ status: "none" }));
  const known = new Map<string, DrawnEnvelope>();
  let of: Truck | null = null;
  let asked: EnvelopeAsk | null = null;
  let sweeper: Sweeper | null = null;

  const follow = () => {
    const { truck, isGesturing, preferences } = workbench.getState();
    if (truck !== of) {
      of = truck;
      known.clear();
      halt();
    }
    const { status } = store.getState();
    if (asked === null || truck === null || isGesturing || status !== "none") return;
    const ask = asked;
    const key = keyOf(ask);
    const before = known.get(key);
    if (before) {
      store.setState({ status: "done", drawn: before }, true);
      return;
    }
    const { units } = lengthFormatOf(preferences.lengths, truck.setup.units);
    const edges = bandEdges(truck.setup.allowance, units);
    const mine = start({ ...ask, edges, ...truck.ask });
    sweeper = mine;
    store.setState({ status: "working", ask, share: 0 }, true);
    mine.onAnswer((answer) => {
      if (sweeper !== mine) return;
      if (answer.kind === "progress") {
        store.setState({ status: "working", ask, share: answer.share }, true);
        return;
      }
      mine.stop();
      sweeper = null;
      if (answer.kind === "done") {
        known.set(key, answer.drawn);
        store.setState({ status: "done", drawn: answer.drawn }, true);
      } else store.setState({ status: "failed", message: answer.message }, true);
    });
  };
  const halt = () => {
    sweeper?.stop();
    sweeper = null;
    store.setState({ status: "none" }, true);
  };

  workbench.subscribe(follow);
  return {
    store,
    /** Asks for an envelope, or for none (null); what is under way is stopped. */
    ask(wanted: EnvelopeAsk | null) {
      asked = wanted;
      halt();
      follow();
    },
  };
}

/** The height makes a difference for one choice alone. */
function keyOf({ choice, travel }: EnvelopeAsk): string {
  return choice === "stance" ? `stance ${travel}` : choice;
}
