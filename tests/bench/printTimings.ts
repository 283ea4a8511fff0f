import type { Timing } from "./measure.ts";

const UNITS = [
  [1e6, "ms"],
  [1e3, "µs"],
  [1, "ns"],
] as const;

function timeText(ns: number): string {
  const [size, unit] = UNITS.find(([least]) => ns >= least) ?? [1, "ns"];
  return `${(ns / size).toPrecision(4)} ${unit}`;
}

/** Prints one line a job: times are for one of what the job does `size` of. */
export function printTimings(timings: readonly Timing[]): void {
  const head = ["job", "size", "repeats", "for each", "min", "median", "max", "spread", "checksum"];
  const rows = timings.map(({ job, min, median, max, spread, checksum }) => [
    job.name,
    String(job.size),
    String(job.repeats),
    job.each,
    timeText(min),
    timeText(median),
    timeText(max),
    timeText(spread),
    checksum.toPrecision(12),
  ]);
  const table = [head, ...rows];
  const widths = head.map((_, column) => Math.max(...table.map((row) => row[column]!.length)));
  for (const row of table) {
    console.log(
      row
        .map((cell, i) => cell.padEnd(widths[i]!))
        .join("  ")
        .trimEnd(),
    );
  }
  console.log("spread: median absolute deviation of the repeats");
}
