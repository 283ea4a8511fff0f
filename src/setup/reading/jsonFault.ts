import { shortened } from "./describeValue.ts";
import { MAX_DEPTH, MAX_KEYS, MAX_SHOWN, MAX_VALUES } from "./limits.ts";
import { TOO_MANY_VALUES } from "./tooMuch.ts";

/** The first thing that keeps a text from being sound JSON: where (0-based character) and how to mend it. */
export interface JsonFault {
  readonly at: number;
  readonly mend: string;
}

/**
 * Finds the first fault of a JSON text (RFC 8259), or null. Stricter in two ways: no key may stand twice in one
 * object (a reader would drop one silently), and nesting, keys and values end at `MAX_DEPTH`, `MAX_KEYS`, `MAX_VALUES`.
 */
export function findJsonFault(text: string): JsonFault | null {
  return new JsonWalk(text).run();
}

const SPACE = /[ \t\n\r]*/y;
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const PLAIN_TEXT = /[^"\\\p{Cc}]*/uy;
const ESCAPE = /\\(?:["\\/bfnrt]|u[\da-fA-F]{4})/y;
const WORD = /[A-Za-z_$][\w$]*/y;
const QUOTED_LENGTH = 'put a length with a fraction or a unit in double quotes, like "5 5/8 in"';

/** A walk over the text; each step returns true, or leaves the fault and returns false. */
class JsonWalk {
  readonly #text: string;
  #at = 0;
  #fault: JsonFault | null = null;
  #values = 0;

  constructor(text: string) {
    this.#text = text;
  }

  run(): JsonFault | null {
    if (this.#text.startsWith("\ufeff")) {
      this.#fail("the file starts with a byte order mark; save it as plain UTF-8");
    } else if (this.#skipSpace() && this.#at === this.#text.length) {
      this.#fail("the file is empty; a setup starts with {");
    } else if (this.#value(MAX_DEPTH) && this.#skipSpace() && this.#at < this.#text.length) {
      this.#fail(this.#strangerMend() ?? "there is text after the end of the setup; delete it");
    }
    return this.#fault;
  }

  #value(depthLeft: number): boolean {
    if (++this.#values > MAX_VALUES) return this.#fail(TOO_MANY_VALUES);
    const next = this.#text[this.#at];
    if (next === "{" || next === "[") {
      if (depthLeft === 0) return this.#fail(`objects and lists are nested more than ${MAX_DEPTH} deep`);
      return next === "{" ? this.#object(depthLeft - 1) : this.#list(depthLeft - 1);
    }
    if (next === '"') return this.#string() !== null;
    const start = this.#at;
    const number = this.#match(NUMBER);
    if (number !== null) return this.#numberEnds(number);
    const word = this.#match(WORD);
    if (word === "true" || word === "false" || word === "null") return true;
    this.#at = start;
    if (word !== null) return this.#fail(wordMend(word));
    return this.#fail(this.#strangerMend() ?? this.#noValueMend());
  }

  /** Straight after a number: catches `5 5/8`, `05`, `5.`, `5in`. */
  #numberEnds(number: string): boolean {
    const rest = this.#text.slice(this.#at, this.#at + 20);
    if (/^-?0$/.test(number) && /^\d/.test(rest))
      return this.#fail("write the number without a zero in front");
    if (/^ *[\d/'′″]|^ *-\d|^ *[A-Za-z]|^"\s*[,}\]]/.test(rest)) return this.#fail(QUOTED_LENGTH);
    if (/^[.+]/.test(rest)) return this.#fail("this number is not finished; write it like 5.25");
    return true;
  }

  #object(depthLeft: number): boolean {
    const opened = this.#at++;
    const keys = new Set<string>();
    this.#skipSpace();
    if (this.#take("}")) return true;
    for (;;) {
      const keyAt = this.#at;
      const key = this.#text[this.#at] === '"' ? this.#string() : this.#noKey(opened);
      if (key === null) return false;
      if (keys.has(key))
        return this.#fail(
          `the key ${JSON.stringify(shortened(key, MAX_SHOWN))} stands here twice; keep one`,
          keyAt,
        );
      keys.add(key);
      if (keys.size > MAX_KEYS)
        return this.#fail(`this object has more than ${MAX_KEYS} keys; no setup needs that`, keyAt);
      this.#skipSpace();
      if (!this.#take(":"))
        return this.#fail(this.#strangerMend() ?? "put a colon between the key and its value");
      this.#skipSpace();
      if (!this.#value(depthLeft)) return false;
      const more = this.#next("}", opened);
      if (more !== true) return more === "closed";
    }
  }

  #list(depthLeft: number): boolean {
    const opened = this.#at++;
    this.#skipSpace();
    if (this.#take("]")) return true;
    for (;;) {
      if (!this.#value(depthLeft)) return false;
      const more = this.#next("]", opened);
      if (more !== true) return more === "closed";
    }
  }

  /** After an entry: true when another follows, "closed" at the end, false for a fault. */
  #next(close: "}" | "]", opened: number): boolean | "closed" {
    this.#skipSpace();
    if (this.#take(close)) return "closed";
    const comma = this.#at;
    if (!this.#take(",")) {
      if (this.#at === this.#text.length) return this.#failOpen(opened);
      if (this.#text.startsWith('""', this.#at - 1)) {
        return this.#fail('write an inch mark inside text as \\" or as in', this.#at - 1);
      }
      const other = close === "}" ? "]" : "}";
      if (this.#text[this.#at] === other) return this.#fail(`expected ${close} here instead of ${other}`);
      return this.#fail(this.#strangerMend() ?? `put a comma or ${close} here`);
    }
    this.#skipSpace();
    if (this.#text[this.#at] === close) return this.#fail(`delete the comma before ${close}`, comma);
    return true;
  }

  #string(): string | null {
    const start = this.#at++;
    for (;;) {
      this.#match(PLAIN_TEXT);
      if (this.#take('"')) return JSON.parse(this.#text.slice(start, this.#at)) as string;
      if (this.#match(ESCAPE) !== null) continue;
      const next = this.#text[this.#at];
      // C1 controls and lone surrogates are allowed by the grammar though PLAIN_TEXT stops at some of them.
      if (next !== undefined && next >= " " && next !== "\\") {
        this.#at++;
        continue;
      }
      if (next === "\\")
        this.#fail('a backslash starts an escape; write \\\\ for a backslash and \\" for an inch mark');
      else this.#fail("this text is not closed on its line; put a double quote at its end", start);
      return null;
    }
  }

  #noKey(opened: number): null {
    const start = this.#at;
    if (start === this.#text.length) this.#failOpen(opened);
    else if (this.#match(WORD) !== null) this.#fail("put the key in double quotes", start);
    else this.#fail(this.#strangerMend() ?? "put a key in double quotes here");
    return null;
  }

  #noValueMend(): string {
    if (this.#at >= this.#text.length) return "the file ends where a value is missing";
    const next = this.#text[this.#at]!;
    if (next === "," || next === "}" || next === "]") return "a value is missing here";
    if (/[+./\d-]/.test(next))
      return "write numbers like 0.25 or -4, without + and with a digit before the point";
    return "this is no value; write a number, text in double quotes, { … } or [ … ]";
  }

  /** A mend for what people bring from other notations; null when the next character is none of that. */
  #strangerMend(): string | null {
    const two = this.#text.slice(this.#at, this.#at + 2);
    if (two === "//" || two === "/*" || two[0] === "#") return "JSON has no comments; delete it";
    if (two[0] === "'" || two[0] === "`") return 'use double quotes (")';
    if (/^[“”„‘’«»]/.test(two)) return 'use straight double quotes (")';
    return null;
  }

  #match(pattern: RegExp): string | null {
    pattern.lastIndex = this.#at;
    const found = pattern.exec(this.#text);
    if (!found) return null;
    this.#at += found[0].length;
    return found[0];
  }

  #skipSpace(): true {
    this.#match(SPACE);
    return true;
  }

  #take(character: string): boolean {
    if (this.#text[this.#at] !== character) return false;
    this.#at++;
    return true;
  }

  #fail(mend: string, at = this.#at): false {
    this.#fault = { at, mend };
    return false;
  }

  #failOpen(opened: number): false {
    const close = this.#text[opened] === "{" ? "}" : "]";
    const { line } = lineAt(this.#text, opened);
    return this.#fail(`the ${this.#text[opened]} opened on line ${line} is not closed; add ${close}`);
  }
}

/** Line and column, both from 1, of a place in a text. */
export function lineAt(text: string, at: number): { readonly line: number; readonly column: number } {
  let line = 1;
  let start = 0;
  for (let i = 0; i < at; i++) {
    const code = text.charCodeAt(i);
    if (code !== 0x0a && !(code === 0x0d && !(text.charCodeAt(i + 1) === 0x0a && i + 1 < at))) continue;
    line++;
    start = i + 1;
  }
  return { line, column: at - start + 1 };
}

function wordMend(word: string): string {
  if (/^(NaN|Infinity|undefined|None)$/i.test(word))
    return `${word} is not a value; write a finite number or take the key out`;
  if (/^(true|false|null)$/i.test(word)) return `write ${word.toLowerCase()}`;
  return "put text in double quotes";
}
