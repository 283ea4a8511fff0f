import { writeSync } from "node:fs";
import { waitForReady } from "./waitForReady.ts";

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
