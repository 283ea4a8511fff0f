import { writeSync } from "node:fs";

const LONGEST = 20;
const cell = new Int32Array(new SharedArrayBuffer(4));

/**
 * Waits a little before a stream that was not ready (EAGAIN) is tried again: longer from try to try, up to 20 ms. The
 * program stays one straight run, and an interrupt still ends it at once.
 */
export function waitForReady(tries: number): void {
  Atomics.wait(cell, 0, 0, Math.min(1 + tries, LONGEST));
}

/** Writes all of the bytes to an open file, pipe or terminal; waits for a reader that is slower. @throws the system's error */
export function writeAll(handle: number, bytes: Uint8Array): void {
  for (let at = 0, tries = 0; at < bytes.length; ) {
    try {
      at += writeSync(handle, bytes, at, bytes.length - at);
      tries = 0;
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== "EAGAIN") throw error;
      waitForReady(tries++);
    }
  }
}
