import type { ClockedJob, Job } from "./job.ts";
import { processorTime } from "./processorTime.ts";

/** Processor times of a job in nanoseconds for each of its `size` things. */
export interface Timing {
  readonly job: Job | ClockedJob;
  /** Of each repeat, in the order they were run. */
  readonly times: readonly number[];
  readonly min: number;
  readonly median: number;
  /** Median absolute deviation from the median. */
  readonly spread: number;
  readonly checksum: number;
}

const WARM_UPS = 3;
/** ns. A job that takes this long has been compiled by its first run. */
const WARM_AFTER = 0.5e9;
/** Share by which two runs' checksums may differ: the engine starts each settling from another rest. */
const SAME_CHECKSUM = 1e-9;

/**
 * Runs a job `repeats` times after warming up.
 * @throws Error when a run's checksum differs from the first one's.
 */
export function measure(job: Job | ClockedJob): Timing {
  return measureInTurn([job])[0]!;
}

/**
 * Runs jobs in turn, one repeat of each after the other, so that whatever slows the machine for a while slows
 * all of them. A job with fewer repeats than the rest stops early.
 * @throws Error when a run's checksum differs from the first one's of its job.
 */
export function measureInTurn(jobs: readonly (Job | ClockedJob)[]): Timing[] {
  const running = jobs.map((job) => {
    const start = processorTime();
    const { checksum } = clocked(job);
    for (let i = 1; i < WARM_UPS && processorTime() - start < WARM_AFTER; i++) clocked(job);
    return { job, checksum, times: [] as number[] };
  });
  const most = Math.max(...jobs.map(({ repeats }) => repeats));
  for (let repeat = 0; repeat < most; repeat++) {
    for (const { job, checksum, times } of running) {
      if (repeat >= job.repeats) continue;
      const found = clocked(job);
      if (!(Math.abs(found.checksum - checksum) <= SAME_CHECKSUM * Math.abs(checksum))) {
        throw new Error(`${job.name}: checksum ${found.checksum} after ${checksum}`);
      }
      times.push(found.ns / job.size);
    }
  }
  return running.map(({ job, checksum, times }) => {
    const median = middleOf(times);
    const spread = middleOf(times.map((t) => Math.abs(t - median)));
    return { job, times, min: Math.min(...times), median, spread, checksum };
  });
}

/** Median of how many times as long as `other` a job took, repeat by repeat of `measureInTurn`. */
export function timesAsLong(job: Timing, other: Timing): number {
  const pairs = Math.min(job.times.length, other.times.length);
  return middleOf(Array.from({ length: pairs }, (_, i) => job.times[i]! / other.times[i]!));
}

function clocked(job: Job | ClockedJob): { readonly ns: number; readonly checksum: number } {
  if ("clock" in job) return job.clock();
  const start = processorTime();
  const checksum = job.run();
  return { ns: processorTime() - start, checksum };
}

export function middleOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)]!;
}
