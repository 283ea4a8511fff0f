import { useStore } from "zustand";
import { type EnvelopeChoice, setStage } from "../state/stageSettings.ts";
import { workbench } from "../state/workbench.ts";
import type { EnvelopeAnswer, EnvelopeRequest } from "../work/envelopeMessages.ts";
import { type EnvelopeState, envelopeStoreOf, type Sweeper } from "../work/envelopeStore.ts";

function workerSweeper(request: EnvelopeRequest): Sweeper {
  const worker = new Worker(new URL("../work/envelope.worker.ts", import.meta.url), { type: "module" });
  worker.postMessage(request);
  return {
    onAnswer(listener) {
      worker.addEventListener("message", (event: MessageEvent<EnvelopeAnswer>) => listener(event.data));
      worker.addEventListener("error", (event) =>
        listener({ kind: "failed", message: event.message || "the envelope could not be started" }),
      );
    },
    stop: () => worker.terminate(),
  };
}

/** The envelope of the truck shown. */
export const envelope = envelopeStoreOf(workbench, workerSweeper);

/** Shows an envelope on the stage, at the height shown where it is of one height; null = none, and stops working at it. */
export function showEnvelope(choice: EnvelopeChoice | null): void {
  setStage({ envelope: choice });
  envelope.ask(choice && { choice, travel: workbench.getState().travel });
}

/** Follows it. The selector must give a primitive or something that already existed. */
export function useEnvelope<T>(selector: (state: EnvelopeState) => T): T {
  return useStore(envelope.store, selector);
}
