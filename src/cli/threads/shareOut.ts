import { availableParallelism } from "node:os";
import { MessageChannel, type MessagePort, receiveMessageOnPort, Worker } from "node:worker_threads";
import type { SharedAnswer, SharedAsk, SharedJob } from "./sharedJobs.ts";
import type { ThreadEnd, ThreadTask } from "./thread.ts";

/** Each holds its truck, and more than this many gain little. */
const MOST_THREADS = 8;

/** ms between two looks at how far they are. */
const LOOK_EVERY = 200;

/** From a checkout the sources are read by a loader, which a thread has to be given first. */
const FROM_SOURCES = `const { workerData } = require("node:worker_threads");
import(workerData.loader).then(({ register }) => { register(); return import(workerData.entry); });`;

const isSource = import.meta.url.endsWith(".ts");

/**
 * Has all shares of a job done, one a thread and as many as there are processors, and waits for them.
 * @param seconds processor time they may take together
 * @param onProgress told how much of all is done, 0 … 1
 * @throws Error where a share failed
 */
export function shareOut<J extends SharedJob>(
  job: J,
  ask: SharedAsk<J>,
  seconds: number,
  onProgress: (done: number) => void,
): readonly SharedAnswer<J>[] {
  const of = Math.min(MOST_THREADS, availableParallelism());
  const told = new Int32Array(new SharedArrayBuffer(4 * (1 + of)));
  const threads = Array.from({ length: of }, (_, at) => {
    const { port1, port2 } = new MessageChannel();
    const worker = started({ job, ask, share: { at, of }, seconds, told, port: port2 });
    return { worker, port: port1 };
  });
  for (let ended = 0; ended < of; ended = Atomics.load(told, 0)) {
    Atomics.wait(told, 0, ended, LOOK_EVERY);
    onProgress(told.reduce((sum, each, i) => (i === 0 ? 0 : sum + each), 0) / (1e6 * of));
  }
  const ends = threads.map(({ worker, port }) => {
    worker.unref();
    const end = endOf<J>(port);
    port.close();
    return end;
  });
  return ends.map((end) => {
    if (!end.ok) throw new Error(end.message);
    return end.answer;
  });
}

function endOf<J extends SharedJob>(port: MessagePort): ThreadEnd<J> {
  return receiveMessageOnPort(port)!.message as ThreadEnd<J>;
}

function started<J extends SharedJob>(task: ThreadTask<J>): Worker {
  const entry = new URL(isSource ? "./thread.ts" : "./thread.js", import.meta.url);
  const transferList = [task.port];
  if (!isSource) return new Worker(entry, { workerData: task, transferList });
  const loader = import.meta.resolve("tsx/esm/api");
  return new Worker(FROM_SOURCES, {
    eval: true,
    workerData: { ...task, entry: entry.href, loader },
    transferList,
  });
}
