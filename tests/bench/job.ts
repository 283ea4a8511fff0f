/** A whole job to time. Its inputs are fixed when it is made, so that every run gives the same answers. */
export interface Job {
  readonly name: string;
  /** What one run does that many of: poses, gaps, checks. */
  readonly each: string;
  readonly size: number;
  readonly repeats: number;
  /** Does the job once. @returns a sum of its answers: a faster wrong answer shows. */
  readonly run: () => number;
}
