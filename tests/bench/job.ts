/** A whole job to time. Its inputs are fixed when it is made, so that every run gives the same answers. */
export interface Job {
  readonly name: string;
  /** What one run does that many of: poses, gaps, checks. */
  readonly each: string;
  readonly size: number;
  readonly repeats: number;
  /** Does the job once. @returns a sum of its answers: a faster wrong answer shows. */
  readonly run: () => number;
  /** ms that one of `size` should take at most, where that was set as an aim. */
  readonly aimMs?: number;
}

/** A job that reads the clock itself: it runs in another process, or has to sum its answers afterwards. */
export interface ClockedJob extends Omit<Job, "run"> {
  /** Does the job once. @returns the nanoseconds of processor time it took and a sum of its answers. */
  readonly clock: () => { readonly ns: number; readonly checksum: number };
}
