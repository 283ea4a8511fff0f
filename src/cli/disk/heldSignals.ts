/** What asks a program to end. */
const SIGNALS = ["SIGINT", "SIGTERM", "SIGHUP"] as const;

/**
 * Runs a short job that a signal must not cut in two. One that comes meanwhile ends the program as it would have, with
 * the same exit code for the shell, but only after the job and what still follows it in this turn.
 */
export function withHeldSignals<T>(job: () => T): T {
  const letGo = () => {
    for (const signal of SIGNALS) process.off(signal, raise);
  };
  const raise = (signal: NodeJS.Signals) => {
    letGo();
    process.kill(process.pid, signal);
  };
  for (const signal of SIGNALS) process.on(signal, raise);
  try {
    return job();
  } finally {
    // Signals are handed over between turns; before that no listener may go, or they are lost.
    setImmediate(letGo);
  }
}
