import { useEffect } from "react";
import { useStore } from "zustand";
import type { Truck } from "../state/truck.ts";
import type { ReportAnswer, ReportKind } from "./reportMessages.ts";
import { type Reported, type Reporter, reportStoreOf } from "./reportStore.ts";

function workerReporter(): Reporter {
  const worker = new Worker(new URL("./report.worker.ts", import.meta.url), { type: "module" });
  let lastId = 0;
  return {
    ask(request) {
      lastId = request.id;
      worker.postMessage(request);
    },
    onAnswer(listener) {
      worker.addEventListener("message", (event: MessageEvent<ReportAnswer>) => listener(event.data));
      worker.addEventListener("error", (event) =>
        listener({ id: lastId, ok: false, message: event.message || "the work could not be started" }),
      );
    },
  };
}

const reports = reportStoreOf(workerReporter());

/** The report of a truck, asked for as long as this is on the page; null = on the way. */
export function useReport<K extends ReportKind>(kind: K, truck: Truck): Reported<K> | null {
  useStore(reports.store, (s) => s.version);
  useEffect(() => reports.want(kind, truck), [kind, truck]);
  return reports.of(truck, kind);
}
