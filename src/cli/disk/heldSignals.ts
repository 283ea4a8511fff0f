/** What asks a program to end. */
const SIGNALS = ["SIGINT", "SIGTERM", "SIGHUP"] as const;

let areHeld = false;

/**
 * Runs a short job that a signal must not cut in two. One that comes meanwhile ends the program as it would have, with
 * the same exit code for the shell, but only after the job and what still follows it in this turn. From then on signals
 * wait for the end of a turn: a listener taken away again can lose one that is on its way. So this is for the last work
 * of a run.
 */
export function withHeldSignals<T>(job: () => T): T {
  if (!areHeld) for (const signal of SIGNALS) process.on(signal, endBy);
  areHeld = true;
  try {
    return job();
  } finally {
    // A turn more, in which what came is handed over, even where nothing else is left to do.
    setImmediate(() => {});
  }
}

function endBy(signal: NodeJS.Signals): void {
  for (const one of SIGNALS) process.off(one, endBy);
  process.kill(process.pid, signal);
}
