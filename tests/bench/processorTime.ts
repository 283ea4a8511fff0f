/**
 * Nanoseconds this process has spent on processors, to the microsecond. On an idle machine it grows as the wall
 * clock does while one thread works; on a busy one it leaves out the time that others had, which falls on long
 * jobs and spares short ones.
 */
export function processorTime(): number {
  const { user, system } = process.cpuUsage();
  return 1000 * (user + system);
}
