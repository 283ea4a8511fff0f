import { createStore } from "zustand/vanilla";
import type { Truck } from "../state/truck.ts";
import type { WorkbenchStore } from "../state/workbenchStore.ts";
import type { DrawnMap, MapAnswer, MapRequest, PoseLimits } from "./mapMessages.ts";

export interface MapState {
  /** The map last worked out, and its truck: while another truck's is on the way it may be of the one before. */
  readonly drawn: DrawnMap | null;
  readonly of: Truck | null;
  readonly limits: PoseLimits | null;
  readonly failure: string | null;
}

/** Whatever works maps out: a worker in the page, a stand-in in a test. */
export interface Mapper {
  ask(request: MapRequest): void;
  onAnswer(listener: (answer: MapAnswer) => void): void;
}

/**
 * Keeps the map of the truck that the workbench shows, and the limits at its pose. One question is under way at a
 * time; of what changes meanwhile only the last is asked, so a drag never piles up work.
 */
export function mapStoreOf(workbench: WorkbenchStore, mapper: Mapper) {
  const store = createStore<MapState>()(() => ({ drawn: null, of: null, limits: null, failure: null }));
  let truckId = 0;
  let asked: Truck | null = null;
  let isBusy = false;

  const ask = () => {
    if (isBusy) return;
    const { truck, travel, steer } = workbench.getState();
    if (truck === null) return;
    if (truck !== asked) {
      asked = truck;
      truckId += 1;
      isBusy = true;
      mapper.ask({ kind: "map", truckId, ...truck.ask });
      return;
    }
    const { limits, of, failure } = store.getState();
    if (of !== truck || failure !== null) return;
    if (limits !== null && limits.travel === travel && limits.steer === steer) return;
    isBusy = true;
    mapper.ask({ kind: "limits", truckId, travel, steer });
  };

  mapper.onAnswer((answer) => {
    if (answer.truckId !== truckId) return;
    isBusy = false;
    if (answer.kind === "map")
      store.setState({ drawn: answer.drawn, of: asked, limits: null, failure: null });
    else if (answer.kind === "limits") store.setState({ limits: answer.limits });
    else store.setState({ failure: answer.message, limits: null });
    ask();
  });
  workbench.subscribe(ask);
  ask();
  return store;
}
