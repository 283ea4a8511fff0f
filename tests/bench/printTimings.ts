import type { Timing } from "./measure.ts";
import { printColumns } from "./printColumns.ts";

const UNITS = [
  [1e9, "s"],
  [1e6, "ms"],
  [1e3, "µs"],
  [1, "ns"],
] as const;

/** A time with its unit, four digits. */
function timeText(ns: number): string {
  const [size, unit] = UNITS.find(([least]) => ns >= least) ?? [1, "ns"];
  return `${(ns / size).toPrecision(4)} ${unit}`;
}

/** Prints one line a job: times are for one of what the job does `size` of. */
export function printTimings(timings: readonly Timing[]): void {
  printColumns([
    ["job", "size", "repeats", "for each", "min", "median", "spread", "checksum"],
    ...timings.map(({ job, min, median, spread, checksum }) => [
      job.name,
      String(job.size),
      String(job.repeats),
      job.each,
      timeText(min),
      timeText(median),
      timeText(spread),
      checksum.toPrecision(12),
    ]),
  ]);
  console.log("times: processor time; spread: median absolute deviation of the repeats");
}
