import { workbench } from "../state/workbench.ts";
import type { WorkerLike } from "./workClient.ts";
import { WorkRoom } from "./workRoom.ts";

/** Seconds a search of the page may take unless its user asks for a longer one. */
const PAGE_SECONDS = 2;

/** Workers are cheap to start and each holds its truck: more than this many gain little. */
const MOST_WORKERS = 8;

declare global {
  /** Other seconds, set before the page starts: a test's page is given more than enough of them, or too few. */
  var wellsweepSeconds: number | undefined;
}

/** A worker for any job. */
export function startWorker(): WorkerLike {
  return new Worker(new URL("./work.worker.ts", import.meta.url), { type: "module" });
}

/** One core is left to the page. */
const sharers = Math.min(MOST_WORKERS, Math.max(1, (globalThis.navigator?.hardwareConcurrency ?? 2) - 1));

/** The page's. */
export const work = new WorkRoom({
  startWorker,
  sharers,
  // Two searches at least go on beside each other, so that none waits for a long one.
  workers: Math.max(2, sharers),
  seconds: globalThis.wellsweepSeconds ?? PAGE_SECONDS,
  poseShown() {
    const { travel, steer } = workbench.getState();
    return { travel, steer };
  },
});
