import { availableParallelism } from "node:os";
import { MessageChannel, receiveMessageOnPort } from "node:worker_threads";
import { noThreadsMend } from "../../studies/wording/fileMends.ts";
import type { KeptThreads } from "./keepThreads.ts";
import type { SharedAnswer, SharedAsk, SharedJob } from "./sharedJobs.ts";
import { BEAT, startThread, TOLD } from "./startThread.ts";
import type { ThreadEnd } from "./thread.ts";

/** Each holds its truck, and more than this many gain little. */
const MOST_THREADS = 8;

/** Looks without a sign of life, a minute of them, after which nobody waits any longer: a busy machine starts a thread in seconds. */
const PATIENCE = 60_000 / BEAT;

/** Threads that could not be started; the message is what and the mend. */
export class ThreadsRefused extends Error {
  override readonly name = "ThreadsRefused";

  constructor(why: string) {
    super(noThreadsMend(why));
  }
}

/**
 * Has all shares of a job done, one a thread and as many as there are processors, and waits for them.
 * @param seconds processor time they may take together
 * @param onProgress told how much of all is done, 0 … 1
 * @param of how many threads
 * @param patience looks, each of `BEAT` ms, without a sign of life of the threads
 * @throws ThreadsRefused where they do not start; Error where a share failed, or its thread died
 */
export function shareOut<J extends SharedJob>(
  job: J,
  ask: SharedAsk<J>,
  seconds: number,
  onProgress: (done: number) => void,
  of = Math.min(MOST_THREADS, availableParallelism()),
  patience = PATIENCE,
): readonly SharedAnswer<J>[] {
  const told = new Int32Array(new SharedArrayBuffer(4 * (TOLD.shares + of)));
  const { port1, port2 } = new MessageChannel();
  const kept: KeptThreads = { task: { job, ask, seconds, told }, of, port: port2 };
  const keeper = keeperOf(kept);
  for (let beats = 0, silent = 0; Atomics.load(told, TOLD.ended) === 0; ) {
    Atomics.wait(told, TOLD.ended, 0, BEAT);
    onProgress(told.subarray(TOLD.shares).reduce((sum, each) => sum + each, 0) / (1e6 * of));
    const now = Atomics.load(told, TOLD.beats);
    silent = now === beats ? silent + 1 : 0;
    beats = now;
    if (silent < patience) continue;
    keeper.unref();
    throw new ThreadsRefused("no sign of life");
  }
  keeper.unref();
  const ends = receiveMessageOnPort(port1)!.message as ReadonlyMap<number, ThreadEnd<J>>;
  port1.close();
  const answers: SharedAnswer<J>[] = [];
  for (const [at, end] of ends) {
    if (!end.ok) throw end.isRefused ? new ThreadsRefused(end.message) : new Error(end.message);
    answers[at] = end.answer;
  }
  return answers;
}

/** @throws ThreadsRefused where the system has no room for it */
function keeperOf(kept: KeptThreads): ReturnType<typeof startThread> {
  try {
    return startThread("keepThreads", kept, [kept.port]);
  } catch (error) {
    throw new ThreadsRefused(String(error));
  }
}
