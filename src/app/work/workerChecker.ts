import type { CheckAnswer } from "./checkMessages.ts";
import type { Checker } from "./runChecks.ts";

/** The checker of the page: one worker, kept. When the worker itself fails, whatever it still owes is answered with that. */
export function workerChecker(): Checker {
  const worker = new Worker(new URL("./check.worker.ts", import.meta.url), { type: "module" });
  const owed = new Set<number>();
  return {
    ask(request) {
      owed.add(request.id);
      worker.postMessage(request);
    },
    onAnswer(listener) {
      worker.addEventListener("message", (event: MessageEvent<CheckAnswer>) => {
        owed.delete(event.data.id);
        listener(event.data);
      });
      worker.addEventListener("error", (event) => {
        const message = event.message || "the check could not be started";
        for (const id of owed) listener({ id, ok: false, code: "fault", message });
        owed.clear();
      });
    },
  };
}
