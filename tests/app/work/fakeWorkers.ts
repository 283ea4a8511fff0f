import type { WorkReply, WorkRequest } from "../../../src/app/work/answerer.ts";
import type { WorkerLike } from "../../../src/app/work/workClient.ts";

/** A worker that replies when the test says so. */
export interface FakeWorker extends WorkerLike {
  /** As they came: copied, as on the way to a worker. */
  readonly requests: WorkRequest[];
  readonly isEnded: boolean;
  /** Replies to the last request; a check that the test says nothing of has no parts. */
  done(answer: unknown, isCut?: boolean): void;
  progress(share: number): void;
  /** Replies to another request. */
  say(reply: WorkReply): void;
  crash(message: string): void;
}

/** Starts such workers, and keeps them in the order they were started. */
export function fakeWorkers() {
  const workers: FakeWorker[] = [];
  const startWorker = (): FakeWorker => {
    const requests: WorkRequest[] = [];
    let isEnded = false;
    const say = (reply: WorkReply) => worker.onmessage?.({ data: reply } as MessageEvent<WorkReply>);
    const id = () => requests.at(-1)!.id;
    const worker: FakeWorker = {
      requests,
      say,
      onmessage: null,
      onerror: null,
      get isEnded() {
        return isEnded;
      },
      postMessage: (request) => void requests.push(structuredClone(request)),
      terminate() {
        isEnded = true;
      },
      done(answer, isCut = false) {
        const ofCheck = requests.at(-1)!.job === "check" ? { parts: [] } : {};
        say({ kind: "done", id: id(), answer: { ...ofCheck, ...(answer as object) } as never, isCut });
      },
      progress: (share) => say({ kind: "progress", id: id(), share }),
      crash: (message) => worker.onerror?.({ message } as ErrorEvent),
    };
    workers.push(worker);
    return worker;
  };
  return { workers, startWorker };
}
