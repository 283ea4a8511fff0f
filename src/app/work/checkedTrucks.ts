import { createStore } from "zustand/vanilla";
import type { CheckReport } from "../../studies/reports/check.ts";
import type { Truck } from "../state/truck.ts";
import type { CheckAnswer, CheckRequest } from "./checkMessages.ts";

/** Checks of trucks that are compared, by truck; `null` = it could not be finished. */
export interface CheckedTrucks {
  readonly reports: WeakMap<Truck, CheckReport | null>;
  /** Counts up with every answer: what follows the store looks again. */
  readonly answers: number;
  /** How many are still to come. */
  readonly waiting: number;
}

export const checkedTrucks = createStore<CheckedTrucks>()(() => ({
  reports: new WeakMap(),
  answers: 0,
  waiting: 0,
}));

let worker: Worker | null = null;
let queue: Truck[] = [];
let asked: { readonly id: number; readonly truck: Truck } | null = null;
let lastId = 0;

/** Has these trucks checked, one after the other; those asked for before and not yet begun are forgotten. */
export function wantChecks(trucks: readonly Truck[]): void {
  const { reports } = checkedTrucks.getState();
  queue = trucks.filter((truck) => !reports.has(truck) && truck !== asked?.truck);
  checkedTrucks.setState({ waiting: queue.length + (asked ? 1 : 0) });
  askNext();
}

function askNext(): void {
  if (asked) return;
  const truck = queue.shift();
  if (truck === undefined) return;
  worker ??= startWorker();
  lastId += 1;
  asked = { id: lastId, truck };
  const request: CheckRequest = { id: lastId, ...truck.ask };
  worker.postMessage(request);
}

function startWorker(): Worker {
  const made = new Worker(new URL("./check.worker.ts", import.meta.url), { type: "module" });
  made.addEventListener("message", ({ data }: MessageEvent<CheckAnswer>) => {
    if (data.id === asked?.id) settle(data.ok ? data.report : null);
  });
  made.addEventListener("error", () => settle(null));
  return made;
}

function settle(report: CheckReport | null): void {
  if (asked === null) return;
  checkedTrucks.getState().reports.set(asked.truck, report);
  asked = null;
  checkedTrucks.setState((s) => ({ answers: s.answers + 1, waiting: queue.length }));
  askNext();
}
