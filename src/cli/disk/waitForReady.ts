const LONGEST = 20;
const cell = new Int32Array(new SharedArrayBuffer(4));

/**
 * Waits a little before a stream that was not ready (EAGAIN) is tried again: longer from try to try, up to 20 ms. The
 * program stays one straight run, and an interrupt still ends it at once.
 */
export function waitForReady(tries: number): void {
  Atomics.wait(cell, 0, 0, Math.min(1 + tries, LONGEST));
}
