import { useStore } from "zustand";
import { stageSettings } from "../state/stageSettings.ts";
import { workbench } from "../state/workbench.ts";
import type { SectionAnswer } from "../work/sectionMessages.ts";
import { type Cutter, type SectionState, sectionStoreOf } from "../work/sectionStore.ts";
import { envelope } from "./useEnvelope.ts";

function workerCutter(): Cutter {
  const worker = new Worker(new URL("../work/section.worker.ts", import.meta.url), { type: "module" });
  let lastId = 0;
  return {
    ask(request) {
      if (request.kind === "cut") lastId = request.id;
      worker.postMessage(request);
    },
    onAnswer(listener) {
      worker.addEventListener("message", (event: MessageEvent<SectionAnswer>) => listener(event.data));
      worker.addEventListener("error", (event) =>
        listener({
          kind: "failed",
          id: lastId,
          message: event.message || "the section could not be started",
        }),
      );
    },
  };
}

/** The section on the stage. */
export const section = sectionStoreOf(workbench, stageSettings, envelope.store, workerCutter);

/** Follows it. The selector must give a primitive or something that already existed. */
export function useSection<T>(selector: (state: SectionState) => T): T {
  return useStore(section, selector);
}
