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
