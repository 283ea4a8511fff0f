import { parentPort, workerData } from "node:worker_threads";
import { Budget } from "../../studies/numeric/budget.ts";
import { processorMs } from "./processorMs.ts";
import { SHARED_JOBS, type Share, type SharedAnswer, type SharedAsk, type SharedJob } from "./sharedJobs.ts";
import { TOLD } from "./startThread.ts";

/** What a thread is started with. */
export interface ThreadTask<J extends SharedJob = SharedJob> {
  readonly job: J;
  readonly ask: SharedAsk<J>;
  readonly share: Share;
  /** Processor time of the whole process from now on. */
  readonly seconds: number;
  /** As `TOLD` has it. */
  readonly told: Int32Array;
}

/** How a thread ended. */
export type ThreadEnd<J extends SharedJob> =
  | { readonly ok: true; readonly answer: SharedAnswer<J> }
  | {
      readonly ok: false;
      readonly message: string;
      /** It never began: the system had no room for it. */
      readonly isRefused?: true;
    };

const { job, ask, share, seconds, told } = workerData as ThreadTask;

function ended(): ThreadEnd<SharedJob> {
  try {
    const run = {
      share,
      budget: Budget.of(seconds, processorMs),
      onProgress: (done: number) => void Atomics.store(told, TOLD.shares + share.at, Math.round(1e6 * done)),
    };
    return { ok: true, answer: SHARED_JOBS[job](ask as never, run) };
  } catch (error) {
    return { ok: false, message: error instanceof Error ? error.message : String(error) };
  }
}

parentPort!.postMessage(ended());
