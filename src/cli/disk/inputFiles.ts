import { type ReadBytes, readFileBytes } from "./readBytes.ts";

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
