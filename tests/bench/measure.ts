/** One measured job: how it is printed, and a checksum so that a faster wrong answer shows. */
export interface Measured {
  readonly name: string;
  /** What one run works through, e.g. poses. */
  readonly size: number;
  /** ms per run: least, median, and the spread between the quartiles. */
  readonly least: number;
  readonly median: number;
  readonly spread: number;
  readonly checksum: number;
}

/** Runs a job `warmUp` times unmeasured, then `repeats` times; the job returns a number made of its answers. */
export function measure(name: string, size: number, job: () => number, repeats = 15, warmUp = 5): Measured {
  for (let i = 0; i < warmUp; i++) job();
  const times: number[] = [];
  let checksum = 0;
  for (let i = 0; i < repeats; i++) {
    const start = performance.now();
    checksum = job();
    times.push(performance.now() - start);
  }
  times.sort((a, b) => a - b);
  const at = (share: number) => times[Math.round(share * (times.length - 1))]!;
  return { name, size, least: at(0), median: at(0.5), spread: at(0.75) - at(0.25), checksum };
}

/** One line: name, size, ns per item (least, median, spread), checksum. */
export function line({ name, size, least, median, spread, checksum }: Measured): string {
  const ns = (ms: number) => `${((ms * 1e6) / size).toFixed(1)} ns`.padStart(18);
  return `${name.padEnd(34)}${String(size).padStart(8)}${ns(least)}${ns(median)}${ns(spread)}  ${checksum.toPrecision(12)}`;
}
