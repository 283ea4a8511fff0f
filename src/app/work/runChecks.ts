import type { Truck } from "../state/truck.ts";
import type { CheckState } from "../state/workbenchState.ts";
import type { WorkbenchStore } from "../state/workbenchStore.ts";
import type { CheckAnswer, CheckRequest } from "./checkMessages.ts";

/** Whatever checks: a worker in the page, a stand-in in a test. */
export interface Checker {
  ask(request: CheckRequest): void;
  onAnswer(listener: (answer: CheckAnswer) => void): void;
}

/**
 * Has the truck that the store shows checked, each truck once and one at a time: of the many trucks that a drag makes,
 * those that are gone again when the checker is free are never asked for. Requests are numbered; the answer for a truck
 * that is not shown is kept for when it is shown again and changes nothing now.
 * @returns stops following the store
 */
export function runChecks(store: WorkbenchStore, checker: Checker): () => void {
  const answers = new WeakMap<Truck, CheckState>();
  let asked: { readonly id: number; readonly truck: Truck } | null = null;
  let lastId = 0;
  let followed: Truck | null = null;

  const askIfFree = () => {
    const { truck } = store.getState();
    if (!truck || asked || answers.has(truck)) return;
    lastId += 1;
    asked = { id: lastId, truck };
    checker.ask({ id: lastId, ...truck.ask });
  };

  checker.onAnswer((answer) => {
    if (answer.id !== asked?.id) return;
    const { truck } = asked;
    asked = null;
    const check: CheckState = answer.ok
      ? { status: "done", report: answer.report }
      : { status: "failed", message: answer.message };
    answers.set(truck, check);
    store.getState().setCheck(truck, check);
    askIfFree();
  });

  const follow = () => {
    const { truck, setCheck } = store.getState();
    if (!truck || truck === followed) return;
    followed = truck;
    const known = answers.get(truck);
    if (known) setCheck(truck, known);
    else askIfFree();
  };
  follow();
  return store.subscribe(follow);
}
