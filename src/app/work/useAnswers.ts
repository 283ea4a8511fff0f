import { useEffect } from "react";
import { useStore } from "zustand";
import type { Truck } from "../state/truck.ts";
import { type Answerer, answerStoreOf, NOTHING_YET, type TruckAnswer } from "./answerStore.ts";
import type { CounterAnswer } from "./counterMessages.ts";

function workerAnswerer(): Answerer {
  const worker = new Worker(new URL("./counter.worker.ts", import.meta.url), { type: "module" });
  let lastId = 0;
  return {
    ask(request) {
      lastId = request.id;
      worker.postMessage(request);
    },
    onAnswer(listener) {
      worker.addEventListener("message", (event: MessageEvent<CounterAnswer>) => listener(event.data));
      worker.addEventListener("error", (event) => {
        const message = event.message || "the check could not be started";
        listener({ id: lastId, kind: "failed", message });
      });
    },
  };
}

const answers = answerStoreOf(workerAnswerer());

/** What is known of two trucks so far (null = no truck), and asks for the rest. @param travels heights, mm */
export function useAnswers(
  first: Truck | null,
  second: Truck | null,
  travels: readonly number[],
): readonly [TruckAnswer, TruckAnswer] {
  useStore(answers.store, (s) => s.version);
  useEffect(() => {
    answers.want(
      [first, second].filter((truck) => truck !== null),
      travels,
    );
  }, [first, second, travels]);
  const of = (truck: Truck | null) => (truck === null ? NOTHING_YET : answers.answerOf(truck, travels));
  return [of(first), of(second)];
}
