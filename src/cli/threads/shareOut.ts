import { availableParallelism } from "node:os";
import { MessageChannel, receiveMessageOnPort } from "node:worker_threads";
import type { KeptThreads } from "./keepThreads.ts";
import type { SharedAnswer, SharedAsk, SharedJob } from "./sharedJobs.ts";
import { startThread } from "./startThread.ts";
import type { ThreadEnd } from "./thread.ts";

/** Each holds its truck, and more than this many gain little. */
const MOST_THREADS = 8;

/** ms between two looks at how far they are. */
const LOOK_EVERY = 200;

/**
 * Has all shares of a job done, one a thread and as many as there are processors, and waits for them.
 * @param seconds processor time they may take together
 * @param onProgress told how much of all is done, 0 … 1
 * @param of how many threads
 * @throws Error where a share failed, or its thread died
 */
export function shareOut<J extends SharedJob>(
  job: J,
  ask: SharedAsk<J>,
  seconds: number,
  onProgress: (done: number) => void,
  of = Math.min(MOST_THREADS, availableParallelism()),
): readonly SharedAnswer<J>[] {
  const told = new Int32Array(new SharedArrayBuffer(4 * (1 + of)));
  const { port1, port2 } = new MessageChannel();
  const kept: KeptThreads = { task: { job, ask, seconds, told }, of, port: port2 };
  const keeper = startThread("keepThreads", kept, [port2]);
  while (Atomics.load(told, 0) === 0) {
    Atomics.wait(told, 0, 0, LOOK_EVERY);
    onProgress(told.reduce((sum, each, i) => (i === 0 ? 0 : sum + each), 0) / (1e6 * of));
  }
  keeper.unref();
  const ends = receiveMessageOnPort(port1)!.message as ReadonlyMap<number, ThreadEnd<J>>;
  port1.close();
  const answers: SharedAnswer<J>[] = [];
  for (const [at, end] of ends) {
    if (!end.ok) throw new Error(end.message);
    answers[at] = end.answer;
  }
  return answers;
}
