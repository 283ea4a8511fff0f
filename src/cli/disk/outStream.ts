import { fstatSync, ftruncateSync } from "node:fs";
import { writeMend } from "../../studies/wording/fileMends.ts";
import { writeAll } from "./writeAll.ts";

/** That a stream did not take all that was written to it; the message is a line for the user. */
export class StreamFailure extends Error {
  override readonly name = "StreamFailure";
}

/**
 * Standard output or error. What is written is out when `write` returns, or a `StreamFailure` is thrown: nothing is left
 * to be found out after the exit code is. A reader that has hung up (`| head`) has what it wanted: the rest is dropped.
 */
export class OutStream {
  readonly #handle: number;
  readonly #name: string;
  #hungUp = false;

  constructor(handle: number, name: string) {
    this.#handle = handle;
    this.#name = name;
  }

  /** Writes the text whole; of one that does not fit into a file nothing stays in it. @throws StreamFailure */
  write(text: string): void {
    if (this.#hungUp) return;
    const before = sizeOf(this.#handle);
    try {
      writeAll(this.#handle, Buffer.from(text));
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      if (code === undefined) throw error;
      this.#hungUp = true; // nothing more after a piece is missing
      if (code === "EPIPE") return;
      if (before !== null) takeBack(this.#handle, before);
      throw new StreamFailure(`${this.#name}: ${writeMend(code)}`);
    }
  }
}

/** Bytes in a file; null = the stream is none. */
function sizeOf(handle: number): number | null {
  try {
    const stats = fstatSync(handle);
    return stats.isFile() ? stats.size : null;
  } catch {
    return null; // closed: writing tells
  }
}

/** Half a document must not pass for one. */
function takeBack(handle: number, size: number): void {
  try {
    if (fstatSync(handle).size > size) ftruncateSync(handle, size);
  } catch {
    // The failure itself is told either way.
  }
}
