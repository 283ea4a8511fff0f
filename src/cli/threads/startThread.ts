import { type MessagePort, Worker } from "node:worker_threads";

/** From a checkout the sources are read by a loader, which a thread has to be given first. */
const FROM_SOURCES = `const { workerData } = require("node:worker_threads");
import(workerData.loader).then(({ register }) => { register(); return import(workerData.entry); });`;

const isSource = import.meta.url.endsWith(".ts");

/** Starts a file of this folder as a thread, built or from a checkout. @param name without its ending */
export function startThread(name: string, data: object, transferList: MessagePort[] = []): Worker {
  const entry = new URL(`./${name}.${isSource ? "ts" : "js"}`, import.meta.url);
  if (!isSource) return new Worker(entry, { workerData: data, transferList });
  const loader = import.meta.resolve("tsx/esm/api");
  return new Worker(FROM_SOURCES, {
    eval: true,
    workerData: { ...data, entry: entry.href, loader },
    transferList,
  });
}

/** Where numbers that threads tell each other stand in the row they share. */
export const TOLD = {
  /** 1 once all is done, or one thread failed. */
  ended: 0,
  /** Rises as long as the keeper lives. */
  beats: 1,
  /** From here on how far each share is, in millionths. */
  shares: 2,
} as const;

/** ms between two signs of the keeper's life, and between two looks for them. */
export const BEAT = 200;
