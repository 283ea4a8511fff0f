import { createStore } from "zustand/vanilla";
import type { HeightStop } from "../../studies/limits/heightWay.ts";
import type { NoLimits, SteerLimits } from "../../studies/map/steerLimits.ts";
import type { CheckReport } from "../../studies/reports/check.ts";
import type { Truck } from "../state/truck.ts";
import type { CounterAnswer, CounterRequest } from "./counterMessages.ts";

/** What is known of one truck so far. */
export interface TruckAnswer {
  /** At each height asked for; null = not known yet. */
  readonly steering: readonly (SteerLimits | NoLimits)[] | null;
  /** What keeps the truck from each height asked for, null = it stands there; null = not known yet. */
  readonly heights: readonly (HeightStop | null)[] | null;
  /** Over the whole range; null = not known yet. */
  readonly report: CheckReport | null;
  /** Why there will be no more; null = all is well. */
  readonly failure: string | null;
}

/** Whatever answers: a worker in the page, a stand-in in a test. */
export interface Answerer {
  ask(request: CounterRequest): void;
  onAnswer(listener: (answer: CounterAnswer) => void): void;
}

export const NOTHING_YET: TruckAnswer = { steering: null, heights: null, report: null, failure: null };

interface Known {
  readonly travels: readonly number[];
  readonly answer: TruckAnswer;
}

/**
 * Has trucks looked into, each once and one at a time. Only those wanted last are asked for: of the many trucks that a
 * slider makes, those that are gone when the answerer is free are skipped.
 */
export function answerStoreOf(answerer: Answerer) {
  /** Raised with every answer. */
  const store = createStore<{ readonly version: number }>()(() => ({ version: 0 }));
  const known = new WeakMap<Truck, Known>();
  let wanted: { readonly trucks: readonly Truck[]; readonly travels: readonly number[] } = {
    trucks: [],
    travels: [],
  };
  let asked: { readonly id: number; readonly truck: Truck; readonly travels: readonly number[] } | null =
    null;
  let lastId = 0;

  const answerOf = (truck: Truck, travels: readonly number[]): TruckAnswer => {
    const before = known.get(truck);
    return before && isSameList(before.travels, travels) ? before.answer : NOTHING_YET;
  };
  const askIfFree = () => {
    if (asked) return;
    const { trucks, travels } = wanted;
    const next = trucks.find((truck) => {
      const { report, failure } = answerOf(truck, travels);
      return report === null && failure === null;
    });
    if (!next) return;
    lastId += 1;
    asked = { id: lastId, truck: next, travels };
    answerer.ask({ id: lastId, ...next.ask, travels });
  };

  answerer.onAnswer((answer) => {
    if (asked?.id !== answer.id) return;
    const { truck, travels } = asked;
    known.set(truck, { travels, answer: withAnswer(answerOf(truck, travels), answer) });
    if (answer.kind !== "steering") asked = null;
    store.setState((s) => ({ version: s.version + 1 }));
    askIfFree();
  });

  return {
    store,
    answerOf,
    /** Asks for these trucks, first to last, and for none that were wanted before. @param travels mm */
    want(trucks: readonly Truck[], travels: readonly number[]) {
      wanted = { trucks, travels };
      askIfFree();
    },
  };
}

function withAnswer(before: TruckAnswer, answer: CounterAnswer): TruckAnswer {
  if (answer.kind === "steering") {
    return { ...before, steering: answer.steering, heights: answer.heights };
  }
  if (answer.kind === "check") return { ...before, report: answer.report };
  return { ...before, failure: answer.message };
}

function isSameList(a: readonly number[], b: readonly number[]): boolean {
  return a.length === b.length && a.every((value, i) => value === b[i]);
}
