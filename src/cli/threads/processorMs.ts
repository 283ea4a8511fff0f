let read = 0;
let known = 0;

/** ms. The system is asked no more often: that takes longer than many a step of a search. */
const FRESH = 1;

/** Milliseconds this process, all its threads, has had of a processor: what others on the machine do does not count. */
export function processorMs(): number {
  const now = performance.now();
  if (now - read < FRESH) return known;
  const { user, system } = process.cpuUsage();
  [read, known] = [now, (user + system) / 1000];
  return known;
}
