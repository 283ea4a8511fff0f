import { useStore } from "zustand";
import { workbench } from "../state/workbench.ts";
import type { MapAnswer } from "./mapMessages.ts";
import { type Mapper, type MapState, mapStoreOf } from "./mapStore.ts";

function workerMapper(): Mapper {
  const worker = new Worker(new URL("./map.worker.ts", import.meta.url), { type: "module" });
  let lastId = 0;
  return {
    ask(request) {
      lastId = request.truckId;
      worker.postMessage(request);
    },
    onAnswer(listener) {
      worker.addEventListener("message", (event: MessageEvent<MapAnswer>) => listener(event.data));
      worker.addEventListener("error", (event) => {
        const message = event.message || "the map could not be started";
        listener({ kind: "failed", truckId: lastId, message });
      });
    },
  };
}

const store = mapStoreOf(workbench, workerMapper());

/** Follows the map of the truck shown. The selector must give a primitive or something that already existed. */
export function useMap<T>(selector: (state: MapState) => T): T {
  return useStore(store, selector);
}
