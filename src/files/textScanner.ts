import { MAX_SHOWN } from "./limits.ts";
import { MeshFault } from "./meshBuilder.ts";

const NEWLINE = 10;
const RETURN = 13;
const BACKSLASH = 92;
const HASH = 35;

/**
 * Walks through the bytes of a text file word by word, knowing the line (from 1). Words are split at spaces, tabs
 * and line ends (LF, CR LF or CR). Nothing is decoded but the words that are asked for: the files are large.
 */
export class TextScanner {
  readonly #bytes: Uint8Array;
  readonly #end: number;
  #at: number;
  #line: number;

  constructor(bytes: Uint8Array, at = 0, line = 1, end = bytes.length) {
    this.#bytes = bytes;
    this.#at = at;
    this.#line = line;
    this.#end = end;
  }

  get line(): number {
    return this.#line;
  }

  /** Byte where the next word is looked for. */
  get at(): number {
    return this.#at;
  }

  /** The next word, over line ends; "" at the end of the file. */
  word(): string {
    while (this.#at < this.#end && isSpace(this.#bytes[this.#at]!)) this.#step();
    return this.#take();
  }

  /** The next word of this line; "" at its end. A backslash that ends the line carries it on into the next. */
  wordOfLine(): string {
    for (; this.#at < this.#end; this.#step()) {
      const byte = this.#bytes[this.#at]!;
      if (byte === BACKSLASH && this.#endsLine(this.#at + 1)) {
        this.#at++;
        if (this.#bytes[this.#at] === RETURN && this.#bytes[this.#at + 1] === NEWLINE) this.#at++;
      } else if (byte === HASH || byte === NEWLINE || byte === RETURN || !isSpace(byte)) break;
    }
    if (this.#endsLine(this.#at) || this.#bytes[this.#at] === HASH) return "";
    return this.#take();
  }

  /** The rest of this line without spaces around it; goes on to the next line. */
  restOfLine(): string {
    const from = this.#at;
    while (!this.#endsLine(this.#at)) this.#at++;
    const text = this.#textOf(from, this.#at).trim();
    this.skipLine();
    return text;
  }

  /** Goes on to the next line. False at the end of the file. */
  skipLine(): boolean {
    while (!this.#endsLine(this.#at)) this.#at++;
    if (this.#at >= this.#end) return false;
    if (this.#bytes[this.#at] === RETURN && this.#bytes[this.#at + 1] === NEWLINE) this.#at++;
    this.#at++;
    this.#line++;
    return this.#at < this.#end;
  }

  /** A finite number as the next word, over line ends. @throws MeshFault for anything else */
  number(): number {
    return this.finite(this.word());
  }

  /** @throws MeshFault unless the word is a finite number in decimal notation */
  finite(word: string): number {
    const value = numberOf(word);
    if (Number.isFinite(value)) return value;
    throw new MeshFault(this.where, `${found(word)} where a number should be; export it again`);
  }

  get where(): string {
    return `line ${this.#line}`;
  }

  #take(): string {
    const from = this.#at;
    while (this.#at < this.#end && !isSpace(this.#bytes[this.#at]!)) this.#at++;
    return this.#textOf(from, this.#at);
  }

  #step(): void {
    const byte = this.#bytes[this.#at++];
    if (byte === NEWLINE || (byte === RETURN && this.#bytes[this.#at] !== NEWLINE)) this.#line++;
  }

  #endsLine(at: number): boolean {
    return at >= this.#end || this.#bytes[at] === NEWLINE || this.#bytes[at] === RETURN;
  }

  /** Byte by byte: names may be in any encoding, and what is read is ASCII. */
  #textOf(from: number, to: number): string {
    let text = "";
    for (let i = from; i < Math.min(to, from + LONGEST_WORD); i++)
      text += String.fromCharCode(this.#bytes[i]!);
    return text;
  }
}

/** Bytes. No number and no keyword is longer; what is may be a whole binary file. */
const LONGEST_WORD = 1000;

function isSpace(byte: number): boolean {
  return byte === 32 || (byte >= 9 && byte <= 13);
}

/** Decimal notation only: `Number` itself would also take "", "0x10" and "Infinity". */
function numberOf(word: string): number {
  for (let i = 0; i < word.length; i++) {
    const code = word.charCodeAt(i);
    const isDigit = code >= 48 && code <= 57;
    // + − . e E
    if (!isDigit && code !== 43 && code !== 45 && code !== 46 && code !== 69 && code !== 101)
      return Number.NaN;
  }
  return word === "" || word.length >= LONGEST_WORD ? Number.NaN : Number(word);
}

/** What stands in a file, to be told: quoted, printable and short; `the file ends` for nothing. */
export function found(word: string): string {
  if (word === "") return "the file ends";
  const plain = word.replace(/[^\x20-\x7e]/g, "?");
  return JSON.stringify(plain.length > MAX_SHOWN ? `${plain.slice(0, MAX_SHOWN)}…` : plain);
}
