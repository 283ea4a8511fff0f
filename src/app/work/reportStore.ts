import { createStore } from "zustand/vanilla";
import type { Truck } from "../state/truck.ts";
import type { ReportAnswer, ReportKind, ReportRequest, Reports } from "./reportMessages.ts";

/** What is known of a truck: its report, or why there is none; null = still on the way. */
export type Reported<K extends ReportKind> =
  | { readonly ok: true; readonly report: Reports[K] }
  | { readonly ok: false; readonly message: string };

/** Whatever works reports out: a worker in the page, a stand-in in a test. */
export interface Reporter {
  ask(request: ReportRequest): void;
  onAnswer(listener: (answer: ReportAnswer) => void): void;
}

type OfTruck = { [K in ReportKind]?: Reported<K> };

/**
 * Has reports worked out, each once a truck and one at a time. Of each kind only the truck wanted last is asked for: of
 * the many trucks a drag makes, those that are gone when the worker is free are skipped.
 */
export function reportStoreOf(reporter: Reporter) {
  /** Raised with every answer. */
  const store = createStore<{ readonly version: number }>()(() => ({ version: 0 }));
  const known = new WeakMap<Truck, OfTruck>();
  const wanted = new Map<ReportKind, Truck>();
  let asked: { readonly id: number; readonly kind: ReportKind; readonly truck: Truck } | null = null;
  let lastId = 0;

  const askIfFree = () => {
    if (asked !== null) return;
    for (const [kind, truck] of wanted) {
      if (known.get(truck)?.[kind] !== undefined) continue;
      lastId += 1;
      asked = { id: lastId, kind, truck };
      reporter.ask({ id: lastId, kind, ...truck.ask });
      return;
    }
  };
  reporter.onAnswer((answer) => {
    if (answer.id !== asked?.id) return;
    const { kind, truck } = asked;
    asked = null;
    const found = answer.ok ? { ok: true, report: answer.report } : { ok: false, message: answer.message };
    known.set(truck, { ...known.get(truck), [kind]: found });
    store.setState(({ version }) => ({ version: version + 1 }));
    askIfFree();
  });
  return {
    store,
    of<K extends ReportKind>(truck: Truck, kind: K): Reported<K> | null {
      return (known.get(truck)?.[kind] as Reported<K> | undefined) ?? null;
    },
    want(kind: ReportKind, truck: Truck) {
      wanted.set(kind, truck);
      askIfFree();
    },
  };
}
