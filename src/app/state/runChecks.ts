import type { CheckAnswer, CheckRequest } from "./checkMessages.ts";
import type { Truck } from "./truck.ts";
import type { CheckState, WorkbenchStore } from "./workbenchStore.ts";

/** Whatever checks: a worker in the page, a stand-in in a test. */
export interface Checker {
  ask(request: CheckRequest): void;
  onAnswer(listener: (answer: CheckAnswer) => void): void;
}

/**
 * Has every truck that the store shows checked, each one once. Requests are numbered; an answer to any but
 * the newest is kept for when its truck is shown again and changes nothing now.
 * @returns stops following the store
 */
export function runChecks(store: WorkbenchStore, checker: Checker): () => void {
  const answers = new WeakMap<Truck, CheckState>();
  const asked = new Map<number, Truck>();
  const waiting = new WeakSet<Truck>();
  let lastId = 0;
  let followed: Truck | null = null;

  checker.onAnswer((answer) => {
    const truck = asked.get(answer.id);
    if (!truck) return;
    asked.delete(answer.id);
    const check: CheckState = answer.ok
      ? { status: "done", report: answer.report }
      : { status: "failed", message: answer.message };
    answers.set(truck, check);
    store.getState().setCheck(truck, check);
  });

  const follow = () => {
    const { truck, setCheck } = store.getState();
    if (!truck || truck === followed) return;
    followed = truck;
    const known = answers.get(truck);
    if (known) setCheck(truck, known);
    else if (!waiting.has(truck)) {
      waiting.add(truck);
      lastId += 1;
      asked.set(lastId, truck);
      checker.ask({ id: lastId, setup: truck.setup, file: truck.file });
    }
  };
  follow();
  return store.subscribe(follow);
}
