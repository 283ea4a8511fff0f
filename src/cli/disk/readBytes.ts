import { closeSync, constants, fstatSync, openSync, readSync, statSync } from "node:fs";
import { waitForReady } from "./writeAll.ts";

/** Bytes read and, of a file, which one they came from, whatever it is called. */
export interface ReadBytes {
  readonly bytes: Uint8Array;
  /** null = a pipe, a terminal or a device. */
  readonly identity: string | null;
}

/** Why bytes are not there, besides the system's own errors. */
export class ReadRefused extends Error {
  override readonly name = "ReadRefused";
  readonly why: "no file" | "too large";

  constructor(why: ReadRefused["why"]) {
    super(why);
    this.why = why;
  }
}

/** Not there on every system; opening a pipe nobody writes to would wait for ever without it. */
const NO_WAIT = constants.O_NONBLOCK ?? 0;

const FIRST = 64 * 1024;

/**
 * A whole file. Pipes and devices are not opened: they might never end, and reading from some of them does something.
 * @throws ReadRefused for those and for more than `most` bytes; the system's own error for what cannot be read
 */
export function readFileBytes(path: string, most: number): ReadBytes {
  requireFile(statSync(path));
  const handle = openSync(path, constants.O_RDONLY | NO_WAIT);
  try {
    const stats = fstatSync(handle);
    requireFile(stats);
    if (stats.size > most) throw new ReadRefused("too large");
    return { bytes: readToEnd(handle, most, stats.size + 1), identity: identityOf(handle) };
  } finally {
    closeSync(handle);
  }
}

/** All that is still to come from an open file, pipe or terminal. @throws as `readFileBytes` */
export function readStream(handle: number, most: number): ReadBytes {
  const identity = fstatSync(handle).isFile() ? identityOf(handle) : null;
  return { bytes: readToEnd(handle, most, FIRST), identity };
}

/** Which file it is: the same for every name and link of it. @param handle or a path */
export function identityOf(handle: number | string): string {
  const exact = { bigint: true } as const;
  const { dev, ino } = typeof handle === "number" ? fstatSync(handle, exact) : statSync(handle, exact);
  return `${dev}:${ino}`;
}

function requireFile(stats: { isFile(): boolean; isDirectory(): boolean }): void {
  if (stats.isDirectory()) throw Object.assign(new Error("a folder"), { code: "EISDIR" });
  if (!stats.isFile()) throw new ReadRefused("no file");
}

/** @param room bytes to begin with */
function readToEnd(handle: number, most: number, room: number): Uint8Array {
  let buffer = Buffer.allocUnsafe(Math.min(room, most + 1));
  let length = 0;
  for (;;) {
    const count = readSome(handle, buffer, length);
    if (count === 0) return buffer.subarray(0, length);
    length += count;
    if (length > most) throw new ReadRefused("too large");
    if (length < buffer.length) continue;
    const larger = Buffer.allocUnsafe(Math.min(2 * length + FIRST, most + 1));
    buffer.copy(larger, 0, 0, length);
    buffer = larger;
  }
}

/** The next bytes; 0 at the end. Waits for a stream whose writer is slower. */
function readSome(handle: number, buffer: Buffer, at: number): number {
  for (let tries = 0; ; tries++) {
    try {
      return readSync(handle, buffer, at, buffer.length - at, null);
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      if (code === "EOF") return 0; // the end of a pipe, as one system says it
      if (code !== "EAGAIN") throw error;
      waitForReady(tries);
    }
  }
}

/** Reads files and remembers which: none of them may be written over. */
export class InputFiles {
  /** Names by identity. */
  readonly #read = new Map<string, string>();

  /** A whole file, see `readFileBytes`. @param name as the user knows it */
  read(path: string, most: number, name = path): Uint8Array {
    return this.note(readFileBytes(path, most), name);
  }

  /** Remembers what was read some other way. @returns its bytes */
  note({ bytes, identity }: ReadBytes, name: string): Uint8Array {
    if (identity !== null) this.#read.set(identity, name);
    return bytes;
  }

  /** What a file was read as; null = it was not. */
  nameOf(identity: string): string | null {
    return this.#read.get(identity) ?? null;
  }
}
