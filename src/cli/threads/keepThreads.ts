import { type MessagePort, workerData } from "node:worker_threads";
import type { SharedJob } from "./sharedJobs.ts";
import { BEAT, startThread, TOLD } from "./startThread.ts";
import type { ThreadEnd, ThreadTask } from "./thread.ts";

/** What the keeper of the threads is started with. */
export interface KeptThreads {
  /** What each is started with, but for its share. */
  readonly task: Omit<ThreadTask, "share">;
  readonly of: number;
  /** Takes how they ended: all, or up to the first that has no answer. */
  readonly port: MessagePort;
}

// It starts the threads because it hears of one that dies, which who stands and waits for them does not.
const { task, of, port } = workerData as KeptThreads;
const ends = new Map<number, ThreadEnd<SharedJob>>();

function ended(at: number, end: ThreadEnd<SharedJob>): void {
  if (ends.has(at)) return;
  ends.set(at, end);
  if (end.ok && ends.size < of) return;
  port.postMessage(ends);
  Atomics.store(task.told, TOLD.ended, 1);
  Atomics.notify(task.told, TOLD.ended);
}

setInterval(() => Atomics.add(task.told, TOLD.beats, 1), BEAT).unref();
for (let at = 0; at < of; at++) start(at);

function start(at: number): void {
  try {
    const thread = startThread("thread", { ...task, share: { at, of } });
    thread.on("message", (end: ThreadEnd<SharedJob>) => ended(at, end));
    thread.on("error", ({ message }) => ended(at, { ok: false, message }));
    thread.on("exit", () => ended(at, { ok: false, message: "a thread ended before it had an answer" }));
  } catch (error) {
    ended(at, { ok: false, message: String(error), isRefused: true });
  }
}
