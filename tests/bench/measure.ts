import type { Job } from "./job.ts";

/** Times of a job in nanoseconds for each of its `size` things; `spread` is the median absolute deviation. */
export interface Timing {
  readonly job: Job;
  readonly min: number;
  readonly median: number;
  readonly max: number;
  readonly spread: number;
  readonly checksum: number;
}

const WARM_UPS = 3;
const NS_PER_MS = 1e6;
/** Share by which two runs' checksums may differ: the engine starts each settling from another rest. */
const SAME_CHECKSUM = 1e-9;

/**
 * Runs a job `repeats` times after warming up, all in this thread.
 * @throws Error when a run's checksum differs from the first one's.
 */
export function measure(job: Job): Timing {
  const checksum = job.run();
  for (let i = 1; i < WARM_UPS; i++) job.run();
  const times = Array.from({ length: job.repeats }, () => {
    const start = performance.now();
    const found = job.run();
    const ms = performance.now() - start;
    if (!(Math.abs(found - checksum) <= SAME_CHECKSUM * Math.abs(checksum))) {
      throw new Error(`${job.name}: checksum ${found} after ${checksum}`);
    }
    return (ms * NS_PER_MS) / job.size;
  });
  const median = middleOf(times);
  const spread = middleOf(times.map((t) => Math.abs(t - median)));
  return { job, min: Math.min(...times), median, max: Math.max(...times), spread, checksum };
}

function middleOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)]!;
}
